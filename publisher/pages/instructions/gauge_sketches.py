"""The sketch of measuring the board: a strip of it stands on its edge in the printed gauge; where it fits, its thickness stands."""

from collections.abc import Sequence

from publisher.basics import Point
from publisher.pages.instructions.part_sketches import FIELD_WIDE
from publisher.pages.instructions.sketch_pen import SketchPen
from publisher.pages.type import CUT, PICTURE_ADDED_CONTOUR, PICTURE_CONTOUR, PICTURE_DETAIL, PICTURE_GHOST

LEFT, RIGHT, GAUGE_LOW = 4.0, 68.0, 11.5  # mm: where the gauge lies, seen from above, and its lower line
NARROW, BROAD = 3.0, 13.0  # mm between its lines at its ends, much exaggerated
GRADUATIONS = 8  # of its graduations
STRIP_THICK, STRIP_LONG = (
    6.0,
    12.0,
)  # mm of the strip that is tried, seen on its edge: a cube would not say which side is measured
TRIED = (7.0, 51.0)  # mm along the field: where it is too thick for the gap, and where it is loose in it
ASKED_LONG = 4.2  # mm of the arrows that ask how thick something is
SAID_FROM = 6.4  # mm from the tick to the thicknesses that will do


def gauging(pen: SketchPen, check: int, ends: str) -> None:
    """A strip is cut off the board and stood on its edge in the gauge of the page ``check``; then the gauge from above: the strip where it
    is too thick for the gap and where it is loose, crossed out, and where it fits, ticked, over the thicknesses that will do; of several
    boards (no ``ends``) the words beside it say them."""
    strip_cut(pen)
    foot = strip_stood(pen)
    pen.count(str(check), *_on_page(0.9, 11.6), "left")
    fits = gauge_tried(pen)
    pen.line(foot, (fits[0], fits[1] + 1.0), style=PICTURE_GHOST)
    said = ends if pen.wide(ends) < FIELD_WIDE - SAID_FROM - 2.0 else ends.partition(" (")[0]
    left = min(max(fits[0] - (pen.wide(said) + SAID_FROM) / 2, 1.0), FIELD_WIDE - pen.wide(said) - SAID_FROM - 1.0)
    pen.right(left, 1.2)
    if said:
        pen.count(said, left + SAID_FROM, 1.8, "left")


def strip_cut(pen: SketchPen) -> None:
    """Draw a board as it lies, how thick it is to be found out, a knife that cuts a strip off it, and where that goes."""
    pen.scene("strip_cut")
    low, top, deep = 35.0, 37.6, 9.0
    left, cut, right = 7.0, 18.0, 22.0
    for face in (
        ((left, top), (right, top), (right + deep, top + deep), (left + deep, top + deep)),
        ((left, low), (right, low), (right, top), (left, top)),
        ((right, low), (right + deep, low + deep), (right + deep, top + deep), (right, top)),
    ):
        pen.white(*face)
        pen.line(*face, style=PICTURE_CONTOUR, closed=True)
    pen.line((cut, low), (cut, top), (cut + deep, top + deep), style=PICTURE_ADDED_CONTOUR)
    pen.knife((cut + 0.2 * deep, top + 0.2 * deep), 52.0)
    _asked(pen, left, -2.4, low, top)
    pen.arrow((31.5, 39.0), (37.5, 39.0))


def _asked(pen: SketchPen, edge: float, aside: float, low: float, top: float) -> None:
    """Draw arrows from below and from above, ``aside`` from what is measured, that ask how thick it is: the same sign wherever it lies."""
    for level in (low, top):
        pen.line((edge + 0.25 * aside, level), (edge + 1.5 * aside, level), style=PICTURE_DETAIL)
    pen.arrow((edge + aside, low - ASKED_LONG), (edge + aside, low))
    pen.arrow((edge + aside, top + ASKED_LONG), (edge + aside, top))
    pen.count("?", edge + aside * 2.3, (low + top) / 2 - 1.1)


