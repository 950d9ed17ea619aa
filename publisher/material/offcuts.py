"""The offcut worth keeping: the largest upright rectangle that a laid-out sheet leaves. Millimetres."""

from functools import lru_cache

import numpy as np
import shapely

from publisher.basics import Box
from publisher.material.judge import Laid

CELL = 8.0  # mm; the rectangle is found on squares of this, then grown to its true size
LEAST_OFFCUT_SIDE = 60.0  # mm; anything narrower goes into the scrap box
LEAST_OFFCUT_AREA = 20_000.0  # mm²: about half of A5


def largest_offcut(laid: Laid, free: Box, gap: float) -> Box | None:
    """Return the largest upright rectangle in the free area that keeps the gap from all outlines (polygons on the sheet).

    It is the largest made of squares of ``CELL``, with its sides then moved out as far as they go. None when it is too small
    to be worth keeping.
    """
    across, up = int(free.width // CELL), int(free.height // CELL)
    if not across or not up:
        return None
    empty = np.ones(across * up, dtype=bool)
    if len(laid):
        found, _ = shapely.STRtree(laid).query(_squares(free, gap, across, up), predicate="intersects")
        empty[found] = False
    cells = _largest(empty.reshape(up, across))
    if cells is None:
        return None
    first, low, last, high = cells
    box = Box(free.left + first * CELL, free.bottom + low * CELL, free.left + last * CELL, free.bottom + high * CELL)
    for side in range(4):
        box = _grown(box, side, laid, free, gap)
    return (
        box if min(box.width, box.height) >= LEAST_OFFCUT_SIDE and box.width * box.height >= LEAST_OFFCUT_AREA else None
    )


@lru_cache(maxsize=4)  # the layouts of a design are compared on one sheet after another
def _squares(free: Box, gap: float, across: int, up: int) -> Laid:
    """Return the squares of a sheet, larger by the gap, that must not touch an outline: much faster than asking for distances."""
    x, y = np.meshgrid(free.left + CELL * np.arange(across), free.bottom + CELL * np.arange(up))
    left, bottom = x.ravel(), y.ravel()
    return np.asarray(shapely.box(left - gap, bottom - gap, left + CELL + gap, bottom + CELL + gap))


def _largest(empty: np.ndarray[tuple[int, int], np.dtype[np.bool_]]) -> tuple[int, int, int, int] | None:
    """Return the largest rectangle of empty squares as left, bottom, right, top (squares); None when there is none.

    Row by row, over the heights of the empty columns that end there (the largest rectangle in a histogram).
    """
    best, found = 0, None
    heights = [0] * empty.shape[1]
    for row, line in enumerate(empty.tolist(), 1):
        heights = [h + 1 if free else 0 for h, free in zip(heights, line, strict=True)]
        open_: list[tuple[int, int]] = []  # left end, height; heights rise
        for at, height in enumerate([*heights, 0]):
            left = at
            while open_ and open_[-1][1] >= height:
                left, tall = open_.pop()
                if (at - left) * tall > best:
                    best, found = (at - left) * tall, (left, row - tall, at, row)
            open_.append((left, height))
    return found


def _grown(box: Box, side: int, laid: Laid, free: Box, gap: float) -> Box:
    """Move one side (0 left, 1 bottom, 2 right, 3 top) of an empty rectangle out to the next outline, less the gap."""
    values = list(box.sides)
    end, start = free.sides[side], values[side]
    way = -1.0 if side < 2 else 1.0
    near = gap - 1e-6  # an outline exactly as far as the gap is not in the way
    lane = [box.left - near, box.bottom - near, box.right + near, box.top + near]
    lane[side], lane[(side + 2) % 4] = end, start
    room = abs(end - start)
    if room > 0 and len(laid):
        left, right = sorted((lane[0], lane[2]))
        bottom, top = sorted((lane[1], lane[3]))
        parts = shapely.intersection(laid, shapely.box(left, bottom, right, top))
        away = (shapely.get_coordinates(parts)[:, side % 2] - start) * way
        room = max(0.0, min(room, float(away.min()) - gap)) if len(away) else room
    values[side] = start + way * room
    return Box(*values)
