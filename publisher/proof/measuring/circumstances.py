"""What holds of a pack, or of one of its pages, by what other rooms promised: sayings hang on it."""

from collections.abc import Callable

from publisher.basics import Promises

STEP = "step:"
USES = "uses "  # a tool or a material, by its key
OF_BOARD = "thickness of "
TAKEN = " that is taken"
SLOT = "slot"
GUIDED = "trade:bevelling"  # the key of how steep bevels are cut
BESIDE_CARD = "pencil beside the card"
SCALE = "scale of a print"
OVER_98 = 0.983  # of true size: with a lower limit under it the row of readings from 98 mm has no room of its own

SQUARE_OF_4_IN = 101.6  # mm
MARKS_OF_64, MARKS_OF_32 = 1.0 / 256.0, 1.0 / 128.0  # share of 4 in that marks of 1/64 and of 1/32 in tell
READ_OFF_HAIR, OFF_4_IN = 1e-9, 0.001

Circumstance = Callable[[Promises], bool]


def _has_line(kind: str) -> Circumstance:
    return lambda promises: any(line.kind == kind for piece in promises.prints for line in piece.lines)


def _marks_of_64(promises: Promises) -> bool:
    """Say whether a true square of 4 in may be off by less than marks of 1/32 in tell, and by more than those of 1/64."""
    shares = [figure.value for figure in promises.figures if figure.name.endswith(SCALE)]
    room = min((abs(share - 1.0) for share in shares), default=0.0)
    return MARKS_OF_64 - READ_OFF_HAIR <= room < MARKS_OF_32 - READ_OFF_HAIR


def _boards(promises: Promises) -> int:
    """Count the boards of a design by what was worked out of their thickness."""
    plain = (figure.name.removeprefix(OF_BOARD) for figure in promises.figures if figure.name.startswith(OF_BOARD))
    return len({name for name in plain if not name.endswith((TAKEN, " in shops", ", at most off")) and " " not in name})


def _more_true(promises: Promises) -> bool:
    """Say whether pages beside those of the print check must print true: the cover then sends to the rest of the print list."""
    check = [page.page for page in promises.pages if page.kind == "print_check"] or [0]
    true = [page.page for page in promises.pages if page.true_size]
    return not true or min(true) < check[0] or max(true) > check[-1]


CIRCUMSTANCES: dict[str, Circumstance] = {
    "traced": lambda promises: any(piece.traced for piece in promises.prints),
    "beside card": lambda promises: (
        any(piece.traced for piece in promises.prints)
        and any(figure.name == BESIDE_CARD and figure.value > 0.0 for figure in promises.figures)
    ),
    "corner square": lambda promises: any(
        line.purpose == "calibration" and line.page in {outline.page for outline in promises.outlines}
        for line in promises.lengths
    ),
    "limit over 98": lambda promises: (
        min((figure.value for figure in promises.figures if figure.name.endswith(SCALE)), default=0.0) >= OVER_98
    ),
    "square of 4 in": lambda promises: any(
        line.purpose == "dimension" and abs(line.length - SQUARE_OF_4_IN) < OFF_4_IN and line.label == "4 in"
        for line in promises.lengths
    ),
    "marks of 1/64 in": _marks_of_64,
    "slot": lambda promises: any(figure.name == SLOT for figure in promises.figures),
    "one board": lambda promises: _boards(promises) == 1,
    "taken": lambda promises: any(figure.name.endswith(TAKEN) for figure in promises.figures),
    "layouts": lambda promises: bool(promises.layouts),
    "cuts": lambda promises: any(layout.cuts for layout in promises.layouts),
    "offcut": lambda promises: any(layout.offcut is not None for layout in promises.layouts),
    "askew": lambda promises: any(len(place.measures) > 1 for one in promises.layouts for place in one.places),
    "measured": lambda promises: bool(promises.sizes),
    "holes": lambda promises: any(len(outline.rings) > 1 for outline in promises.outlines),
    "bevel": lambda promises: any(word.kind == "bevel" for piece in promises.prints for word in piece.words),
    "guided bevel": lambda promises: any(drawing.key == GUIDED for drawing in promises.drawings),
    "reference": _has_line("reference"),
    "glue": _has_line("glue"),
    "draw": _has_line("draw"),
    "score": _has_line("score"),
    "more true pages": _more_true,
    "tiled": lambda promises: bool(promises.seams),
    "cut list": lambda promises: any(page.kind == "cut_list" for page in promises.pages),
    "taken in hand": lambda promises: bool(promises.needed),
    "steps": lambda promises: any(one.key.startswith(STEP) for one in promises.sentences),
}
"""By name: whether it holds of what a file promises."""


def holds(promises: Promises, name: str) -> bool:
    """Say whether a circumstance, or its contrary (``not …``), holds of a whole file, or whether its design ``uses …`` a thing.
    Raises KeyError for a name that is none."""
    if name.startswith(USES):
        return name.removeprefix(USES) in promises.used
    wanted = not name.startswith("not ")
    return CIRCUMSTANCES[name.removeprefix("not ")](promises) is wanted
