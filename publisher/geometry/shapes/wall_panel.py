"""A straight wall that takes openings and joins."""

from publisher.geometry.registry import LOWER_LEFT, SIDES, Shape, Values, length, rectangle, shape_kind


def build(values: Values) -> Shape:
    """Return a wall seen from outside, lower left corner at the origin; area width × height."""
    w, h = values.number("width"), values.number("height")
    return rectangle(w, h)


KIND = shape_kind(
    "wall_panel",
    "a straight wall seen from outside; stated sizes are the finished outside, joins adjust for the board",
    (length("width", "finished outside width"), length("height", "finished height")),
    SIDES,
    build,
    openings=True,
    origin=LOWER_LEFT,
)
