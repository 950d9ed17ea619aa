"""A tread or a landing: a rectangle whose front may be bowed or have round corners."""

from collections.abc import Iterator

from publisher.basics import Finding
from publisher.geometry.paths import Pen
from publisher.geometry.registry import LOWER_LEFT, Shape, Values, edges_of, length, mm, shape_kind

EDGES = ("front", "right", "back", "left")
FLATTEST_BOW = 200.0  # a bow is at least this part of the width
LEAST_TREAD_SIDE = 1.0  # mm of straight side that must stay


def check(values: Values) -> Iterator[Finding]:
    """Find round corners or a bow that the tread is too small for."""
    width, depth, radius, bow = _sizes(values)
    most = min(width / 2.0, depth) - LEAST_TREAD_SIDE
    if radius > max(most, 0.0) + 1e-9:
        yield values.wrong(
            "nosing_radius",
            f"front corners of radius {mm(radius)} leave no straight side on a tread {mm(width)} wide and {mm(depth)} deep",
            f"make nosing_radius at most {mm(max(most, 0.0))}",
            max(most, 0.0),
        )
    if 0.0 < bow < width / FLATTEST_BOW:
        yield values.wrong(
            "bow",
            f"a front bowed by {mm(bow)} over a width of {mm(width)} is straight to the eye and the knife",
            f"make bow at least {mm(width / FLATTEST_BOW)}, or 0 mm for a straight front",
            width / FLATTEST_BOW,
        )
    if bow > width / 2.0 + 1e-9:
        yield values.wrong(
            "bow",
            f"a front bowed by {mm(bow)} over a width of {mm(width)} is more than a half circle",
            f"make bow at most {mm(width / 2.0)}",
            width / 2.0,
        )
    if bow > 0.0 and radius > 0.0:
        yield values.wrong(
            "bow",
            f"the front is bowed by {mm(bow)} and has corners of radius {mm(radius)}: one arc or the other ends it",
            "leave out bow or nosing_radius",
        )


def _sizes(values: Values) -> tuple[float, float, float, float]:
    return (
        values.number("width"),
        values.number("going") + values.number("nosing"),
        values.number("nosing_radius"),
        values.number("bow"),
    )


def build(values: Values) -> Shape:
    """Return the tread seen from above, front at the bottom, lower left corner of its rectangle at the origin.

    Area: width·(going + nosing), less (2 − π/2)·nosing_radius² at the corners, or more by the bow's segment. A bow of
    sagitta f over the width w is an arc of radius (w²/4 + f²)/(2f).
    """
    width, depth, r, bow = _sizes(values)
    if bow > 0.0:
        radius = (width * width / 4.0 + bow * bow) / (2.0 * bow)
        pen = Pen((0.0, 0.0)).arc((width, 0.0), (width / 2.0, radius - bow), radius, "front")
    elif r > 0.0:
        pen = Pen((r, 0.0)).line((width - r, 0.0), "front").arc((width, r), (width - r, r), r, "nosing")
    else:
        pen = Pen((0.0, 0.0)).line((width, 0.0), "front")
    pen.line((width, depth), "right").line((0.0, depth), "back").line((0.0, r), "left")
    if r > 0.0:
        pen.arc((r, 0.0), (r, r), r, "nosing")
    return Shape(pen.path(), edges_of(pen.path(), EDGES))


KIND = shape_kind(
    "tread",
    "a tread or landing: going and nosing deep, its front straight, bowed or with round corners",
    (
        length("width", "width of the stair"),
        length("going", "depth from nose to nose"),
        length("nosing", "how far the tread runs out over the riser below", 0.0, 0.0),
        length("nosing_radius", "radius of the two front corners (0 = square)", 0.0, 0.0),
        length("bow", "how far the middle of the front stands out as an arc (0 = straight)", 0.0, 0.0),
    ),
    EDGES,
    build,
    check,
    origin=LOWER_LEFT,
)