def _on_page(x: float, deep: float, up: float = 0.0) -> Point:
    """Return where a point of a page that lies there, and over it, is drawn."""
    return 38.0 + x + 0.7 * deep, 33.0 + 0.7 * deep + up


def strip_stood(pen: SketchPen) -> Point:
    """Draw the strip as it is stood on its edge in the gauge of a page that lies there; return where it stands."""
    pen.scene("strip_stood")
    on = _on_page
    paper = (on(0.0, 0.0), on(23.0, 0.0), on(23.0, 15.0), on(0.0, 15.0))
    pen.white(*paper)
    pen.line(*paper, style=PICTURE_DETAIL, closed=True)
    pen.line(on(1.5, 3.0), on(21.5, 3.0), style=CUT)
    pen.line(on(1.5, 4.8), on(21.5, 8.4), style=CUT)
    left, right, front, back, tall = 5.0, 18.5, 3.0, 5.4, 4.4
    for face in (
        ((left, front, 0.0), (right, front, 0.0), (right, front, tall), (left, front, tall)),
        ((right, front, 0.0), (right, back, 0.0), (right, back, tall), (right, front, tall)),
        ((left, front, tall), (right, front, tall), (right, back, tall), (left, back, tall)),
    ):
        ring = tuple(on(*corner) for corner in face)
        pen.white(*ring)
        pen.line(*ring, style=PICTURE_CONTOUR, closed=True)
    top = on((left + right) / 2, (front + back) / 2, tall)
    pen.arrow((top[0], top[1] + 7.6), (top[0], top[1] + 1.0))
    return on((left + right) / 2, front)


def gauge_tried(pen: SketchPen) -> Point:
    """Draw the gauge from above with the strip at three places of it; return where it touches the upper line."""
    pen.scene("gauge_tried")
    pen.line((LEFT, GAUGE_LOW), (RIGHT, GAUGE_LOW), style=CUT)
    pen.line((LEFT, GAUGE_LOW + NARROW), (RIGHT, GAUGE_LOW + BROAD), style=CUT)
    for step in range(GRADUATIONS + 1):
        x = LEFT + (RIGHT - LEFT) * step / GRADUATIONS
        pen.line((x, GAUGE_LOW), (x, GAUGE_LOW + _gap(x)), style=PICTURE_DETAIL)
    fits = LEFT + (STRIP_THICK - NARROW) / (BROAD - NARROW) * (RIGHT - LEFT)
    for x in TRIED:
        _edge_on(pen, _ring(x))
        pen.wrong(
            x - 1.2, GAUGE_LOW - 1.4, x + STRIP_LONG + 1.2, GAUGE_LOW + max(STRIP_THICK, _gap(x + STRIP_LONG)) + 1.4
        )
    _edge_on(pen, _ring(fits))
    _asked(pen, fits + STRIP_LONG, 2.4, GAUGE_LOW, GAUGE_LOW + STRIP_THICK)
    pen.arrow((fits, GAUGE_LOW - 0.8), (fits, GAUGE_LOW - 5.0))  # it is read where the strip touches both lines
    return fits, GAUGE_LOW + STRIP_THICK


def _edge_on(pen: SketchPen, ring: Sequence[Point]) -> None:
    pen.white(*ring)
    pen.line(*ring, style=PICTURE_ADDED_CONTOUR, closed=True)


def _ring(left: float) -> tuple[Point, ...]:
    return (
        (left, GAUGE_LOW),
        (left + STRIP_LONG, GAUGE_LOW),
        (left + STRIP_LONG, GAUGE_LOW + STRIP_THICK),
        (left, GAUGE_LOW + STRIP_THICK),
    )


def _gap(x: float) -> float:
    """Return how far apart the lines of the gauge are."""
    return NARROW + (BROAD - NARROW) * (x - LEFT) / (RIGHT - LEFT)
