"""The sketches of the acts of the trade, each in a field of ``WIDE`` × ``TALL`` mm; the right way ticked, the wrong one crossed out."""

from math import cos, radians, sin

import shapely

from publisher.basics import Box
from publisher.joints import STEEPEST_DRAWN
from publisher.pages.instructions.sketch_pen import SketchPen, along_arc, leaning
from publisher.pages.type import CUT, DRAW, PICTURE_DETAIL, PICTURE_GHOST

WIDE, TALL = 54.0, 27.0
THICK = 7.5  # mm: a board in section, much enlarged
CARD_SHOWN = 1.4
LOW = 0.5  # mm: where boards lie
TOP = LOW + THICK
BEVEL_EDGE, CUT_GUIDE = 24.0, 8.0  # mm: where a bevel begins on the upper face, and how tall its guide is
BEVEL_CLEAR = 14.0  # mm: how far the word on what is kept reaches, and a little more


def tracing(pen: SketchPen) -> None:
    """An upright pencil at the edge of a card, and a leaning one."""
    for left, lean in ((0.0, 0.0), (30.0, -32.0)):
        pen.section((left, LOW), (left + 22.0, LOW), (left + 22.0, TOP), (left, TOP))
        card = ((left, TOP), (left + 10.0, TOP), (left + 10.0, TOP + CARD_SHOWN), (left, TOP + CARD_SHOWN))
        pen.white(*card)
        pen.line(*card, closed=True)
        pen.pencil((left + 11.2 - leaning(CARD_SHOWN, lean) * 1.4, TOP), lean)
    pen.words("card", 1.0, TOP + 2.8)
    pen.right(17.5, TALL - 6.0)
    pen.wrong(33.0, TOP + 1.0, 53.0, TALL - 1.0)


def knife_off_the_card(pen: SketchPen) -> None:
    """A knife on the pencil's line with the card gone, and one run along the card."""
    for left in (0.0, 30.0):
        pen.section((left, LOW), (left + 22.0, LOW), (left + 22.0, TOP), (left, TOP))
    at = 16.5  # so far from the side that the word has room before the knife in each language
    pen.line((at, TOP), (at, TOP - 1.6), style=CUT)
    pen.knife((at, TOP))
    pen.words("pencil line", 0.0, TOP + 5.0)
    pen.line((at - 4.5, TOP + 4.4), (at - 0.6, TOP + 0.8), style=PICTURE_DETAIL)
    card = ((30.0, TOP), (42.0, TOP), (42.0, TOP + CARD_SHOWN), (30.0, TOP + CARD_SHOWN))
    pen.white(*card)
    pen.line(*card, closed=True)
    pen.knife((42.2, TOP - 3.0))
    pen.right(21.0, TALL - 6.0)
    pen.wrong(34.0, TOP - 1.0, 52.0, TALL - 2.0)


def strokes(pen: SketchPen) -> None:
    """A blade that stands upright and comes through in three strokes, and one that leans."""
    pen.section((0.0, LOW), (24.0, LOW), (24.0, TOP), (0.0, TOP))
    deep = THICK / 3
    for number in range(3):
        x = 2.5 + 5.0 * number
        pen.line((x, TOP), (x, TOP - deep * (number + 1)), style=CUT)
        pen.words(str(number + 1), x, TOP + 1.2, "centre")
    pen.knife((18.5, LOW))
    pen.section((31.0, LOW), (53.0, LOW), (53.0, TOP), (31.0, TOP))
    pen.knife((45.0, LOW), 28.0)
    pen.right(24.0, TALL - 6.0)
    pen.wrong(33.0, LOW, 51.0, TALL - 3.0)


def turning(pen: SketchPen) -> None:
    """A board from above that is turned under a knife, which is pulled towards the one who cuts."""
    pen.line((4.0, 5.0), (40.0, 1.0), (44.0, 22.0), (8.0, 26.0), closed=True)
    bow = along_arc((24.0, 2.5), 15.0, 25.0, 150.0)
    pen.line(*bow[:14], style=CUT)
    pen.line(*bow[13:], style=DRAW)
    x, y = bow[13]
    for ring in (((x - 0.8, y), (x + 0.8, y), (x + 0.8, y - 8.0), (x - 0.8, y - 8.0)),):
        pen.white(*ring)
        pen.line(*ring, style=PICTURE_DETAIL, closed=True)
    pen.arrow((x + 5.0, y - 2.0), (x + 5.0, y - 10.0))
    pen.turning((24.0, 11.0), 25.0, -12.0, 32.0)
    pen.words("board", 10.0, 21.0)


