"""A round layer: plinths, floors of round towers."""

from publisher.basics import circle
from publisher.geometry.registry import ON_AXIS, Shape, Values, edges_of, length, shape_kind
from publisher.geometry.shapes.centre import cross, quarter_ticks


def build(values: Values) -> Shape:
    """Return a disc about the origin; edge ``rim``, area πr². Its centre and the quarters of its rim are marked."""
    radius = values.number("radius")
    rim = circle((0.0, 0.0), radius, "rim")
    return Shape(rim, edges_of(rim, ("rim",)), marks=(*cross(), *quarter_ticks(radius)))


KIND = shape_kind(
    "disc",
    "a round layer about its axis",
    (length("radius", "radius of the rim"),),
    ("rim",),
    build,
    origin=ON_AXIS,
    axis=True,
)
