"""One slope of a hipped roof: a trapezoid on the long sides, a triangle at the hip ends."""

from collections.abc import Iterator
from math import radians, sin, tan

from publisher.basics import Finding, Point, record
from publisher.geometry.registry import Shape, Values, angle, cornered, length, mm, shape_kind
from publisher.geometry.rules import LEAST_WALL
from publisher.geometry.shapes.slopes import bevel_between

LEAST_RIDGE = 1e-6  # mm: a shorter ridge is a point


@record
class Slope:
    """The true shape in mm: eave, ridge (0 = a point), height up the slope, all on the underside; both pitches in degrees."""

    eave: float
    ridge: float
    height: float
    pitch: float
    other: float


def slope(values: Values) -> Slope:
    """Return this slope's true shape over a rectangle in plan.

    It rises until it meets the slope across (run depth/2) or both of its neighbours meet (run eave/2 of theirs); each
    neighbour takes rise/tan(its pitch) off the ridge. The overhang runs down the slope, and the neighbours' level with it.
    """
    eave, depth, past = values.number("eave"), values.number("depth"), values.number("overhang")
    own = values.number("pitch")
    other = values.number("neighbour_pitch") if values.says("neighbour_pitch") else own
    p, q = radians(own), radians(other)
    rise = min(depth / 2.0 * tan(p), eave / 2.0 * tan(q))
    ridge = max(eave - 2.0 * rise / tan(q), 0.0)
    return Slope(
        eave + 2.0 * past * sin(p) / tan(q), ridge if ridge > LEAST_RIDGE else 0.0, rise / sin(p) + past, own, other
    )


def check(values: Values) -> Iterator[Finding]:
    """Find a ridge too short to cut, which is nearly a point."""
    found = slope(values)
    if 0.0 < found.ridge < LEAST_WALL:
        yield values.wrong(
            "eave",
            f"over an eave of {mm(values.number('eave'))} the ridge is only {mm(found.ridge)} long",
            f"make the eave {mm(found.ridge)} shorter for a slope that ends in a point, or longer for a ridge of {mm(LEAST_WALL)}",
            values.number("eave") - found.ridge,
        )


def build(values: Values) -> Shape:
    """Return the slope seen from above it, eave at the bottom, its left end at the origin.

    As for a roof panel, the sizes hold on the underside, which lies on the walls: ridge and hips are nominal on the inside
    face, and the bevel at which the slopes meet makes the drawn upper face larger. A hip over the run r at equal pitch is
    r·√(2 + tan²(pitch)) long on both of its slopes.
    """
    found = slope(values)
    middle, half = found.eave / 2.0, found.ridge / 2.0
    corners: list[tuple[Point, str]] = [((0.0, 0.0), "eave"), ((found.eave, 0.0), "right_hip")]
    hip = bevel_between(found.pitch, found.other)
    bevels = {"right_hip": hip, "left_hip": hip}
    if found.ridge:
        corners.append(((middle + half, found.height), "ridge"))
        bevels["ridge"] = found.pitch
    corners.append(((middle - half, found.height), "left_hip"))
    return cornered(corners, inside=tuple(bevels), bevels=bevels)


KIND = shape_kind(
    "hip_panel",
    "one slope of a hipped roof over a rectangle, seen from above: a trapezoid, or a triangle at the hip end",
    (
        length("eave", "length in plan of this slope's side"),
        length("depth", "length in plan of the side square to it"),
        angle("pitch", "angle of this slope against the horizontal", 1.0, 80.0),
        angle("neighbour_pitch", "angle of the slopes beside it", 1.0, 80.0, "as pitch"),
        length("overhang", "how far the eave runs on down the slope beyond the walls", 0.0, 0.0),
    ),
    ("eave", "right_hip", "ridge", "left_hip"),
    build,
    check,
    origin="the left end of its eave",
)
