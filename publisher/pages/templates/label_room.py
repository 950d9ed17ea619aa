"""Where a block of words fits: the roomiest place in an area free of lines, found on a grid of about a millimetre.

The grid is filled row by row where the area's edges cross it, and blocks are looked up in running sums; only the few best places
are then held against the area itself. A block may stand turned: the area is turned the other way, once for each turn.
"""

from collections.abc import Callable, Sequence
from math import ceil, cos, radians, sin
from typing import Protocol, TypeVar

import numpy as np
import numpy.typing as npt
import shapely

from publisher.basics import Box, Point

LINE_CLEAR = 1.2  # mm between words and the nearest line: more than half the grid's step, so that no line slips through
_FINE, _COARSE = 30_000.0, 120_000.0  # mm² of a grid of 0.5 and of 1 mm
REACHES = (2, 5, 9)  # steps of the grid round a place in which its freedom is counted
_NARROW = 3.0  # mm: across a narrower area, one of 0.25 mm


class Sized(Protocol):
    """A block with a size in mm."""

    @property
    def width(self) -> float:
        """Width in mm."""

    @property
    def height(self) -> float:
        """Height in mm."""

    @property
    def ease(self) -> float:
        """How well it reads against others of its size: 1 or less."""


Mask = npt.NDArray[np.bool_]
SizedBlock = TypeVar("SizedBlock", bound=Sized)


class LabelRoom:
    """The free places of an area (mm on the page). ``area`` less everything within ``clear`` mm of ``lines`` and its boundary."""

    def __init__(
        self, area: shapely.Geometry, lines: shapely.Geometry | None = None, clear: float = LINE_CLEAR
    ) -> None:
        """Take the free area; it is laid on a grid for each turn that is asked for."""
        free = area.buffer(-clear, quad_segs=4)
        if lines is not None and not lines.is_empty:
            free = free.difference(lines.buffer(clear, quad_segs=4))
        self.free = free
        self._grids: dict[float, _Grid] = {}

    def best(self, blocks: Sequence[SizedBlock], turn: float = 0.0) -> tuple[SizedBlock, Point] | None:
        """Return the block that has the most freedom, and where its lower left corner goes; None when none fits.

        ``turn``: degrees by which the block stands turned about that corner.
        """
        found = self._ranked(blocks, turn)
        return (found[1], found[2]) if found else None

    def best_turned(
        self, blocks: Sequence[SizedBlock], turns: Sequence[float]
    ) -> tuple[SizedBlock, Point, float] | None:
        """Return the block, its corner and the turn that together have the most freedom; None when none fits."""
        tried = [(found, turn) for turn in turns if (found := self._ranked(blocks, turn))]
        if not tried:
            return None
        (_, block, at), turn = max(tried, key=lambda one: one[0][0])
        return block, at, turn

    def nearest(
        self, block: Sized, around: Box, good: Callable[[Box], bool] | None = None
    ) -> tuple[float, Point] | None:
        """Return how far (mm) from a box the block has a place, and where its lower left corner goes; None when it has none that is
        ``good``."""
        grid = self._grid(0.0)
        if grid is None:
            return None
        rows, columns = np.nonzero(grid.places(block.width, block.height))
        x, y = grid.left + grid.step * columns, grid.bottom + grid.step * rows
        across = np.maximum(0.0, np.maximum(around.left - x - block.width, x - around.right))
        up = np.maximum(0.0, np.maximum(around.bottom - y - block.height, y - around.top))
        away = np.hypot(across, up)
        # among places as near as each other, the one that is most in line with the box
        aside = np.minimum(np.abs(x - around.left), np.abs(y + block.height - around.top))
        for i in np.lexsort((columns, rows, np.round(aside), np.round(away)))[:40]:
            at = grid.at(int(rows[i]), int(columns[i]), block.width, block.height)
            if at and (good is None or good(Box(*at, at[0] + block.width, at[1] + block.height))):
                return float(away[i]), at
        return None

    def _grid(self, turn: float) -> "_Grid | None":
        if self.free.is_empty:
            return None
        if turn not in self._grids:
            self._grids[turn] = _Grid(self.free, turn)
        return self._grids[turn]

    def _ranked(self, blocks: Sequence[SizedBlock], turn: float) -> tuple[float, SizedBlock, Point] | None:
        grid = self._grid(turn)
        if grid is None:
            return None
        found: list[tuple[float, int, Mask]] = []
        for number, block in enumerate(blocks):
            shape = block.width / block.height
            places = grid.places(block.width, block.height)
            count = int(np.count_nonzero(places))
            if count:
                worth = block.ease * count * grid.step**2 * min(1.0, shape / 1.3) * min(1.0, 2.6 / shape)
                found.append((worth, number, places))
        for worth, number, places in sorted(found, key=lambda f: (-f[0], f[1])):
            block = blocks[number]
            for row, column in _deepest(places):
                at = grid.at(row, column, block.width, block.height)
                if at:
                    return worth, block, at
        return None


