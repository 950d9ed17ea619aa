"""One face of a pyramid, a spire or a tower that tapers."""

from collections.abc import Iterator
from math import atan2, degrees, hypot, pi, tan

from publisher.basics import Finding, Point
from publisher.geometry.registry import Shape, Values, cornered, count, just_one, length, mm, shape_kind
from publisher.geometry.rules import LEAST_WALL
from publisher.geometry.shapes.slopes import bevel_between


def base_width(values: Values) -> float:
    """Return the width of the face at the base, mm: as given, or 2·a·tan(π/n) for the apothem a."""
    if values.says("width"):
        return values.number("width")
    return 2.0 * values.number("apothem") * tan(pi / values.count("sides"))


def face(values: Values) -> tuple[float, float]:
    """Return the face's height in mm, √(height² + (a − a_top)²), and its pitch against the horizontal in degrees."""
    inwards = (base_width(values) - values.number("top_width")) / 2.0 / tan(pi / values.count("sides"))
    return hypot(values.number("height"), inwards), degrees(atan2(values.number("height"), inwards))


def check(values: Values) -> Iterator[Finding]:
    """Find both or neither of width and apothem, and a top that is no narrower than the base."""
    yield from just_one(values, "width", "apothem")
    if values.says("width") == values.says("apothem"):
        return
    base, top = base_width(values), values.number("top_width")
    if 0.0 < top < LEAST_WALL:
        yield values.wrong(
            "top_width",
            f"a top edge {mm(top)} wide is too short to cut",
            f"make it at least {mm(LEAST_WALL)}, or 0 mm for a point",
            LEAST_WALL,
        )
    elif top > base - 0.1:
        yield values.wrong(
            "top_width",
            f"the top edge is {mm(top)} wide and the base {mm(base)}: the faces do not lean inwards",
            "make top_width smaller; upright walls are the shape tower_panel",
            base - 0.1,
        )


def build(values: Values) -> Shape:
    """Return the face seen from outside, base at the bottom, its left end at the origin.

    The sizes hold on the outside faces. The side edges are bevelled by half the angle between two faces; the base is
    bevelled so that it stands level, and the top so that it ends level. Apex angle 2·atan(width/2/face height); n faces
    have together the surface n·(width + top_width)/2·face height.
    """
    sides, base, top = values.count("sides"), base_width(values), values.number("top_width")
    high, pitch = face(values)
    corners: list[tuple[Point, str]] = [((0.0, 0.0), "base"), ((base, 0.0), "right")]
    side = bevel_between(pitch, pitch, 360.0 / sides)
    bevels = {"right": side, "left": side}
    if 90.0 - pitch <= 80.0:
        bevels["base"] = 90.0 - pitch
    if top > 0.0:
        corners.append((((base + top) / 2.0, high), "top"))
        if "base" in bevels:
            bevels["top"] = pitch - 90.0
    corners.append((((base - top) / 2.0, high), "left"))
    return cornered(corners, bevels=bevels)


KIND = shape_kind(
    "spire_facet",
    "one face of a pyramid, a many-sided spire or a tapering tower, seen from outside",
    (
        count("sides", "number of faces", 3, 100),
        length("width", "width of the face at its base", "from apothem"),
        length("apothem", "distance from the axis to the middle of the base", "from width"),
        length("height", "height over the base, upright"),
        length("top_width", "width of the face at its top (0 = a point)", 0.0, 0.0),
    ),
    ("base", "right", "top", "left"),
    build,
    check,
    origin="the left end of its base",
)
