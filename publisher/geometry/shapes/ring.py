"""A round layer with a round hole: courses of round towers and wells."""

from collections.abc import Iterator

from publisher.basics import Finding, circle
from publisher.geometry.registry import ON_AXIS, Shape, Values, edges_of, length, mm, shape_kind
from publisher.geometry.rules import LEAST_WALL
from publisher.geometry.shapes.centre import quarter_ticks


def check(values: Values) -> Iterator[Finding]:
    """Find a hole that leaves no wall."""
    radius, hole = values.number("radius"), values.number("hole_radius")
    if hole > radius - LEAST_WALL + 1e-9:
        yield values.wrong(
            "hole_radius",
            f"a hole of radius {mm(hole)} in a ring of radius {mm(radius)} leaves {mm(radius - hole)} of wall",
            f"leave at least {mm(LEAST_WALL)}: hole_radius at most {mm(radius - LEAST_WALL)}",
            radius - LEAST_WALL,
        )


def build(values: Values) -> Shape:
    """Return a ring about the origin; edge ``rim``, the hole's run is ``bore``, area π(R² − r²)."""
    rim = circle((0.0, 0.0), values.number("radius"), "rim")
    bore = circle((0.0, 0.0), values.number("hole_radius"), "bore", ccw=False)
    ticks = quarter_ticks(values.number("radius"), values.number("hole_radius"))
    return Shape(rim, edges_of(rim, ("rim",)), (bore,), ticks)


KIND = shape_kind(
    "ring",
    "a round layer with a round hole about the same axis",
    (length("radius", "radius of the rim"), length("hole_radius", "radius of the hole")),
    ("rim",),
    build,
    check,
    origin=ON_AXIS,
    axis=True,
)