class _Grid:
    """An area on a grid that stands turned."""

    def __init__(self, free: shapely.Geometry, turn: float) -> None:
        self.cos, self.sin = cos(radians(turn)), sin(radians(turn))
        back = np.array(((self.cos, -self.sin), (self.sin, self.cos)))
        self.free = shapely.transform(free, lambda p: p @ back) if turn else free
        shapely.prepare(self.free)
        left, bottom, right, top = self.free.bounds
        size = (right - left) * (top - bottom)
        narrow = min(right - left, top - bottom) < _NARROW
        self.step = 0.25 if narrow else 0.5 if size < _FINE else 1.0 if size < _COARSE else 2.0
        self.left, self.bottom = left, bottom
        columns, rows = int((right - left) / self.step) + 1, int((top - bottom) / self.step) + 1
        self.sums = _sums(~filled(self.free, (left, bottom), self.step, (rows, columns)))
        self._nowhere: list[tuple[int, int]] = []  # columns and rows of blocks that have no place

    def places(self, width: float, height: float) -> Mask:
        """Return, for every grid point, whether a block with its lower left corner there covers only free points; an array of no
        size when it has no place, as no block has that is as large as one without."""
        wide, tall = ceil(width / self.step) + 1, ceil(height / self.step) + 1
        s = self.sums
        if s.shape[0] <= tall or s.shape[1] <= wide or any(w <= wide and t <= tall for w, t in self._nowhere):
            return np.zeros((0, 0), dtype=bool)
        high = s[tall:] - s[:-tall]
        found: Mask = high[:, wide:] == high[:, :-wide]
        if found.any():
            return found
        self._nowhere.append((wide, tall))
        return np.zeros((0, 0), dtype=bool)

    def at(self, row: int, column: int, width: float, height: float) -> Point | None:
        """Return the point of the page at a grid point when a block there is free to the last corner."""
        x, y = self.left + column * self.step, self.bottom + row * self.step
        if not self.free.covers(shapely.box(x, y, x + width, y + height)):
            return None
        return (x * self.cos - y * self.sin, x * self.sin + y * self.cos)


def filled(area: shapely.Geometry, origin: Point, step: float, shape: tuple[int, int]) -> Mask:
    """Return which points of a grid lie in an area: along each row, those with an odd number of its edges at their left.

    ``origin``: the grid's first point in mm; ``shape``: its rows and columns.
    """
    rows, columns = shape
    starts, ends = _segments(area)
    odd = np.zeros((rows, columns + 1), dtype=np.uint8)
    if len(starts):
        ys = origin[1] + step * np.arange(rows)
        low, high = np.minimum(starts[:, 1], ends[:, 1]), np.maximum(starts[:, 1], ends[:, 1])
        first = np.searchsorted(ys, low, side="right")
        counts = np.searchsorted(ys, high, side="right") - first
        edge = np.repeat(np.arange(len(starts)), counts)
        row = np.arange(len(edge)) - np.repeat(np.cumsum(counts) - counts, counts) + first[edge]
        a, b = starts[edge], ends[edge]
        x = a[:, 0] + (ys[row] - a[:, 1]) * (b[:, 0] - a[:, 0]) / (b[:, 1] - a[:, 1])
        column = np.clip(np.ceil((x - origin[0]) / step), 0, columns).astype(np.int64)
        crossed = np.bincount(row * (columns + 1) + column, minlength=odd.size).reshape(odd.shape)
        odd[:] = crossed & 1
    return np.bitwise_xor.accumulate(odd, axis=1)[:, :columns].astype(np.bool_)


def _segments(area: shapely.Geometry) -> tuple[npt.NDArray[np.float64], npt.NDArray[np.float64]]:
    """Return both ends of all segments of an area's rings."""
    points, ring = shapely.get_coordinates(shapely.get_rings(shapely.get_parts(area)), return_index=True)
    joined = ring[1:] == ring[:-1]
    return points[:-1][joined], points[1:][joined]


def _sums(mask: Mask) -> npt.NDArray[np.int32]:
    """Return how many points of a mask lie below and left of each: a grid has far fewer than 32 bits count."""
    sums = np.zeros((mask.shape[0] + 1, mask.shape[1] + 1), dtype=np.int32)
    np.cumsum(mask, axis=0, out=sums[1:, 1:])
    np.cumsum(sums[1:, 1:], axis=1, out=sums[1:, 1:])
    return sums


def _deepest(places: Mask, wanted: int = 12) -> list[tuple[int, int]]:
    """Return the places with the most freedom on all sides, and among equals those nearest to the middle of all places."""
    rows, columns = np.nonzero(places)
    far = max(REACHES)
    held = places[rows.min() : rows.max() + 1, columns.min() : columns.max() + 1]
    sums = _sums(np.pad(held, far))
    freedom = np.zeros(len(rows))
    for reach in REACHES:
        s = sums[far - reach : len(sums) - far + reach, far - reach : sums.shape[1] - far + reach]
        size = 2 * reach + 1
        around = s[size:, size:] - s[:-size, size:] - s[size:, :-size] + s[:-size, :-size]
        freedom += around[held] / size**2
    away = np.hypot(rows - rows.mean(), columns - columns.mean())
    cost = np.round(away - 30.0 * freedom, 6)
    if len(cost) > wanted:  # of thousands only the first few are put in order
        few = cost <= np.partition(cost, wanted - 1)[wanted - 1]
        rows, columns, cost = rows[few], columns[few], cost[few]
    order = np.lexsort((columns, rows, cost))
    return [(int(rows[i]), int(columns[i])) for i in order[:wanted]]
