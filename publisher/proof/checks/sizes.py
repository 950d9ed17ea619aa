"""Pieces without a template: the words and the drawing by which they are measured out, held against the pieces as they were made."""

import re
from collections.abc import Iterator, Sequence
from functools import partial

import numpy as np

from publisher.basics import (
    Carried,
    Check,
    DrawingPromise,
    EdgePromise,
    Findings,
    HolePromise,
    RowPromise,
    SizesPromise,
)
from publisher.proof.checks.frame import about, carried_faults, judged, without_name, words_at
from publisher.proof.measuring import Case
from publisher.proof.reading import MM_PER_INCH, normal

_N = r"(\d+(?:\.\d+)?)"
LENGTH = rf"{_N} (mm|in) \({_N} (mm|in)\)"
SIZE = rf"{_N} × {_N} (mm|in) \({_N} × {_N} (mm|in)\)"
ROUND = re.compile(rf"(\d+): a round hole, {LENGTH} across; its middle {LENGTH} from the left, {LENGTH} from below\.")
OPENING = re.compile(rf"(\d+): an opening, {SIZE}; {LENGTH} from the left, {LENGTH} from below\.")
LINE = re.compile(rf"Draw (a level|an upright) line, {LENGTH} from (?:below|the left)\.")
BEVEL = re.compile(rf"Bevel {_N}° at the (\w+) edge: the face underneath is (shorter|longer)\.")
RABBET = re.compile(rf"Rabbet at the (\w+) edge: cut the foam away behind, {LENGTH} wide")
WHOLE = re.compile(rf"^.*?{SIZE},")
CUT = re.compile(r"\bcut (\d+)(?: \+ (\d+) spare)?")
EDGES = {"lower": "bottom", "right": "right", "upper": "top", "left": "left"}
SIZE_HALF_MM, SIZE_HALF_IN = (
    0.05,
    0.0051,
)  # of the last digit that is printed; inches are those of the millimetres shown
SIZE_DUST = 1e-6
DRAWN_AS_SAID = 0.02  # mm between a size in words and the same one in the drawing
HOLE_CHORD = 0.5  # mm of the piece by which a round hole is drawn smaller, of few chords


@judged(
    "proof/sizes",
    "Sizes of pieces without a template",
    "a piece that is measured out comes out as the words and the drawing say: its letter, how many are cut, its sides, each hole, each "
    f"line and each bevel, to {SIZE_HALF_MM:g} mm",
    may_be_empty=True,
)
def sizes_said(case: Case, check: Check[Case]) -> Findings:
    """Read what stands beside each drawing, and hold the drawing against the same sizes."""
    rows = {row.part: row for row in case.promises.rows}
    drawings = {drawing.key: drawing for drawing in case.promises.drawings}
    shown = {outline.part for outline in case.promises.outlines}
    hint = "write and draw the sizes of each piece from the piece itself"
    for promise in case.promises.sizes:
        who = f"part {promise.letter} ({promise.part})"
        row = rows.get(promise.part)
        if row is None:
            yield about(check, who, "is measured out, and nobody counted it", hint)
            continue
        if promise.part in shown:
            yield about(check, who, "is measured out, and has a template too", hint)
        if fault := _other_piece(promise, row, drawings.get(promise.key)):
            yield about(check, who, fault, hint)
        judge = partial(_fault, case, promise, row)
        yield from carried_faults(case, check, f"{promise.key}:words", who, hint, judge, f": {who}")
    return len(case.promises.sizes)


def _other_piece(promise: SizesPromise, row: RowPromise, drawing: DrawingPromise | None) -> str:
    """Return in words that the sizes are not those of the piece that was counted, or not those of its drawing; empty when they are."""
    if max(abs(promise.width - row.width), abs(promise.height - row.height)) > DRAWN_AS_SAID:
        return f"is {row.width:.2f} × {row.height:.2f} mm; its sizes are promised as {promise.width:.2f} × {promise.height:.2f} mm"
    if drawing is None:
        return "is measured out, and has no drawing"
    boxes = [_box(line) for line in drawing.lines]
    wanted = [(0.0, 0.0, promise.width, promise.height, DRAWN_AS_SAID), *map(_place, promise.holes)]
    for left, bottom, right, top, off in wanted:
        if not any(max(map(abs, np.subtract(box, (left, bottom, right, top)))) <= off for box in boxes):
            return f"is drawn without its line from {left:.1f}, {bottom:.1f} to {right:.1f}, {top:.1f} mm"
    return ""


def _box(points: tuple[tuple[float, float], ...]) -> tuple[float, ...]:
    array = np.asarray(points)
    return (*map(float, array.min(axis=0)), *map(float, array.max(axis=0)))


