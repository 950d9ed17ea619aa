"""A straight wall that takes openings and joins."""

from publisher.geometry.model import ShapeInfo
from publisher.geometry.paths import straight
from publisher.geometry.registry import LOWER_LEFT, Shape, ShapeKind, Values, edges_of, length, nothing_to_check

EDGES = ("bottom", "right", "top", "left")


def build(values: Values) -> Shape:
    """Return a wall seen from outside, lower left corner at the origin; area width × height."""
    w, h = values.number("width"), values.number("height")
    outer = straight((((0.0, 0.0), "bottom"), ((w, 0.0), "right"), ((w, h), "top"), ((0.0, h), "left")))
    return Shape(outer, edges_of(outer, EDGES))


KIND = ShapeKind(
    ShapeInfo(
        "wall_panel",
        "a straight wall seen from outside; stated sizes are the finished outside, joins adjust for the board",
        (length("width", "finished outside width"), length("height", "finished height")),
        EDGES,
        openings=True,
        origin=LOWER_LEFT,
    ),
    build,
    nothing_to_check,
)
