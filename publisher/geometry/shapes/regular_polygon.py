"""A regular polygon: floors and plinths of many-sided towers."""

from math import pi

from publisher.basics import polar
from publisher.geometry.registry import ON_AXIS, Shape, Values, cornered, count, length, shape_kind
from publisher.geometry.shapes.centre import cross


def build(values: Values) -> Shape:
    """Return a polygon about the origin with a flat side at the bottom; area n/2·R²·sin(2π/n), side 2R·sin(π/n).

    Edges ``side_1`` (the bottom) … ``side_n``, anticlockwise. Formulas: Machinery's Handbook, 31st ed., p. 82.
    """
    sides, radius = values.count("sides"), values.number("radius")
    first = -pi / 2.0 - pi / sides
    corners = [(polar(radius, first + 2.0 * pi * k / sides), f"side_{k + 1}") for k in range(sides)]
    return cornered(corners, marks=cross())


KIND = shape_kind(
    "regular_polygon",
    "a layer with equal sides about its axis, flat at the bottom",
    (
        count("sides", "number of sides", 3, 100),
        length("radius", "radius of the circle through the corners"),
    ),
    ("side_1 … side_n",),
    build,
    origin=ON_AXIS,
    axis=True,
)
