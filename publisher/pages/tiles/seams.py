"""Where a part that is larger than the paper is cut into tiles: trim lines, windows and match marks.

All numbers are mm in **laid** coordinates: the part's own, turned by the tiling's quarter turn, y upward. A **trim line** at
``t`` parts two tiles. The page on the left (or above) goes on ``GLUE`` mm past it: its glue area; the page on the right (or
below) starts ``TRIM`` mm before it and is trimmed there. Together they are the overlap. Match marks have their centres on the trim
line, so that after trimming, half a circle on one page meets half a circle on the other.
"""

from collections.abc import Sequence
from itertools import pairwise, product
from math import ceil, inf

import numpy as np
import numpy.typing as npt
import shapely

from publisher.basics import Box, Point, record
from publisher.pages.type import as_polygon

OVERLAP = 10.0  # common practice for glue stick: enough to hold, not enough to waste a page
TRIM = 3.0  # of the overlap: past the trim line, cut off; more than the radius of a match mark
MARK_RADIUS = 2.5
TILE_EDGE = 3.0  # least paper between the part and the edge of a window
ROOMY = 10.0  # paper wanted there, so that match marks also find room beside the part
TILE_SLIVER = 12.0  # a tile that shows a strip narrower than this is avoided
MOST_ALONG = 1000  # along one axis: 10 m on the smallest paper
TRIM_STEP = 1.0  # grid on which trim lines are tried
LEANS = (0.0, -0.5, 0.5, -1.0, 1.0)  # shares of their freedom by which seams are shifted off an even division


Span = tuple[float, float, float]  # from, to, weight


@record
class Obstacle:
    """Something on the part that a seam should keep off, in laid coordinates; ``weight`` says how much."""

    box: Box
    weight: float


@record
class Cell:
    """One tile: row and column from 1 at the top left, the area it stands for, and the window that its page shows."""

    row: int
    column: int
    area: Box
    window: Box


@record
class Cutting:
    """A way to cut one laid outline: trim lines across (x, left to right) and down (y, from the top), and its tiles."""

    across: tuple[float, ...]
    down: tuple[float, ...]
    cells: tuple[Cell, ...]
    cost: float

    @property
    def columns(self) -> int:
        """Number of columns."""
        return len(self.across) + 1

    @property
    def rows(self) -> int:
        """Number of rows."""
        return len(self.down) + 1

    @property
    def is_full(self) -> bool:
        """Say whether every row and column has its tile."""
        return len(self.cells) == self.rows * self.columns

    def cell(self, row: int, column: int) -> Cell | None:
        """Return the tile in this row and column, or None where the part leaves nothing to show."""
        return next((c for c in self.cells if (c.row, c.column) == (row, column)), None)


def tiles_needed(length: float, room: float, overlap: float = OVERLAP) -> int:
    """Return how many tiles of ``room`` mm show ``length`` mm with paper beside it. ``room`` must exceed the overlap."""
    if room <= overlap + 2 * TILE_EDGE:
        return 1_000_000
    return max(1, ceil((length + 2 * TILE_EDGE - overlap) / (room - overlap) - 1e-9))


def trim_lines(low: float, high: float, room: float, avoid: tuple[Span, ...], lean: float) -> tuple[float, ...] | None:
    """Return the best trim lines, ascending, for a stretch shown in windows of at most ``room`` mm; () if one shows it all.

    A shortest path over a grid of positions: each costs what it crosses, plus a little for lying off its place in an even
    division shifted by ``lean`` (-1 … 1) of the freedom. Where the windows leave no freedom, the division is even. Returns None
    when the stretch cannot be shown.
    """
    count = tiles_needed(high - low, room)
    if count > MOST_ALONG:
        return None
    if count == 1:
        return ()
    slack = count * room - (high - low) - 2 * TILE_EDGE - (count - 1) * OVERLAP
    if slack < 2.0 * TRIM_STEP * count:
        first = low + room - TILE_EDGE - (OVERLAP - TRIM) - slack / count
        return tuple(first + i * (room - OVERLAP - slack / count) for i in range(count - 1))
    grid = np.arange(np.ceil(low / TRIM_STEP) * TRIM_STEP, high, TRIM_STEP)
    crossing = np.zeros(len(grid))
    for a, b, weight in avoid:
        crossing += weight * ((grid > a) & (grid < b))
    reach, skip = int((room - OVERLAP) / TRIM_STEP), int(TILE_SLIVER / TRIM_STEP)
    best = np.where((grid - low + TILE_EDGE + OVERLAP - TRIM <= room + 1e-9) & (grid - low > TILE_SLIVER), 0.0, inf)
    origins: list[npt.NDArray[np.int64]] = []
    for i in range(count - 1):
        if i:  # the line before stands between ``skip`` and ``reach`` to the left
            windows = np.lib.stride_tricks.sliding_window_view(
                np.concatenate((np.full(reach, inf), best)), reach - skip
            )
            nearest = windows[: len(grid)].argmin(axis=1)
            origins.append(np.arange(len(grid)) - reach + nearest)
            best = windows[np.arange(len(grid)), nearest]
        wish = low + (i + 1) * (high - low) / count + lean * slack / 2
        best = best + crossing + 0.02 * np.abs(grid - wish)
    best = np.where((high - grid + TILE_EDGE + TRIM <= room + 1e-9) & (high - grid > TILE_SLIVER), best, inf)
    at = int(np.argmin(best))
    if not np.isfinite(best[at]):
        return None
    lines = [float(grid[at])]
    for origin in reversed(origins):
        at = int(origin[at])
        lines.append(float(grid[at]))
    return tuple(reversed(lines))