def corners(pen: SketchPen) -> None:
    """An opening from above: each cut begins in a corner and runs away from it; beside it one that runs past its corners."""
    left, right, low, high = 2.0, 24.0, 3.0, 23.0
    pen.line((left, low), (right, low), (right, high), (left, high), style=DRAW, closed=True)
    for start, end in (
        ((left, low), (left, high - 6.0)),
        ((left, high), (right - 6.0, high)),
        ((right, high), (right, low + 6.0)),
        ((right, low), (left + 6.0, low)),
    ):
        pen.arrow(start, end)
    pen.right(11.0, 11.0)
    left, right, low, high, past = 33.0, 49.0, 5.0, 21.0, 3.0
    for x in (left, right):
        pen.line((x, low - past), (x, high + past), style=CUT)
    for y in (low, high):
        pen.line((left - past, y), (right + past, y), style=CUT)
    pen.wrong(left + 3.0, low + 3.0, right - 3.0, high - 3.0)


def slitting(pen: SketchPen, covered: bool = False, slit: bool = True) -> None:
    """A strip in section with slits that are not cut through, and the same bent, slits on the hollow side; ``covered``: with paper or
    tape on the face that stays, which the bent one has outside."""
    thick, low, paper = 5.0, 6.0, 0.9
    pen.section((0.0, low), (22.0, low), (22.0, low + thick), (0.0, low + thick))
    for number in range(5 if slit else 0):
        x = 2.5 + 4.2 * number
        pen.line((x, low + thick), (x, low + thick / 3), style=CUT)
    if slit:
        pen.words("slits", 6.0, low + thick + 1.2)
    if covered:
        pen.line((-0.6, low - paper), (22.6, low - paper), style=CUT)
        pen.words("paper or tape", 0.0, low - paper - 3.6)
    pen.arrow((24.5, 9.0), (29.5, 9.0))
    centre, outer = (41.0, 7.0), 13.5 - (paper if covered else 0.0)
    inner = outer - thick
    pen.section(*along_arc(centre, outer, 20.0, 160.0), *along_arc(centre, inner, 160.0, 20.0))
    for turn in (45.0, 67.5, 90.0, 112.5, 135.0) if slit else ():
        pen.line(
            along_arc(centre, inner, turn, turn, 1)[0],
            along_arc(centre, outer - thick / 3, turn, turn, 1)[0],
            style=CUT,
        )
    if covered:
        pen.line(*along_arc(centre, outer + paper, 18.0, 162.0), style=CUT)
    pen.words("hollow side", centre[0], 5.0, "centre")


def bevelling(pen: SketchPen, outwards: bool, bevel: float = 45.0) -> None:
    """A guide on a board, and a blade that leans along its slope, ``bevel`` degrees from upright (drawn as at most 60).

    What is kept is at the left, as where pages say how a bevel is cut, its longer face up and the guide on the waste; ``outwards``: the
    longer face underneath, and the guide on what is kept.
    """
    pen.scene("bevelling")
    lean = min(bevel, STEEPEST_DRAWN)
    edge, tall = BEVEL_EDGE, CUT_GUIDE
    way = -1.0 if outwards else 1.0  # from the edge to the guide
    level = way * leaning(tall, lean)
    pen.section((4.0, LOW), (48.0, LOW), (48.0, TOP), (4.0, TOP))
    pen.section((edge, TOP), (edge + level, TOP), (edge + level, TOP + tall))
    tip = (edge - way * leaning(THICK, lean), LOW)
    pen.hatched(shapely.Polygon([(edge, TOP), (48.0, TOP), (48.0, LOW), tip]))
    pen.line((edge, TOP), tip, style=CUT)
    pen.knife(tip, -way * lean, (TOP + tall - LOW) / cos(radians(lean)) + 1.0, flip=not outwards)
    pen.words("guide", edge + level + way, TOP + 5.0, "right" if outwards else "left")
    pen.words("keep", 4.0, TOP + 1.2)
    pen.words("waste", 48.0, TOP + 1.2, "right")
    pen.right(48.0, TALL - 8.0)


def kept_face(outwards: bool, bevel: float) -> Box:
    """Return what of the upper face of the piece that is kept no word and no guide covers, where ``bevelling`` shows it."""
    guide = leaning(CUT_GUIDE, min(bevel, STEEPEST_DRAWN)) if outwards else 0.0
    right = BEVEL_EDGE - max(guide, 1.0)
    return Box(max(min(BEVEL_CLEAR, right - 1.0), 4.0), TOP - 0.4, right, TOP)


