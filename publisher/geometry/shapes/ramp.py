"""A ramp: its side, a wedge; and its deck, a rectangle of the true slope length."""

from collections.abc import Iterator
from math import atan2, degrees, hypot

from publisher.basics import Finding, LineKind, Purpose, polyline
from publisher.geometry.model import Mark
from publisher.geometry.registry import (
    LOWER_LEFT,
    SIDES,
    Shape,
    Values,
    cornered,
    count,
    deg,
    length,
    mm,
    rectangle,
    shape_kind,
)
from publisher.geometry.rules import LEAST_WALL

SIDE_EDGES = ("bottom", "right", "slope", "left")
FLATTEST_RAMP = 1.0  # degrees: a flatter ramp is a floor
_SLOPE = (
    length("run", "level length of the slope"),
    length("rise", "how far the ramp climbs over its run"),
)


def check(values: Values) -> Iterator[Finding]:
    """Find ramps too flat or too steep to be ramps."""
    run, rise = values.number("run"), values.number("rise")
    pitch = degrees(atan2(rise, run))
    if not FLATTEST_RAMP <= pitch <= 75.0:
        yield values.wrong(
            "rise",
            f"a rise of {mm(rise)} over a run of {mm(run)} is a slope of {deg(pitch)}",
            f"a ramp has {deg(FLATTEST_RAMP)} to {deg(75.0)}",
        )


def build_side(values: Values) -> Shape:
    """Return the wedge, lower left corner at the origin, climbing to the right; ``toe`` is its height at the low end.

    Area run·toe + run·rise/2. The toe keeps the low end from running out to nothing.
    """
    run, rise, toe = values.number("run"), values.number("rise"), values.number("toe")
    return cornered(
        (((0.0, 0.0), "bottom"), ((run, 0.0), "right"), ((run, toe + rise), "slope"), ((0.0, toe), "left")), SIDE_EDGES
    )


def build_deck(values: Values) -> Shape:
    """Return the deck, lower left corner at the origin: the slope's true length √(run² + rise²) along x, its width up.

    Battens are lines drawn across at equal distances, a foothold on a steep ramp.
    """
    whole, w = hypot(values.number("run"), values.number("rise")), values.number("width")
    n = values.count("battens")
    places = [(k + 1.0) * whole / (n + 1.0) for k in range(n)]
    marks = tuple(Mark(LineKind.DRAW, Purpose.SURFACE, polyline(((x, 0.0), (x, w))), name="batten") for x in places)
    return rectangle(whole, w, marks=marks)


SIDE = shape_kind(
    "ramp_side",
    "the side of a ramp: a wedge with a blunt low end",
    (*_SLOPE, length("toe", "height of the low end, so that it is not cut to nothing", LEAST_WALL, LEAST_WALL)),
    SIDE_EDGES,
    build_side,
    check,
    origin=LOWER_LEFT,
)
DECK = shape_kind(
    "ramp_deck",
    "the deck of a ramp: as long as the slope really is",
    (*_SLOPE, length("width", "width of the ramp"), count("battens", "battens drawn across (0 = none)", 0, 200, 0)),
    SIDES,
    build_deck,
    check,
    origin=LOWER_LEFT,
)
