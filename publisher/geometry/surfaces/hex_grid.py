"""A grid of regular hexagons: zigzag lines from side to side, and the links between them."""

from math import sqrt

import numpy as np
import shapely

from publisher.geometry.model import ParameterInfo, ShapeInfo
from publisher.geometry.registry import Values, length, nothing_to_check
from publisher.geometry.surfaces.pattern import Ground, LineFamily, Lines, Pattern, per_area, segments
from publisher.geometry.surfaces.rows import numbers
from publisher.geometry.surfaces.square_grid import START, centred


def lines(values: Values, ground: Ground) -> tuple[LineFamily, ...]:
    """Return the zigzags and their links. A hexagon ``size`` across its flats has the side size/√3."""
    size, flat = values.number("size"), values.word("top") == "flat"
    (left, bottom, right, top), (x0, y0) = ground.body.bounds, ground.origin
    if flat:  # worked out with a corner on top, then turned
        left, bottom, right, top, x0, y0 = bottom, left, top, right, y0, x0
    side = size / sqrt(3.0)
    rise = 1.5 * side  # from a row of hexagons to the next
    if values.word("start") == "middle":
        x0, y0 = centred(left, right, size), centred(bottom, top, rise)
    k = numbers(bottom - 2.0 * rise, top + rise, y0, rise)
    half = numbers(left - size, right + size, x0, size / 2.0)
    x = np.broadcast_to(x0 + half * size / 2.0, (len(k), len(half)))
    # row k of hexagons stands on a zigzag whose low points lie at k·rise, shifted by half a hexagon in odd rows
    high = (half[None, :] + k[:, None]) % 2.0 == 0.0
    y = y0 + k[:, None] * rise + np.where(high, side / 2.0, 0.0)
    zigzags: Lines = shapely.linestrings(_oriented(np.stack([x, y], axis=-1), flat))
    foot = y0 + (k[:, None] * rise + side / 2.0) + 0.0 * x
    a, b = _oriented(np.stack([x, foot], axis=-1)[high], flat), _oriented(np.stack([x, foot + side], -1)[high], flat)
    return LineFamily(zigzags), LineFamily(segments(a[:, 0], a[:, 1], b[:, 0], b[:, 1]))


def _oriented(points: np.ndarray, flat: bool) -> np.ndarray:
    return points[..., ::-1] if flat else points


PATTERN = Pattern(
    ShapeInfo(
        "hex_grid",
        "a grid of regular hexagons, for floor tiles or the fields of a game",
        (
            length("size", "width of a hexagon across its flats", least=5.0, most=500.0),
            ParameterInfo(
                "top", "choice", "what a hexagon has on top: a corner or a flat", "corner", choices=("corner", "flat")
            ),
            START,
        ),
        least_feature=2.5,
    ),
    lines,
    nothing_to_check,
    per_area(lambda values: values.number("size") ** 2 * sqrt(3.0) / 2.0),
    lambda values: values.number("size") / sqrt(3.0),
)
