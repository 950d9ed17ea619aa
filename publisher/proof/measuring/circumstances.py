"""What holds of a pack, or of one of its pages, by what other rooms promised: sayings hang on it."""

from collections.abc import Callable

from publisher.basics import PrintPromise, Promises

STEP = "step:"
USES = "uses "  # a tool or a material, by its key
OF_BOARD = "thickness of "
TAKEN = " that is taken"
SLOT = "slot"
BESIDE_CARD = "pencil beside the card"

Circumstance = Callable[[Promises, tuple[PrintPromise, ...]], bool]


def _has_line(kind: str) -> Circumstance:
    return lambda promises, pieces: any(line.kind == kind for piece in pieces for line in piece.lines)


def _boards(promises: Promises) -> int:
    """Count the boards of a design by what was worked out of their thickness."""
    plain = (figure.name.removeprefix(OF_BOARD) for figure in promises.figures if figure.name.startswith(OF_BOARD))
    return len({name for name in plain if not name.endswith((TAKEN, " in shops", ", at most off")) and " " not in name})


CIRCUMSTANCES: dict[str, Circumstance] = {
    "traced": lambda promises, pieces: any(piece.traced for piece in pieces),
    "beside card": lambda promises, pieces: any(piece.traced for piece in pieces)
    and any(figure.name == BESIDE_CARD and figure.value > 0.0 for figure in promises.figures),
    "corner square": lambda promises, pieces: any(
        line.purpose == "calibration" and line.page in {outline.page for outline in promises.outlines} for line in promises.lengths
    ),
    "slot": lambda promises, pieces: any(figure.name == SLOT for figure in promises.figures),
    "one board": lambda promises, pieces: _boards(promises) == 1,
    "taken": lambda promises, pieces: any(figure.name.endswith(TAKEN) for figure in promises.figures),
    "layouts": lambda promises, pieces: bool(promises.layouts),
    "cuts": lambda promises, pieces: any(layout.cuts for layout in promises.layouts),
    "offcut": lambda promises, pieces: any(layout.offcut is not None for layout in promises.layouts),
    "askew": lambda promises, pieces: any(
        len(place.measures) > 1 for one in promises.layouts for place in one.places
    ),
    "measured": lambda promises, pieces: bool(promises.sizes),
    "holes": lambda promises, pieces: any(len(piece.rings) > 1 for piece in pieces),
    "bevel": lambda promises, pieces: any(word.kind == "bevel" for piece in pieces for word in piece.words),
    "reference": _has_line("reference"),
    "glue": _has_line("glue"),
    "draw": _has_line("draw"),
    "score": _has_line("score"),
    "tiled": lambda promises, pieces: bool(promises.seams),
    "steps": lambda promises, pieces: any(one.key.startswith(STEP) for one in promises.sentences),
}
"""By name: whether it holds of promises and the pieces of a file."""


def holds(promises: Promises, name: str) -> bool:
    """Say whether a circumstance, or its contrary (``not …``), holds, or whether a design ``uses …`` a thing, of a whole file. Raises KeyError for a name that is none."""
    if name.startswith(USES):
        return name.removeprefix(USES) in promises.used
    wanted = not name.startswith("not ")
    return CIRCUMSTANCES[name.removeprefix("not ")](promises, promises.prints) is wanted


def holds_on(promises: Promises, page: int, name: str) -> bool:
    """Say whether a circumstance holds of one page: ``top here``, ``first tile here``, ``second tile here``, or one of the whole file."""
    if name == "top here":
        here = {one.part for one in promises.outlines if one.page == page and not one.row}
        return any(side.top for side in promises.sides if side.part in here)
    for place, called in enumerate(("first tile here", "second tile here")):
        if name == called:
            return any(seam.pages[place] == page for seam in promises.seams)
    return holds(promises, name)
