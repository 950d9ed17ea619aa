"""Points strewn along many lines at once, and dots that many areas cover: whole pages by numpy, nothing line by line."""

from collections.abc import Sequence

import numpy as np
import shapely

from publisher.basics import Point, Pose
from publisher.proof.reading import Array, TooMuch

MOST_STREWN_POINTS = 1_500_000  # points along the lines of one page, or crossings of its areas with rows of dots
MOST_FILLED_DOTS = 8_000_000  # dots in the areas of one page, each as often as it is covered


def tried(lines: Array, step: float) -> tuple[Array, Array]:
    """Return points (N, 2) of lines (shapely's), their own and between these so many that none is farther than ``step`` from the next,
    and the line of each. One of no length, which GEOS would refuse to part, keeps its own."""
    dense = np.array(lines, dtype=object)
    long = shapely.length(dense) > 0.0
    dense[long] = shapely.segmentize(dense[long], step)
    points, owner = shapely.get_coordinates(dense, return_index=True)
    return points, owner


def placed_lines(pose: Pose, lines: Sequence[Sequence[Point]]) -> tuple[Array, Array]:
    """Return the points (N, 2) of all lines as a pose places them on a page, and the line of each."""
    points = np.array([point for line in lines for point in line], dtype=float).reshape(-1, 2)
    a, b, c, d, e, f = pose.matrix()
    return points @ np.array(((a, b), (c, d))) + (e, f), np.repeat(np.arange(len(lines)), [len(line) for line in lines])


def along(points: Array, starts: Array, step: float) -> tuple[Array, Array, Array]:
    """Return points (N, 2) at most ``step`` apart along lines, the line of each, and how far from its beginning it lies.

    Line i is ``points[starts[i]:starts[i + 1]]``. The first and last point of a straight stretch lie half a distance inside it.
    """
    inner = np.ones(len(points), dtype=bool)
    inner[starts[1:] - 1] = False
    first = np.flatnonzero(inner)
    if not len(first):
        return np.zeros((0, 2)), np.zeros(0, dtype=int), np.zeros(0)
    ahead = points[first + 1] - points[first]
    lengths = np.hypot(ahead[:, 0], ahead[:, 1])
    line = np.repeat(np.arange(len(starts) - 1), np.diff(starts) - 1)
    total = np.cumsum(lengths) - lengths
    heads = np.flatnonzero(np.concatenate(([True], line[1:] != line[:-1])))
    begun = total - np.repeat(total[heads], np.diff(np.append(heads, len(line))))
    if float(lengths.sum()) / step + len(lengths) > MOST_STREWN_POINTS:
        raise TooMuch("its lines are kilometres long")
    counts = np.maximum(1, np.ceil(lengths / step)).astype(int)
    which = np.repeat(np.arange(len(counts)), counts)
    share = (np.arange(len(which)) - (np.cumsum(counts) - counts)[which] + 0.5) / counts[which]
    strewn = points[first][which] + ahead[which] * share[:, None]
    return strewn, line[which], begun[which] + lengths[which] * share


def filled_dots(points: Array, starts: Array, shapes: Array, rows: int, columns: int) -> Array:
    """Return which dots (``row * columns + column``) closed rings cover, by the even-odd rule among those of one shape (``shapes``: of
    each ring). ``points`` are (column, row), the middle of the first dot at 0.5, 0.5; of a row is covered what its middle crosses."""
    lasts = starts[1:] - 1
    following = np.arange(1, len(points) + 1)
    following[lasts] = starts[:-1]
    ax, ay = points[:, 0], points[:, 1]
    bx, by = points[following, 0], points[following, 1]
    low = np.clip(np.ceil(np.minimum(ay, by) - 0.5), 0, rows).astype(int)
    high = np.clip(np.ceil(np.maximum(ay, by) - 0.5), 0, rows).astype(int)
    counts = high - low
    if int(counts.sum()) > MOST_STREWN_POINTS:
        raise TooMuch("its areas have hundreds of thousands of edges")
    edge = np.repeat(np.arange(len(counts)), counts)
    row = np.arange(len(edge)) - (np.cumsum(counts) - counts)[edge] + low[edge]
    x = ax[edge] + (row + 0.5 - ay[edge]) * ((bx - ax)[edge] / (by - ay)[edge])
    shape = np.repeat(shapes, np.diff(starts))[edge]
    order = np.lexsort((x, row, shape))
    left = np.clip(np.floor(x[order[::2]]), 0, columns).astype(int)
    right = np.clip(np.ceil(x[order[1::2]]), 0, columns).astype(int)
    wide = np.maximum(0, right - left)
    if int(wide.sum()) > MOST_FILLED_DOTS:
        raise TooMuch("its areas lie over each other many times")
    span = np.repeat(np.arange(len(wide)), wide)
    dots: Array = row[order[::2]][span] * columns + left[span] + np.arange(len(span)) - (np.cumsum(wide) - wide)[span]
    return dots
