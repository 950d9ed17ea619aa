"""The paper of one picture as a grid of small squares: where lines run, where parts lie, where there is room for a sign. Mm."""

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt
import shapely

from publisher.basics import Box, Point
from publisher.joints.outlines import Array

GRID_SQUARE = 0.6
"""mm: side of a square."""

SquareCounts = npt.NDArray[np.int64]
Flags = npt.NDArray[np.bool_]


@dataclass(slots=True)
class PaperGrid:
    """Squares over a box of the paper, and what stands on each of them."""

    box: Box
    busy: Flags  # (rows, columns) where no sign may stand
    _sums: SquareCounts | None = None

    def mark(self, lines: Array) -> None:
        """Mark the squares through which lines run."""
        if len(lines):
            self._mark(shapely.get_coordinates(shapely.segmentize(lines, 0.8 * GRID_SQUARE)))

    def mark_area(self, area: shapely.Geometry) -> None:
        """Mark the squares whose middles lie in an area."""
        self.busy |= self.inside(area)
        self._sums = None

    def inside(self, area: shapely.Geometry) -> Flags:
        """Tell which squares have their middles in an area."""
        xs, ys = self.middles()
        flags: Flags = np.zeros(self.busy.shape, dtype=bool)
        left, bottom, right, top = shapely.bounds(area)
        rows, columns = np.flatnonzero((ys > bottom) & (ys < top)), np.flatnonzero((xs > left) & (xs < right))
        if len(rows) and len(columns):
            across, up = np.meshgrid(xs[columns], ys[rows])
            shapely.prepare(area)
            flags[np.ix_(rows, columns)] = shapely.contains_xy(area, across, up)
        return flags

    def middles(self) -> tuple[Array, Array]:
        """Return the middles of the columns and of the rows."""
        rows, columns = self.busy.shape
        across, up = GRID_SQUARE * (np.arange(columns) + 0.5), GRID_SQUARE * (np.arange(rows) + 0.5)
        return np.asarray(self.box.left + across), np.asarray(self.box.bottom + up)

    def crossed(self, at: Array, wide: float, high: float) -> SquareCounts:
        """Return how many busy squares lie in a box of this size about each of the points (n, 2); what lies outside is busy."""
        if self._sums is None:
            self._sums = np.pad(self.busy.astype(np.int64).cumsum(axis=0).cumsum(axis=1), ((1, 0), (1, 0)))
        return _within(self._sums, self.box, at, wide, high)

    def shares(self, flags: Flags, at: Array, wide: float, high: float) -> Array:
        """Return which share of a box about each point lies on flagged squares."""
        sums = np.pad(flags.astype(np.int64).cumsum(axis=0).cumsum(axis=1), ((1, 0), (1, 0)))
        return np.asarray(_within(sums, self.box, at, wide, high, outside=0) / max(wide * high / GRID_SQUARE**2, 1.0))

    def grid(self, step: int = 2) -> Array:
        """Return the middles of every so many squares (n, 2)."""
        xs, ys = self.middles()
        return np.array(np.meshgrid(xs[::step], ys[::step])).reshape(2, -1).T

    def _mark(self, points: Array) -> None:
        rows, columns = self.busy.shape
        at = np.floor((points - (self.box.left, self.box.bottom)) / GRID_SQUARE).astype(np.int64)
        on = (at >= 0).all(axis=1) & (at[:, 0] < columns) & (at[:, 1] < rows)
        self.busy[at[on, 1], at[on, 0]] = True
        self._sums = None


def _within(sums: SquareCounts, box: Box, at: Array, wide: float, high: float, outside: int = 1000) -> SquareCounts:
    rows, columns = sums.shape[0] - 1, sums.shape[1] - 1
    left = np.floor((at[:, 0] - wide / 2 - box.left) / GRID_SQUARE).astype(np.int64)
    right = np.ceil((at[:, 0] + wide / 2 - box.left) / GRID_SQUARE).astype(np.int64)
    low = np.floor((at[:, 1] - high / 2 - box.bottom) / GRID_SQUARE).astype(np.int64)
    top = np.ceil((at[:, 1] + high / 2 - box.bottom) / GRID_SQUARE).astype(np.int64)
    out = (left < 0) | (low < 0) | (right > columns) | (top > rows)
    left, right = np.clip(left, 0, columns), np.clip(right, 0, columns)
    low, top = np.clip(low, 0, rows), np.clip(top, 0, rows)
    found: SquareCounts = sums[top, right] - sums[low, right] - sums[top, left] + sums[low, left] + outside * out
    return found


def grid_over(box: Box) -> PaperGrid:
    """Return an empty ground over a box of the paper."""
    shape = (int(np.ceil(box.height / GRID_SQUARE)), int(np.ceil(box.width / GRID_SQUARE)))
    return PaperGrid(box, np.zeros(shape, dtype=bool))


def nearest(points: Array, to: Point) -> Array:
    """Return how far (mm) each point is from one."""
    return np.asarray(np.hypot(points[:, 0] - to[0], points[:, 1] - to[1]))
