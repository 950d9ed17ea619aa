"""The legend: every kind of line on this pack's templates and tiles, drawn with the very styles that the pages use."""

from collections.abc import Iterable

from publisher.basics import Box, Layer, LineKind, polyline
from publisher.geometry import Part
from publisher.pages.model import Drawn, Stroke
from publisher.pages.templates import template_marks
from publisher.pages.type import HATCH, HEADING, SMALL, TRIM, Block, Setter, line_style

LINES: tuple[tuple[LineKind, str, str], ...] = (
    (LineKind.CUT, "cut line", "cut right through"),
    (LineKind.SCORE, "score line", "cut half through"),
    (LineKind.FOLD, "fold line", "bend, do not cut"),
    (LineKind.DRAW, "drawn line", "draw or press in, do not cut"),
    (LineKind.GLUE, "glue line", "glue within or along it"),
    (LineKind.REFERENCE, "dotted line", "look at it, do not cut"),
)
SLIT = "cut as deep as its step says"
WASTE, WASTE_HALF = "cut it out and throw it away", 1.6  # words; mm: half of the height of its sample
STROKES = "In pictures short strokes are on the inside of a part."
STROKES_AND_PATTERN = "In pictures short strokes are on the inside of a part and its pattern on the outside."
UPPER_END = "The word “top” is at the upper end of a part."
LOOKS_AWAY = "What is dashed beside a part is on its face that looks away."
HATCHED = "In pictures hatched board is waste."
SAMPLE = 17.0  # length of a line sample: long enough for every pattern to show
LEGEND_ROW = 5.4


def legend(
    setter: Setter,
    x: float,
    top: float,
    width: float,
    kinds: frozenset[LineKind] = frozenset(LineKind),
    *,
    across: int = 2,
    title: bool = True,
    trim: bool = False,
    slits: bool = False,
    waste: bool = False,
    signs: tuple[str, ...] = (),
) -> Block:
    """Draw the legend of these line kinds in ``across`` columns. ``width`` in mm; the block's height follows.

    ``trim``: with the line along which the paper of tiles is cut off. ``slits``: what bends is slit, as deep as its step says.
    ``waste``: with the hatching of what is cut out. ``signs``: sentences on the signs of pictures.
    """
    drawn: list[Drawn] = []
    y = top
    if title:
        drawn += setter.line("Lines and what to do along them", HEADING, x, y - setter.drop(HEADING))
        y -= HEADING.leading + 1.0
    rows = [
        (line_style(kind), name, SLIT if slits and kind is LineKind.SCORE else meaning)
        for kind, name, meaning in LINES
        if kind in kinds
    ]
    if trim:
        rows.append((TRIM, "trim line", "cut the paper of a tile off"))
    down = -(-(len(rows) + waste) // across)
    column = width / across
    for number, (style, name, meaning) in enumerate(rows):
        left, middle = x + number // down * column, y - (number % down + 0.5) * LEGEND_ROW
        base = middle - setter.cap(SMALL) / 2
        drawn.append(Stroke(style, (polyline(((left, middle), (left + SAMPLE, middle))),), Layer.PAGE))
        drawn += setter.line(name, SMALL.bold(), left + SAMPLE + 2.5, base)
        said = setter.width(name + " ", SMALL.bold())
        drawn += setter.line(meaning, SMALL, left + SAMPLE + 2.5 + said, base)
    if waste:
        left, middle = x + len(rows) // down * column, y - (len(rows) % down + 0.5) * LEGEND_ROW
        drawn += _hatched(left, middle)
        drawn += setter.line("hatched", SMALL.bold(), left + SAMPLE + 2.5, middle - setter.cap(SMALL) / 2)
        said = setter.width("hatched ", SMALL.bold())
        drawn += setter.line(WASTE, SMALL, left + SAMPLE + 2.5 + said, middle - setter.cap(SMALL) / 2)
    y -= down * LEGEND_ROW
    if signs:
        words = setter.paragraph(" ".join(signs), SMALL, x, y, width)
        drawn += words.drawn
        y -= words.height
    return Block(tuple(drawn), top - y)


def _hatched(left: float, middle: float) -> tuple[Drawn, ...]:
    """Return a small opening with its hatching."""
    box = Box(left, middle - WASTE_HALF, left + SAMPLE, middle + WASTE_HALF)
    lean = box.height
    starts = (box.left + n * 3.0 for n in range(int((SAMPLE - lean) / 3.0) + 1))
    lines = tuple(polyline(((start, box.bottom), (start + lean, box.top))) for start in starts)
    outline = Stroke(line_style(LineKind.CUT), (polyline(box.corners(), True),), Layer.PAGE)
    return outline, Stroke(HATCH, lines, Layer.PAGE)


def kinds_on(parts: Iterable[Part]) -> frozenset[LineKind]:
    """Return the kinds of lines that stand on the templates of these parts; each has an outline to cut."""
    marks = (mark for part in parts for mark in template_marks(part))
    return frozenset((LineKind.CUT, *(mark.kind for mark in marks if len(mark.path.points) > 1)))
