"""A rectangle with square or rounded corners: decks, floors, bases."""

from collections.abc import Iterator

from publisher.basics import Finding
from publisher.geometry.paths import Pen, straight
from publisher.geometry.registry import LOWER_LEFT, SIDES, Shape, Values, edges_of, length, mm, shape_kind


def check(values: Values) -> Iterator[Finding]:
    """Find corners too round for the sides."""
    width, height, round_by = (values.number(name) for name in ("width", "height", "corner_radius"))
    if 2.0 * round_by > min(width, height) - 0.1 and round_by > 0.0:
        yield values.wrong(
            "corner_radius",
            f"corners of radius {mm(round_by)} leave no straight side on a rectangle {mm(width)} wide and {mm(height)} high",
            "make corner_radius less than half of the shorter side; a round layer is the shape disc",
            min(width, height) / 2.0,
        )


def build(values: Values) -> Shape:
    """Return a rectangle with its lower left corner at the origin; area w·h − (4 − π)·c².

    Edges ``bottom right top left`` end where a rounded corner begins.
    """
    w, h, c = (values.number(name) for name in ("width", "height", "corner_radius"))
    if c == 0.0:
        outer = straight((((0.0, 0.0), "bottom"), ((w, 0.0), "right"), ((w, h), "top"), ((0.0, h), "left")))
    else:
        pen = Pen((c, 0.0)).line((w - c, 0.0), "bottom").arc((w, c), (w - c, c), c, "corner")
        pen.line((w, h - c), "right").arc((w - c, h), (w - c, h - c), c, "corner")
        pen.line((c, h), "top").arc((0.0, h - c), (c, h - c), c, "corner")
        outer = pen.line((0.0, c), "left").arc((c, 0.0), (c, c), c, "corner").path()
    return Shape(outer, edges_of(outer, SIDES))


KIND = shape_kind(
    "rectangle",
    "a rectangle with square or rounded corners",
    (
        length("width", "overall width"),
        length("height", "overall height"),
        length("corner_radius", "radius of the corners (0 = square)", 0.0, 0.0),
    ),
    SIDES,
    build,
    check,
    origin=LOWER_LEFT,
)
