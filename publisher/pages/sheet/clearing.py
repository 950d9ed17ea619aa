"""Pictures without lines that would close up with others: at 300 dots to the inch and one bit less than 0.25 mm of white is lost.

Two lines that run so near do not print as two lines, but as one that is too thick, or in blots. A picture then says as much with the
heavier of them alone. Nothing that is drawn at true size, and no rule or arrow, gives way. Mm of the paper.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import pairwise
from math import atan2, pi, radians

import numpy as np
import shapely

from publisher.basics import SAME_POINT, Box, Path, Point, polyline, record
from publisher.pages.model import Drawn, Stroke
from publisher.pages.type import (
    HATCH,
    PICTURE_ADDED,
    PICTURE_ADDED_CONTOUR,
    PICTURE_CONTOUR,
    PICTURE_DETAIL,
    PICTURE_GHOST,
    PICTURE_GUIDE,
    PICTURE_HATCH,
    PICTURE_OUTLINE,
    PICTURE_THERE,
    PICTURE_THERE_CONTOUR,
)

LEAST_WHITE = 0.26
"""mm of white between two lines: three dots of 300 to the inch, and a hair."""

LEAST_RUN = 0.9
"""mm: along less than this no two lines look like one; corners come near to each other so."""

MEET = 0.08
"""mm, just less than a dot of 300 to the inch: lines that come nearer than this meet."""

WEDGE, OPENED = 3.0, 0.95
"""mm, and share of the least distance: from the point of a wedge of two lines to where they are apart."""

CORNER = radians(35.0)
"""A line that turns by more than this has a corner: on its other side it is another line for the eye."""

REST = 1.0
"""mm: what is left of a line, shorter than this and no outer edge, goes as well where it no longer leads anywhere; and, of one that has
lost more than half, what is no farther than this from the line beside it."""

YIELDING = (
    PICTURE_ADDED_CONTOUR,
    PICTURE_CONTOUR,
    PICTURE_THERE_CONTOUR,
    PICTURE_ADDED,
    PICTURE_OUTLINE,
    PICTURE_THERE,
    PICTURE_DETAIL,
    PICTURE_GHOST,
    PICTURE_GUIDE,
    PICTURE_HATCH,
    HATCH,
)
"""Lines of pictures that give way: the later to the earlier, of two of a kind the shorter to the longer."""

OUTER = 3
"""So many of them are outer edges."""

_RANK = {style: rank for rank, style in enumerate(YIELDING, start=1)}


LinesInOrder = np.ndarray[tuple[int], np.dtype[np.object_]]
"""Lines of a page, in the order in which they give way."""


@record
class _SmoothRun:
    """A line from corner to corner: points, its stroke and path by number, half its width (mm), rank: the higher gives way, 0 to nobody."""

    points: tuple[Point, ...]
    stroke: int
    path: int
    half: float
    rank: int


def cleared(drawn: tuple[Drawn, ...]) -> tuple[Drawn, ...]:
    """Return what is drawn on a page without those stretches of lines of its pictures that would close up with others beside them."""
    if not any(isinstance(thing, Stroke) and thing.style in _RANK for thing in drawn):
        return drawn
    runs = sorted(_runs(drawn), key=lambda run: run.rank)
    shapes = np.array([shapely.LineString(run.points) for run in runs], dtype=object)
    order = np.lexsort((-shapely.length(shapes), [run.rank for run in runs]))
    runs, shapes = [runs[at] for at in order], shapes[order]
    left = _without_near(runs, shapes)
    if not left:
        return drawn
    _prune(left, shapes, runs)
    changed = {(runs[at].stroke, runs[at].path) for at in left}
    kept: dict[tuple[int, int], list[shapely.Geometry]] = {key: [] for key in changed}
    for at, run in enumerate(runs):
        if (key := (run.stroke, run.path)) in changed:
            kept[key] += left.get(at, [shapes[at]])
    return tuple(_with_paths(thing, number, kept) for number, thing in enumerate(drawn))


def _runs(drawn: tuple[Drawn, ...]) -> Iterator[_SmoothRun]:
    """Yield all lines of a page as far as they are seen, from corner to corner."""
    for number, thing in enumerate(drawn):
        if isinstance(thing, Stroke):
            rank = _RANK.get(thing.style, 0)
            for place, path in enumerate(thing.paths):
                for points in smooth_runs(_points(path)):
                    for shown in (points,) if thing.clip is None else _within(points, thing.clip):
                        yield _SmoothRun(shown, number, place, thing.style.width / 2.0, rank)


def _within(points: tuple[Point, ...], window: Box) -> Iterator[tuple[Point, ...]]:
    """Yield what of a line is seen in its window."""
    for part in shapely.get_parts(shapely.clip_by_rect(shapely.LineString(points), *window.sides)):
        if part.geom_type == "LineString" and not part.is_empty:
            yield tuple((x, y) for x, y in part.coords)


def _points(path: Path) -> tuple[Point, ...]:
    return (*path.points, path.points[0]) if path.closed else path.points


def smooth_runs(points: Sequence[Point]) -> Iterator[tuple[Point, ...]]:
    """Yield the stretches of a line between its corners."""
    own = list(points[:1])
    for before, at in pairwise(points):
        if before == at:
            continue
        if len(own) > 1:
            (ax, ay), (bx, by) = own[-2:]
            turn = atan2(at[1] - by, at[0] - bx) - atan2(by - ay, bx - ax)
            if abs((turn + pi) % (2 * pi) - pi) > CORNER:
                yield tuple(own)
                own = own[-1:]
        own.append(at)
    if len(own) > 1:
        yield tuple(own)


def _without_near(runs: list[_SmoothRun], shapes: LinesInOrder) -> dict[int, list[shapely.Geometry]]:
    """Return what is left of each line that gives way somewhere."""
    half = np.array([run.half for run in runs])
    rank = np.array([run.rank for run in runs])
    straight = np.array([len(run.points) == 2 for run in runs])
    first, second = shapely.STRtree(shapes).query(shapes, predicate="dwithin", distance=2 * half.max() + LEAST_WHITE)
    keep = (first < second) & (rank[second] > 0)
    first, second = first[keep], second[keep]
    away = shapely.distance(shapes[first], shapes[second])
    near = half[first] + half[second] + LEAST_WHITE
    keep = (away < near) & ~(
        (away < SAME_POINT) & straight[first] & straight[second]
    )  # straight lines that meet stay two
    first, second, near = first[keep], second[keep], near[keep]
    beside = shapely.intersection(shapes[second], shapely.buffer(shapes[first], near, quad_segs=2, cap_style="flat"))
    long = shapely.length(beside) >= LEAST_RUN
    left: dict[int, list[shapely.Geometry]] = {}
    pairs = sorted(zip(second[long].tolist(), first[long].tolist(), near[long].tolist(), strict=True))
    for b, a, room in (*pairs, *pairs):  # again, for what met another line may have lost the piece that met it
        there = shapely.union_all(left.get(a, [shapes[a]]))
        if there.is_empty:
            continue
        own = shapely.union_all(left.get(b, [shapes[b]]))
        zone = shapely.buffer(there, room, quad_segs=2, cap_style="flat")
        stretches = shapely.get_parts(shapely.line_merge(shapely.intersection(own, zone)))
        touch = half[a] + half[b]
        gone = [part for part in stretches if part.length >= LEAST_RUN and not _meet(part, there, touch, room)]
        if gone:
            rest = shapely.difference(own, shapely.buffer(shapely.union_all(gone), 1e-6, cap_style="flat"))
            poor = 2 * shapely.length(rest) < shapely.length(shapes[b])
            about = shapely.buffer(there, REST, quad_segs=2) if poor else shapely.Polygon()
            left[b] = [part for part in shapely.get_parts(rest) if part.length > MEET and not about.covers(part)]
    return left


def _meet(stretch: shapely.Geometry, other: shapely.Geometry, touch: float, near: float) -> bool:
    """Say whether a stretch that runs nearer than ``near`` to another line meets it, or is the wedge at a sharp corner: their ink, which
    touches where they are ``touch`` apart, opens from one end to the other."""
    if shapely.distance(stretch, other) < MEET:
        return True
    ends = shapely.distance(shapely.get_point(stretch, [0, -1]), other)
    return bool(stretch.length <= WEDGE and ends.min() <= touch and ends.max() >= OPENED * near)


def _prune(left: dict[int, list[shapely.Geometry]], shapes: LinesInOrder, runs: list[_SmoothRun]) -> None:
    """Take away short rests that led to a line which is gone."""
    every = [(at, part) for at in range(len(runs)) for part in left.get(at, [shapes[at]])]
    parts = np.array([part for _, part in every], dtype=object)
    tree = shapely.STRtree(parts)
    short = [number for number, (at, part) in enumerate(every) if runs[at].rank > OUTER and part.length < REST]
    gone = np.zeros(len(every), dtype=bool)
    if not short:
        return
    tips = shapely.get_point(np.repeat(parts[short], 2), np.tile([0, -1], len(short)))  # both ends of each
    held: list[list[int]] = [[] for _ in tips]
    for tip, other in tree.query(tips, predicate="dwithin", distance=MEET).T.tolist():
        if other != short[tip // 2]:
            held[tip].append(other)
    led = [False for _ in tips]
    for tip, other in shapely.STRtree(shapes).query(tips, predicate="dwithin", distance=MEET).T.tolist():
        led[tip] = led[tip] or other != every[short[tip // 2]][0]
    for _ in range(3):  # a stub on a stub
        for tip, others in enumerate(held):
            number = short[tip // 2]
            at, part = every[number]
            cut = led[tip] or part.length < shapes[at].length - MEET
            gone[number] |= cut and all(gone[other] for other in others)
    for number in np.flatnonzero(gone).tolist():
        at, part = every[number]
        left[at] = [other for other in left.get(at, [shapes[at]]) if other is not part]


def _with_paths(thing: Drawn, number: int, kept: dict[tuple[int, int], list[shapely.Geometry]]) -> Drawn:
    """Return a stroke with what is left of its paths."""
    if not isinstance(thing, Stroke) or not any((number, place) in kept for place in range(len(thing.paths))):
        return thing
    paths: list[Path] = []
    for place, path in enumerate(thing.paths):
        if (number, place) not in kept:
            paths.append(path)
            continue
        parts = kept[number, place]
        for line in shapely.get_parts(shapely.line_merge(shapely.union_all(parts))) if parts else ():
            points = tuple((round(x, 4), round(y, 4)) for x, y in shapely.get_coordinates(line).tolist())
            whole = points[0] == points[-1] and len(points) > 3
            paths.append(polyline(points[:-1] if whole else points, whole))
    return replace(thing, paths=tuple(paths))
