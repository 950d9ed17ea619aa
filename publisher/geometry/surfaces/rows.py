"""Rows with joints between their units: courses of a wall, planks of a floor, tiles of a roof.

Running bond: joints of neighbouring rows are at least a quarter of the unit's length apart (TMS 402, definition of running
bond). Nothing shorter than a quarter is left at an end or beside an opening: the joint that would cut it off is left out.
"""

from collections.abc import Sequence
from math import ceil, floor

import numpy as np

from publisher.basics import SAME_POINT, Box
from publisher.geometry.surfaces.pattern import Array, LineFamily, segments

QUARTER = 0.25  # of a unit: least overlap of neighbouring rows, and least end piece
ROW_SLACK = 1e-3  # mm by which a guard is shorter, so that an end piece of just a quarter stays


def numbers(low: float, high: float, origin: float, pitch: float) -> Array:
    """Return the whole numbers k whose rows [origin + k·pitch, origin + (k + 1)·pitch] meet low … high (mm)."""
    return np.arange(
        floor((low - origin) / pitch + SAME_POINT), ceil((high - origin) / pitch - SAME_POINT), dtype=float
    )


def bed_joints(lines: Array, box: Box) -> LineFamily:
    """Return the level lines (mm) that lie inside the box."""
    y = lines[(lines > box.bottom + SAME_POINT) & (lines < box.top - SAME_POINT)]
    return LineFamily(segments(box.left, y, box.right, y))


def head_joints(x: Array, low: Array, top: Array, box: Box, guard: float) -> LineFamily:
    """Return upright joints at x from low to top (mm), each with a guard line of ±guard at half the visible height."""
    low, top = np.maximum(low, box.bottom), np.minimum(top, box.top)
    shown = (x > box.left) & (x < box.right) & (top - low > SAME_POINT)
    x, low, top = x[shown], low[shown], top[shown]
    middle, reach = (low + top) / 2.0, guard - ROW_SLACK
    return LineFamily(segments(x, low, x, top), segments(x - reach, middle, x + reach, middle))


def spread(places: Sequence[Array], low: Array, top: Array) -> tuple[Array, Array, Array]:
    """Return the joints of all rows as flat arrays x, low, top; ``places`` holds the x of each row's joints."""
    counts = [len(p) for p in places]
    return np.concatenate([np.empty(0), *places]), np.repeat(low, counts), np.repeat(top, counts)


def random_joints(box: Box, origin: float, unit: float, vary: float, draws: Array) -> tuple[Array, ...]:
    """Return joints of rows whose units are unit·(1 ± vary) long, at least a quarter of a unit from those of the row below.

    ``draws`` (rows, n) are numbers in [0, 1). With vary = 0.3 there is always a place: what the row below forbids is half a
    unit wide, and the next joint may lie anywhere in a stretch of 0.6 units. The first unit starts at ``origin`` − unit.
    """
    begin = min(origin, box.left) - unit
    rows: list[Array] = []
    below = np.empty(0)
    for row in draws:
        x, own = begin - unit * float(row[0]), []
        for draw in row[1:]:
            if x > box.right:
                break
            x = _next(x, unit, vary, float(draw), below)
            own.append(x)
        below = np.asarray(own)
        rows.append(below)
    return tuple(rows)


def _next(x: float, unit: float, vary: float, draw: float, below: Array) -> float:
    """Return the next joint after x: where the draw puts it, or the nearest place that keeps off the joints below."""
    least, most, apart = x + (1.0 - vary) * unit, x + (1.0 + vary) * unit, QUARTER * unit
    wanted = least + draw * (most - least)
    near = below[np.searchsorted(below, least - apart) : np.searchsorted(below, most + apart, side="right")].tolist()
    places = [wanted, *(b + side * (apart + SAME_POINT) for b in near for side in (-1.0, 1.0))]
    free = [p for p in places if least <= p <= most and all(abs(p - b) >= apart for b in near)]
    return min(free, key=lambda p: abs(p - wanted), default=wanted)


def draws_needed(box: Box, origin: float, unit: float, vary: float) -> int:
    """Return how many draws a row of ``random_joints`` takes at most."""
    return ceil((box.right - min(origin, box.left) + 3.0 * unit) / ((1.0 - vary) * unit)) + 2