def cut(
    outline: shapely.Polygon, obstacles: tuple[Obstacle, ...], width: float, height: float, paper: float = ROOMY
) -> Cutting | None:
    """Return the best cutting of a laid outline for windows of at most width × height mm, or None when there is none.

    ``paper``: how much of it (mm) the windows show at most beyond the part's ends. Several leans of the trim lines are tried each
    way; fewest tiles win, then fewest slivers, then the quietest seams.
    """
    left, bottom, right, top = outline.bounds
    xs = tuple((o.box.left, o.box.right, o.weight) for o in obstacles)
    ys = tuple((-o.box.top, -o.box.bottom, o.weight) for o in obstacles)  # counted downwards, as pages are read
    acrosses = dict.fromkeys(trim_lines(left, right, width, xs, lean) for lean in LEANS)
    downs = dict.fromkeys(trim_lines(-top, -bottom, height, ys, lean) for lean in LEANS)
    best: tuple[tuple[float, ...], Cutting] | None = None
    for across, down in product(acrosses, downs):
        if across is None or down is None:
            continue
        cost = _cost(xs, across) + _cost(ys, down)
        if best and cost > 0.0 and best[0][1] == 0.0 and cost >= best[0][2] and best[1].is_full:
            continue  # no quieter, and nothing to gain by dropping tiles
        cells, slivers = _cells(outline, across, tuple(-t for t in down), (width, height), paper)
        key = (float(len(cells)), float(slivers), cost)
        if best is None or key < best[0]:
            best = (key, Cutting(across, tuple(-t for t in down), cells, cost + 20.0 * slivers))
        if slivers == 0 and cost == 0.0:
            break
    return best[1] if best else None


def _cost(avoid: tuple[Span, ...], lines: tuple[float, ...]) -> float:
    return sum(weight for a, b, weight in avoid for t in lines if a < t < b)


def _grid(
    bounds: tuple[float, float, float, float],
    across: tuple[float, ...],
    down: tuple[float, ...],
    size: Point,
    paper: float,
) -> list[Cell]:
    """Return the tiles of all rows and columns that trim lines make of a rectangle (left, bottom, right, top), row by row; their
    windows are of at most this ``size`` (width, height)."""
    left, bottom, right, top = bounds
    x = (left, *across, right)
    y = (top, *down, bottom)
    cells = []
    for row, (high, low) in enumerate(pairwise(y), 1):
        above, below = _beyond(high - low, size[1], row == 1, row == len(y) - 1, paper)
        for column, (a, b) in enumerate(pairwise(x), 1):
            before, after = _beyond(b - a, size[0], column == 1, column == len(x) - 1, paper)
            window = Box(a - before, low - below, b + after, high + above)
            cells.append(Cell(row, column, Box(a, low, b, high), window))
    return cells


def _beyond(length: float, room: float, first: bool, last: bool, paper: float) -> tuple[float, float]:
    """Return how far a window reaches beyond its tile's own length on both sides, as pages are read: what is trimmed off and
    what is glued under, or at the ends of the part what paper is to spare."""
    glue = OVERLAP - TRIM
    used = length + (0.0 if first else TRIM) + (0.0 if last else glue)
    spare = _paper(room - used, int(first) + int(last), paper)
    return spare if first else TRIM, spare if last else glue


def _cells(
    outline: shapely.Polygon, across: tuple[float, ...], down: tuple[float, ...], size: Point, paper: float
) -> tuple[tuple[Cell, ...], int]:
    """Return the tiles that show something, and how many of them show only a sliver."""
    cells = _grid(outline.bounds, across, down, size, paper)
    shown: list[Cell] = []
    slivers = 0
    for cell in cells:
        piece = outline.intersection(as_polygon(cell.area))
        if piece.area < 1e-6:
            continue
        bounds = piece.bounds
        if min(bounds[2] - bounds[0], bounds[3] - bounds[1]) < TILE_SLIVER or piece.area < TILE_SLIVER * TILE_SLIVER:
            others = shapely.union_all([as_polygon(c.window) for c in cells if c is not cell])
            if piece.difference(others).area < 1e-6:
                continue  # its neighbours show it already, in their overlaps
            slivers += 1
        shown.append(cell)
    if not tied(shown):  # tiles that meet only at a corner cannot be taped: the tile between them comes along
        return tuple(cells), slivers
    return tuple(shown), slivers


def tied(cells: Sequence[Cell]) -> bool:
    """Say whether every tile is tied to every other through common edges."""
    places = {(c.row, c.column) for c in cells}
    reached = set(list(places)[:1])
    edge = list(reached)
    while edge:
        row, column = edge.pop()
        beside = {(row, column + 1), (row, column - 1), (row + 1, column), (row - 1, column)} & places - reached
        reached |= beside
        edge += beside
    return reached == places


def _paper(spare: float, sides: int, most: float) -> float:
    return min(most, max(TILE_EDGE, spare / sides)) if sides else TILE_EDGE