def _place(hole: HolePromise) -> tuple[float, float, float, float, float]:
    """Return the box of a hole, and how far (mm) the drawing may be off it."""
    if not hole.round:
        return hole.left, hole.up, hole.left + hole.width, hole.up + hole.height, DRAWN_AS_SAID
    half = hole.width / 2.0
    return hole.left - half, hole.up - half, hole.left + half, hole.up + half, HOLE_CHORD


def _fault(case: Case, promise: SizesPromise, row: RowPromise, where: Carried) -> str:
    """Return in words what is said otherwise than promised, with or without what the name says; empty when nothing."""
    said = words_at(case, where)
    return _said_wrongly(said, promise, row) and _said_wrongly(without_name(said, row.name), promise, row)


def _said_wrongly(said: str, promise: SizesPromise, row: RowPromise) -> str:
    if not said.startswith(f"{normal(promise.letter)} "):
        return f" does not say that it is {promise.letter}"
    counts = [(int(count), int(spare or 0)) for count, spare in CUT.findall(said)]
    if (row.count, row.spare) not in counts:
        return f" does not say that {row.count} and {row.spare} to spare are cut"
    whole = WHOLE.search(said)
    if whole is None or not _sized(whole.groups(), (promise.width, promise.height)):
        return f" does not say that it measures {promise.width:.1f} × {promise.height:.1f} mm"
    for what, found, wanted in _lists(said, promise):
        if len(found) != len(wanted) or not all(same for same in map(_same, found, wanted)):
            return f": the words about {what} are not those of the piece, which has {len(wanted)}"
    return ""


SizesRead = tuple[tuple[str, ...], Sequence[str]]  # words that must be the same, and figures with their units
SizesWanted = tuple[tuple[str, ...], tuple[float, ...]]


def _lists(said: str, promise: SizesPromise) -> Iterator[tuple[str, list[SizesRead], list[SizesWanted]]]:
    """Yield of each kind of thing what is read of it, and what is promised, in the order of the words."""
    numbered = [*enumerate(promise.holes, 1)]
    yield (
        "round holes",
        [((number,), figures) for number, *figures in map(_texts, ROUND.finditer(said))],
        [((str(n),), (hole.width, hole.left, hole.up)) for n, hole in numbered if hole.round],
    )  # fmt: skip
    yield (
        "openings",
        [((number,), _parted(figures)) for number, *figures in map(_texts, OPENING.finditer(said))],
        [((str(n),), (h.width, h.height, h.left, h.up)) for n, h in numbered if not h.round],
    )  # fmt: skip
    yield (
        "lines",
        [((way,), figures) for way, *figures in map(_texts, LINE.finditer(said))],
        [(("a level" if level else "an upright",), (at,)) for level, at in promise.lines],
    )  # fmt: skip
    yield (
        "bevels",
        [_bevel(*found.groups()) for found in BEVEL.finditer(said)],
        [((edge.side, _ends(edge), f"{abs(edge.bevel):.2f}"), ()) for edge in promise.edges if edge.bevel],
    )
    yield (
        "rabbets",
        [((EDGES.get(side, ""),), figures) for side, *figures in map(_texts, RABBET.finditer(said))],
        [((edge.side,), (edge.rabbet,)) for edge in promise.edges if edge.rabbet],
    )


def _texts(found: "re.Match[str]") -> tuple[str, ...]:
    return found.groups()


def _parted(figures: Sequence[str]) -> tuple[str, ...]:
    """Return the figures of a size as those of two lengths, then those that follow."""
    a, b, unit, c, d, other, *rest = figures
    return (a, unit, c, other, b, unit, d, other, *rest)


def _bevel(angle: str, side: str, ends: str) -> SizesRead:
    return (EDGES.get(side, ""), ends, f"{float(angle):.2f}"), ()


def _ends(edge: EdgePromise) -> str:
    return "shorter" if edge.bevel > 0.0 else "longer"


def _same(found: SizesRead, wanted: SizesWanted) -> bool:
    (words, figures), (right, lengths) = found, wanted
    if words != right or len(figures) != 4 * len(lengths):
        return False
    pairs = [(figures[2 * n : 2 * n + 2], lengths[n // 2]) for n in range(2 * len(lengths))]
    units = {figures[n] for n in (1, 3)} if figures else {"mm", "in"}
    return units == {"mm", "in"} and all(_reads(number, unit, mm) for (number, unit), mm in pairs)


def _reads(number: str, unit: str, mm: float) -> bool:
    """Say whether a figure with its unit stands for a length."""
    if unit == "mm":
        return abs(float(number) - mm) <= SIZE_HALF_MM + SIZE_DUST
    return abs(float(number) * MM_PER_INCH - mm) <= SIZE_HALF_IN * MM_PER_INCH + SIZE_HALF_MM + SIZE_DUST


def _sized(figures: tuple[str, ...], sides: tuple[float, float]) -> bool:
    return _same(((), _parted([*figures])), ((), sides))