def pushing(pen: SketchPen) -> None:
    """A tab before its slot, and the same tab in it, its end level with the outside."""
    for left, tab in ((0.0, 12.0), (31.0, 4.0)):
        for low, high in ((LOW, 8.6), (15.8, 23.0)):
            pen.section((left, low), (left + THICK, low), (left + THICK, high), (left, high))
        x = left + tab - 4.0
        pen.section((x, 8.9), (x + 16.0, 8.9), (x + 16.0, 15.5), (x, 15.5))
        if tab == 4.0:
            pen.right(left + 14.0, 19.0)
    pen.arrow((22.0, 18.8), (13.0, 18.8))
    pen.words("outside", 0.0, 24.0)


def pinning(pen: SketchPen) -> None:
    """Two boards that meet in a corner, and two pins that go in from the outside of one, into the end of the other, and cross there:
    dashed where they are hidden in the boards."""
    pen.section((8.0, LOW), (8.0 + THICK, LOW), (8.0 + THICK, 24.0), (8.0, 24.0))
    pen.section((8.0 + THICK, LOW), (44.0, LOW), (44.0, TOP), (8.0 + THICK, TOP))
    for tip, lean in (((27.0, 2.6), 80.0), ((27.0, 5.8), 100.0)):
        pen.pin(tip, lean, 22.6, hidden=19.0 / sin(radians(lean)))
    pen.line((8.0 + THICK, LOW), (8.0 + THICK, TOP), style=CUT)
    pen.words("glue", 24.0, 15.0)
    pen.line((23.4, 14.8), (15.9, 7.0), style=PICTURE_DETAIL)


def weighing(pen: SketchPen) -> None:
    """Layers with a flat board and a book on them."""
    for layer in range(3):
        pen.section(
            (12.0, LOW + 4.0 * layer),
            (42.0, LOW + 4.0 * layer),
            (42.0, LOW + 4.0 * layer + 4.0),
            (12.0, LOW + 4.0 * layer + 4.0),
        )
    board = ((8.0, 12.5), (46.0, 12.5), (46.0, 14.5), (8.0, 14.5))
    pen.line(*board, closed=True)
    book = ((14.0, 14.5), (40.0, 14.5), (40.0, 20.0), (14.0, 20.0))
    pen.line(*book, closed=True)
    for y in (15.6, 16.7, 17.8, 18.9):
        pen.line((14.0, y), (38.6, y), style=PICTURE_DETAIL)
    pen.words("book", 43.0, 16.4)
    pen.arrow((27.0, 27.0), (27.0, 20.8))


def sanding(pen: SketchPen) -> None:
    """A sanding stick that is led along an upright block, so that it meets the edge squarely."""
    pen.line((0.0, LOW), (54.0, LOW))
    pen.section((4.0, LOW), (30.0, LOW), (30.0, TOP), (4.0, TOP))
    stick = ((30.6, LOW + 0.6), (33.6, LOW + 0.6), (33.6, 25.0), (30.6, 25.0))
    pen.white(*stick)
    pen.line(*stick, closed=True)
    block = ((34.2, LOW), (48.0, LOW), (48.0, 19.0), (34.2, 19.0))
    pen.white(*block)
    pen.line(*block, closed=True)
    pen.words("block", 41.0, 9.0, "centre")
    pen.words("work", 17.0, TOP + 1.4, "centre")
    pen.arrow((26.5, 18.0), (26.5, 25.0))
    pen.arrow((26.5, 19.0), (26.5, 12.0))


def peeling(pen: SketchPen) -> None:
    """Paper that is pulled back flat along its board."""
    pen.section((2.0, LOW), (50.0, LOW), (50.0, TOP), (2.0, TOP))
    pen.line((22.0, TOP + 0.4), (50.0, TOP + 0.4), style=CUT)
    pen.line(*along_arc((22.0, TOP + 3.4), 3.0, -90.0, -270.0), (44.0, TOP + 6.4), style=CUT)
    pen.line((2.0, TOP + 0.4), (22.0, TOP + 0.4), style=PICTURE_GHOST)
    pen.arrow((34.0, TOP + 10.0), (46.0, TOP + 10.0))
    pen.words("paper", 22.0, TOP + 8.8)
