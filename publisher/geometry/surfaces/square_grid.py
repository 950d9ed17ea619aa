"""A square grid: floor slabs, or the fields of a game board."""

from math import ceil

from publisher.geometry.model import ParameterInfo, ShapeInfo
from publisher.geometry.registry import Values, length, nothing_to_check
from publisher.geometry.surfaces.pattern import Array, Ground, LineFamily, Pattern, per_area, segments
from publisher.geometry.surfaces.rows import numbers

START = ParameterInfo(
    "start",
    "choice",
    "whole fields begin at the lower left corner, or the fields are centred so that both sides end alike",
    "corner",
    choices=("corner", "middle"),
)


def lines(values: Values, ground: Ground) -> tuple[LineFamily, ...]:
    """Return the level lines and the upright ones, each as long as the box."""
    size, box, (left, bottom) = values.number("size"), ground.box, ground.origin
    if values.word("start") == "middle":
        left, bottom = centred(box.left, box.right, size), centred(box.bottom, box.top, size)
    x, y = _inner(box.left, box.right, left, size), _inner(box.bottom, box.top, bottom, size)
    level = segments(box.left, y, box.right, y)
    upright = segments(x, box.bottom, x, box.top)
    return LineFamily(level), LineFamily(upright)


def centred(low: float, high: float, size: float) -> float:
    """Return where whole fields must begin (mm, at or below ``low``) for both rest fields to be equal."""
    return (low + high) / 2.0 - ceil((high - low) / (2.0 * size)) * size


def _inner(low: float, high: float, origin: float, size: float) -> Array:
    at = origin + numbers(low, high, origin, size) * size
    inner: Array = at[(at > low + 1e-6) & (at < high - 1e-6)]
    return inner


PATTERN = Pattern(
    ShapeInfo(
        "square_grid",
        "a square grid, for floor slabs or the fields of a game",
        (length("size", "side of a field", least=3.0, most=500.0), START),
        least_feature=3.0,
    ),
    lines,
    nothing_to_check,
    per_area(lambda values: values.number("size") ** 2),
    lambda values: values.number("size"),
)
