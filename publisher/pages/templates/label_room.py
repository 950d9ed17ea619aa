"""Where a block of words fits: the roomiest upright place in an area free of lines, found on a grid of about a millimetre."""

from collections.abc import Sequence
from typing import Protocol, TypeVar

import numpy as np
import numpy.typing as npt
import shapely

from publisher.basics import Point

CLEAR = 1.2  # mm between words and the nearest line: more than half the grid's step, so that no line slips through


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


class Room:
    """The free places of an area (mm on the page). ``area`` less everything within ``clear`` mm of ``lines`` and its boundary."""

    def __init__(self, area: shapely.Geometry, lines: shapely.Geometry | None = None, clear: float = CLEAR) -> None:
        """Rasterise the free area once; every block is then looked up in running sums."""
        free = area.buffer(-clear, quad_segs=4)
        if lines is not None and not lines.is_empty:
            free = free.difference(lines.buffer(clear, quad_segs=4))
        self.free = free
        left, bottom, right, top = free.bounds if not free.is_empty else (0.0, 0.0, 0.0, 0.0)
        self.step = 1.0 if (right - left) * (top - bottom) < 20_000 else 2.0
        self.left, self.bottom = left, bottom
        xs = np.arange(left, right + self.step / 2, self.step)
        ys = np.arange(bottom, top + self.step / 2, self.step)
        shapely.prepare(free)
        grid_x, grid_y = np.meshgrid(xs, ys)
        inside = shapely.intersects_xy(free, grid_x.ravel(), grid_y.ravel()).reshape(grid_x.shape)
        self.sums = _sums(~inside)

    def best(self, blocks: Sequence[SizedBlock]) -> tuple[SizedBlock, Point] | None:
        """Return the block that has the most freedom, and where its lower left corner goes; None when none fits."""
        found: list[tuple[float, int, Mask]] = []
        for number, block in enumerate(blocks):
            shape = block.width / block.height
            places = self._places(block)
            count = int(places.sum())
            if count:
                found.append((block.ease * count * min(1.0, shape / 1.3) * min(1.0, 2.6 / shape), number, places))
        for _, number, places in sorted(found, key=lambda f: (-f[0], f[1])):
            block = blocks[number]
            for row, column in _deepest(places):
                x, y = self.left + column * self.step, self.bottom + row * self.step
                if self.free.covers(shapely.box(x, y, x + block.width, y + block.height)):
                    return block, (x, y)
        return None

    def _places(self, block: Sized) -> Mask:
        """Return, for every grid point, whether the block with its lower left corner there covers only free points."""
        wide = int(np.ceil(block.width / self.step)) + 1
        tall = int(np.ceil(block.height / self.step)) + 1
        s = self.sums
        if s.shape[0] <= tall or s.shape[1] <= wide:
            return np.zeros((0, 0), dtype=bool)
        filled = s[tall:, wide:] - s[:-tall, wide:] - s[tall:, :-wide] + s[:-tall, :-wide]
        return np.asarray(filled == 0)


def _sums(mask: Mask) -> npt.NDArray[np.int64]:
    return np.pad(np.cumsum(np.cumsum(mask.astype(np.int64), axis=0), axis=1), ((1, 0), (1, 0)))


def _deepest(places: Mask, wanted: int = 12) -> list[tuple[int, int]]:
    """Return the places with the most freedom on all sides, and among equals those nearest to the middle of all places."""
    rows, columns = np.nonzero(places)
    freedom = np.zeros(len(rows))
    for reach in (2, 5, 9):
        sums = _sums(np.pad(places, reach))
        size = 2 * reach + 1
        freedom += (
            sums[rows + size, columns + size]
            - sums[rows, columns + size]
            - sums[rows + size, columns]
            + sums[rows, columns]
        ) / size**2
    away = np.hypot(rows - rows.mean(), columns - columns.mean())
    order = np.lexsort((columns, rows, np.round(away - 30.0 * freedom, 6)))
    return [(int(rows[i]), int(columns[i])) for i in order[:wanted]]
