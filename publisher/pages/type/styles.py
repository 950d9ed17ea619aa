"""How everything on a page looks: one type scale, one set of lines, one grid. No page has a style of its own.

Line types and widths follow ISO 128-2: widths from the series 0.18, 0.25, 0.35, 0.5 mm; with line width d a dash is 12 d, a
long dash 24 d, a gap 3 d. Dots are one d long (not half a d), so that a 300 dpi printer in black and white still shows them.
Words and lines are black, for a printer without greys sets these in dots; the greys that are left are grounds.
"""

from typing import Literal

from publisher.basics import LineKind, changed, record
from publisher.pages.model import LineStyle

Weight = Literal["regular", "bold"]

TEXT_GREY = 0.0  # quiet words are small, not grey: a printer in black and white would set grey ones in dots
PALE = 0.93  # ground of a box, never of words that matter alone

CUT = LineStyle("cut", 0.5)
SCORE = LineStyle("score", 0.35, (4.2, 1.05))
DRAW = LineStyle("draw", 0.25)
FOLD = LineStyle("fold", 0.35, (8.4, 1.05, 0.35, 1.05))
GLUE = LineStyle("glue", 0.25, (6.0, 0.75, 0.25, 0.75, 0.25, 0.75))
REFERENCE = LineStyle("reference", 0.25, (0.25, 0.75))

_KINDS = {
    LineKind.CUT: CUT,
    LineKind.SCORE: SCORE,
    LineKind.DRAW: DRAW,
    LineKind.FOLD: FOLD,
    LineKind.GLUE: GLUE,
    LineKind.REFERENCE: REFERENCE,
}

FRAME = LineStyle("frame", 0.35)  # corner marks
GAUGE = LineStyle("gauge", 0.25)  # the base line of a ruler, a calibration square, a card outline
TICK = LineStyle("tick", 0.18)
RULE = LineStyle("rule", 0.18)  # between rows of a table, under a header; black: one-bit printers dot a grey line
STRONG_RULE = LineStyle("strong_rule", 0.35)
TRIM = LineStyle("trim", 0.35, (1.2, 1.2))  # where a tile's paper is cut off: short dashes, unlike those of a score
HATCH = LineStyle("hatch", 0.18)
LEADER = LineStyle("leader", 0.18)
DIMENSION = LineStyle("dimension", 0.18)
PICTURE_CONTOUR = LineStyle("picture_contour", 0.5, (), 0.0, True)  # outer edges are heavier than inner ones
PICTURE_OUTLINE = LineStyle("picture_outline", 0.25, (), 0.0, True)
PICTURE_DETAIL = LineStyle("picture_detail", 0.18, (), 0.0, True)
PICTURE_GHOST = LineStyle("picture_ghost", 0.18, (1.0, 0.8))
PICTURE_PAPER = LineStyle("picture_paper", 0.25, (0.25, 1.55))  # rows of dots: paper or tape on a face
PICTURE_CUE = LineStyle("picture_cue", 0.5, (), 0.0, True)
PICTURE_HATCH = LineStyle("picture_hatch", 0.18, (1.0, 1.2))  # short strokes on insides: no hatching of waste has gaps
PICTURE_THERE = LineStyle("picture_there", 0.18, (), 0.0, True)  # of an act: what stands
PICTURE_THERE_CONTOUR = LineStyle("picture_there_contour", 0.25, (), 0.0, True)
PICTURE_ADDED = LineStyle("picture_added", 0.35, (), 0.0, True)  # what is added to it
PICTURE_ADDED_CONTOUR = LineStyle("picture_added_contour", 0.7, (), 0.0, True)
PICTURE_GUIDE = LineStyle("picture_guide", 0.25, (0.25, 0.75))  # where it goes: dots, as no outline has
PICTURE_BEHIND = LineStyle("picture_behind", 0.25, (1.0, 0.7))  # a sign on the face that looks away
PICTURE_RING = LineStyle("picture_ring", 0.25, (), 0.0, True)  # round a detail and its place


def line_style(kind: LineKind) -> LineStyle:
    """Return how a kind of line is drawn."""
    return _KINDS[kind]


@record
class TypeStyle:
    """A size of words: weight, em and distance of baselines in mm, grey, structure element they belong to."""

    name: str
    weight: Weight
    size: float
    leading: float
    grey: float = 0.0
    tag: str = "p"

    def bold(self) -> "TypeStyle":
        """Return the same size in bold."""
        return changed(self, weight="bold")

    def tagged(self, tag: str) -> "TypeStyle":
        """Return the same style as another structure element."""
        return changed(self, tag=tag)

    def quiet(self) -> "TypeStyle":
        """Return the same style as words beside the matter have it."""
        return changed(self, grey=TEXT_GREY)


# x-height is 0.536 em in the regular weight: 2.09 mm in body text (clear print asks for 2), 1.45 in notes (fluent reading
# begins at 1.4 at arm's length), 1.23 in tick numbers (1.2 is the least that labels may have by Regulation (EU) 1169/2011)
DISPLAY = TypeStyle("display", "bold", 10.5, 12.0, tag="h1")
TITLE = TypeStyle("title", "bold", 6.2, 7.6, tag="h1")
HEADING = TypeStyle("heading", "bold", 4.6, 6.0, tag="h2")
BODY = TypeStyle("body", "regular", 3.9, 5.4)
SMALL = TypeStyle("small", "regular", 3.2, 4.3)
NOTE = TypeStyle("note", "regular", 2.7, 3.6)
LEAST = TypeStyle("least", "regular", 2.3, 2.9)
LETTER = TypeStyle("letter", "bold", 12.0, 14.0)  # a part's letter on its template

SCREEN_HEAD = TypeStyle("screen_head", "bold", 5.6, 7.0, tag="h2")  # on a phone nothing is smaller than 10 points
SCREEN = TypeStyle("screen", "regular", 3.9, 5.4)
SCREEN_SMALL = TypeStyle("screen_small", "regular", 3.55, 4.8)

LEAST_SIZE = LEAST.size  # nothing is ever set smaller

SPACE = 2.0  # the step of the grid: distances between things are whole multiples of it
GUTTER = 6.0  # between columns
INSET = 5.0  # from the printable limit to words
