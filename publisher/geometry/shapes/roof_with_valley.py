"""The slope of a main roof into which a wing's roof runs: a gabled roof's slope with a notch between two valleys."""

from collections.abc import Iterator
from math import cos, radians, sin, tan

from publisher.basics import Finding, record
from publisher.geometry.registry import LOWER_LEFT, Shape, Values, angle, cornered, length, mm, shape_kind
from publisher.geometry.rules import LEAST_WALL
from publisher.geometry.shapes.slopes import bevel_between

EDGES = ("left_eave", "left_valley", "right_valley", "right_eave", "right_verge", "ridge", "left_verge")


@record
class Notched:
    """The true shape in mm, on the underside: width, height up the slope, where the notch stands, its half width at the
    eave, the height of its tip."""

    width: float
    height: float
    middle: float
    half: float
    tip: float


def notched(values: Values) -> Notched:
    """Return the slope with its notch. Both roofs' eaves lie at one height, also at the overhang."""
    main, past, verge = values.number("pitch"), values.number("overhang"), values.number("verge")
    p, q = radians(main), radians(_wing_pitch(values))
    half = values.number("wing_span") / 2.0
    at = values.number("wing_at") if values.says("wing_at") else values.number("length") / 2.0
    return Notched(
        width=values.number("length") + 2.0 * verge,
        height=values.number("span") / 2.0 / cos(p) + past,
        middle=at + verge,
        half=half + past * sin(p) / tan(q),
        tip=half * tan(q) / sin(p) + past,
    )


def _wing_pitch(values: Values) -> float:
    return values.number("wing_pitch") if values.says("wing_pitch") else values.number("pitch")


def check(values: Values) -> Iterator[Finding]:
    """Find a wing higher than the roof, and eaves that the wing leaves no room."""
    found = notched(values)
    if found.tip > found.height - LEAST_WALL:
        p, q = radians(values.number("pitch")), radians(_wing_pitch(values))
        most = 2.0 * (found.height - LEAST_WALL - values.number("overhang")) * sin(p) / tan(q)
        yield values.wrong(
            "wing_span",
            f"the valleys of a wing that spans {mm(values.number('wing_span'))} meet {mm(found.tip)} up a slope of {mm(found.height)}",
            f"leave {mm(LEAST_WALL)} under the ridge: make wing_span at most {mm(max(most, 0.0))}, or its pitch flatter",
            most,
        )
    side = min(found.middle, found.width - found.middle) - found.half
    if side < LEAST_WALL:
        yield values.wrong(
            "wing_at" if values.says("wing_at") else "wing_span",
            f"beside the wing {mm(max(side, 0.0))} of the eave are left",
            f"leave at least {mm(LEAST_WALL)} at each side: move the wing, or make it narrower",
            LEAST_WALL,
        )


def build(values: Values) -> Shape:
    """Return the slope seen from above it, eave at the bottom, lower left corner at the origin.

    As for the other roofs the sizes hold on the underside; ridge and valleys are nominal on the inside face. Each valley is
    as long as on the wing's own slope, the shape valley_panel: √((wing_span/2)² + (rise/sin(pitch))²).
    """
    found = notched(values)
    m, w, h = found.middle, found.width, found.height
    points = ((0.0, 0.0), (m - found.half, 0.0), (m, found.tip), (m + found.half, 0.0), (w, 0.0), (w, h), (0.0, h))
    valley = -bevel_between(values.number("pitch"), _wing_pitch(values))
    bevels = {"left_valley": valley, "right_valley": valley, "ridge": values.number("pitch")}
    return cornered(tuple(zip(points, EDGES, strict=True)), EDGES, inside=tuple(bevels), bevels=bevels)


KIND = shape_kind(
    "roof_with_valley",
    "one slope of a gabled roof with a notch for a wing's roof at the same eaves, seen from above",
    (
        length("span", "width that both slopes cover together, measured level on the underside"),
        length("length", "length of the building along the ridge"),
        angle("pitch", "angle of the slope against the horizontal", 1.0, 80.0),
        length("wing_span", "width that both slopes of the wing cover together"),
        angle("wing_pitch", "angle of the wing's slopes", 1.0, 80.0, "as pitch"),
        length("wing_at", "distance of the wing's middle from the building's left end", "middle", 0.0),
        length("overhang", "how far the eave runs on down the slope beyond the span", 0.0, 0.0),
        length("verge", "how far the roof runs past the building at each end", 0.0, 0.0),
    ),
    EDGES,
    build,
    check,
    origin=LOWER_LEFT,
)
