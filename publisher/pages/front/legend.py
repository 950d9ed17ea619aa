"""The legend: every kind of line and every symbol of the pages, drawn with the very styles that the pages use."""

from publisher.basics import Layer, LineKind, polyline
from publisher.pages.model import Drawn, Stroke
from publisher.pages.type import HEADING, SMALL, TRIM, Block, Setter, line_style

LINES: tuple[tuple[LineKind, str, str], ...] = (
    (LineKind.CUT, "cut", "right through"),
    (LineKind.SCORE, "score", "half through"),
    (LineKind.FOLD, "fold", "bend, do not cut"),
    (LineKind.DRAW, "draw", "with a pencil"),
    (LineKind.GLUE, "glue", "area to be glued"),
    (LineKind.REFERENCE, "reference", "to line up"),
)
SLIT = "as deep as written"
SAMPLE = 17.0  # length of a line sample: long enough for every pattern to show
LEGEND_ROW = 5.4


def legend(
    setter: Setter,
    x: float,
    top: float,
    width: float,
    *,
    across: int = 2,
    title: bool = True,
    trim: bool = False,
    slits: bool = False,
) -> Block:
    """Draw the legend of line kinds in ``across`` columns. ``width`` in mm; the block's height follows.

    ``trim``: with the line along which the paper of tiles is cut off. ``slits``: what bends is slit, as deep as its template says.
    """
    drawn: list[Drawn] = []
    y = top
    if title:
        drawn += setter.line("Lines and what to do along them", HEADING, x, y - setter.drop(HEADING))
        y -= HEADING.leading + 1.0
    rows = [
        (line_style(kind), name, SLIT if slits and kind is LineKind.SCORE else meaning) for kind, name, meaning in LINES
    ]
    if trim:
        rows.append((TRIM, "trim", "the paper of a tile"))
    down = -(-len(rows) // across)
    column = width / across
    for number, (style, name, meaning) in enumerate(rows):
        left, middle = x + number // down * column, y - (number % down + 0.5) * LEGEND_ROW
        base = middle - setter.cap(SMALL) / 2
        drawn.append(Stroke(style, (polyline(((left, middle), (left + SAMPLE, middle))),), Layer.PAGE))
        drawn += setter.line(name, SMALL.bold(), left + SAMPLE + 2.5, base)
        said = setter.width(name + " ", SMALL.bold())
        drawn += setter.line(meaning, SMALL, left + SAMPLE + 2.5 + said, base)
    return Block(tuple(drawn), top - y + down * LEGEND_ROW)
