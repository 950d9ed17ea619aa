"""The lines of a page from corner to corner, as far as they are seen: two lines for the eye where one turns sharply. Mm of the paper.

A page has thousands, so they are columns of numbers and one array of shapes, which the library works on at once.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import chain
from math import pi, radians

import numpy as np
import shapely

from publisher.basics import Box, record
from publisher.pages.model import LineStyle, Stroke

CORNER = radians(35.0)
"""A line that turns by more than this has a corner: on its other side it is another line for the eye."""

LinesOfPage = np.ndarray[tuple[int], np.dtype[np.object_]]
PointsOfLines = np.ndarray[tuple[int, int], np.dtype[np.float64]]
MmOfLines = np.ndarray[tuple[int], np.dtype[np.float64]]
NumbersOfLines = np.ndarray[tuple[int], np.dtype[np.intp]]


@record
class SmoothLines:
    """Lines from corner to corner: the shape of each, its stroke and path by number, half its width (mm), and its rank: the higher gives
    way, 0 to nobody."""

    shapes: LinesOfPage
    stroke: NumbersOfLines
    path: NumbersOfLines
    half: MmOfLines
    rank: NumbersOfLines

    def taken(self, at: NumbersOfLines) -> "SmoothLines":
        """Return some of the lines, in another order."""
        return SmoothLines(self.shapes[at], self.stroke[at], self.path[at], self.half[at], self.rank[at])


@dataclass(frozen=True, slots=True)  # known again by what it holds
class StrokesOfPage:
    """All strokes of a page: the points of their lines as one row of bytes, how many each line has, how many lines each stroke, and the
    style and the window of each."""

    points: bytes
    counts: tuple[int, ...]
    paths: tuple[int, ...]
    styles: tuple[LineStyle, ...]
    windows: tuple[Box | None, ...]


def strokes_of(strokes: Sequence[Stroke]) -> StrokesOfPage:
    """Return strokes as a page is known again by: equal for pages that show the same lines."""
    ways = [path.travelled for thing in strokes for path in thing.paths]
    return StrokesOfPage(
        np.fromiter(chain.from_iterable(chain.from_iterable(ways)), dtype=float).tobytes(),
        tuple(map(len, ways)),
        tuple(len(thing.paths) for thing in strokes),
        tuple(thing.style for thing in strokes),
        tuple(thing.clip for thing in strokes),
    )


def smooth_lines(page: StrokesOfPage, rank_of: Callable[[LineStyle], int]) -> SmoothLines:
    """Return all lines of a page in the order in which they are drawn. ``rank_of``: how willingly a kind of line gives way."""
    shapes, way = _from_corner_to_corner(
        np.frombuffer(page.points).reshape(-1, 2), np.array(page.counts, dtype=np.intp)
    )
    stroke = np.repeat(np.arange(len(page.paths)), page.paths)[way]
    for at, window in enumerate(page.windows):
        if window is not None:
            shapes, way, stroke = _within(shapes, way, stroke, at, window)
    place = np.concatenate([np.arange(count) for count in page.paths])[way]
    half = np.array([style.width / 2.0 for style in page.styles])[stroke]
    rank = np.array([rank_of(style) for style in page.styles], dtype=np.intp)[stroke]
    return SmoothLines(shapes, stroke, place, half, rank)


def _from_corner_to_corner(points: PointsOfLines, counts: NumbersOfLines) -> tuple[LinesOfPage, NumbersOfLines]:
    """Return the stretches of lines between their corners, and which line each is of. ``counts``: of the points of each line."""
    line = np.repeat(np.arange(len(counts)), counts)
    fresh = np.ones(len(points), dtype=bool)  # a point twice running has no direction
    fresh[1:] = (line[1:] != line[:-1]) | (points[1:] != points[:-1]).any(axis=1)
    points, line = points[fresh], line[fresh]
    step = np.diff(points, axis=0)
    way = np.arctan2(step[:, 1], step[:, 0])
    inner = (line[2:] == line[:-2]).nonzero()[0] + 1
    turn = np.abs((way[inner] - way[inner - 1] + pi) % (2 * pi) - pi)
    often = np.ones(len(points), dtype=np.intp)
    often[inner[turn > CORNER]] = 2  # the end of one, the start of the next
    repeated = np.repeat(np.arange(len(points)), often)
    first = np.ones(len(repeated), dtype=bool)
    first[1:] = (line[repeated][1:] != line[repeated][:-1]) | (repeated[1:] == repeated[:-1])
    run = np.cumsum(first) - 1
    real = np.bincount(run, minlength=1)[run] > 1  # a line of one point is none
    _, run = np.unique(run[real], return_inverse=True)
    shapes = shapely.linestrings(points[repeated][real], indices=run)
    return shapes, line[repeated][real][np.flatnonzero(np.diff(run, prepend=-1))]


def _within(
    shapes: LinesOfPage, way: NumbersOfLines, own: NumbersOfLines, at: int, window: Box
) -> tuple[LinesOfPage, NumbersOfLines, NumbersOfLines]:
    """Return the lines, of one stroke no more than is seen in its window."""
    mine = np.flatnonzero(own == at)
    if not len(mine):
        return shapes, way, own
    parts, of = shapely.get_parts(shapely.clip_by_rect(shapes[mine], *window.sides), return_index=True)
    seen = (shapely.get_type_id(parts) == shapely.GeometryType.LINESTRING) & ~shapely.is_empty(parts)
    parts, of = parts[seen], mine[of[seen]]
    low, high = mine[0], mine[-1] + 1  # lines of a stroke stand together
    return (
        np.concatenate((shapes[:low], parts, shapes[high:])),
        np.concatenate((way[:low], way[of], way[high:])),
        np.concatenate((own[:low], own[of], own[high:])),
    )
