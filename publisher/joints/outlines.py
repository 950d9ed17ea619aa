"""Outlines of parts as plane polygons (mm), for computing and for drawing."""

from collections.abc import Callable, Iterable
from itertools import pairwise
from math import acos, atan2, ceil, cos, degrees, dist, pi, radians, sin

import numpy as np
import numpy.typing as npt
import shapely

from publisher.basics import Point, Pose
from publisher.geometry import Part, Ring, Run

Array = npt.NDArray[np.float64]

MANY_ARCS = 24
"""An outline of more arcs than this is a free curve."""

NOTCH_RUNS = ("notch", "line_up")
"""Runs with these words in their name are cut for lining up; a figure stands over them and a wall is none the weaker."""


def whole_polygon(part: Part) -> shapely.Polygon:
    """Return the finished outline with its line-up notches filled: what stands, covers and is glued."""
    return shapely.Polygon(without_notches(part.outline.outer), [h.points for h in part.outline.holes])


def without_notches(ring: Ring) -> tuple[Point, ...]:
    """Return the ring's points with every line-up notch replaced by what its neighbours would be without it."""
    return bridged(ring, is_notch).points


def bridged(ring: Ring, leave_out: Callable[[Run], bool]) -> Ring:
    """Return the ring with some runs replaced by a straight line from their first to their last point, or by the arc
    that they interrupt; their neighbours keep their runs."""
    count, total = len(ring.points), len(ring.runs)
    out = [leave_out(run) for run in ring.runs]
    if not any(out) or all(out):
        return ring
    points: list[Point] = []
    runs: list[Run] = []
    first = next(i for i in range(total) if not out[i] and out[i - 1])  # begin behind something left out
    at = 0
    while at < total:
        run = ring.runs[(first + at) % total]
        stretch = [ring.points[i] for i in run_indices(run, count)]
        centre, radius, name = run.centre, run.radius, run.name
        if out[(first + at) % total]:
            while out[(first + at + 1) % total] and at + 1 < total:
                at += 1
            last = ring.points[ring.runs[(first + at) % total].last]
            before, after = runs[-1], ring.runs[(first + at + 1) % total]
            name, centre, radius, stretch = before.name, None, 0.0, [stretch[0], last]
            if before.centre and after.centre and before.radius > 0 and dist(before.centre, after.centre) < 1e-6:
                # a chord across it would lose the arc's sagitta
                centre, radius = before.centre, before.radius
                stretch = list(arc_between(stretch[0], last, centre, radius, 0.005))
        runs.append(Run(name, len(points), len(points) + len(stretch) - 1, centre, radius))
        points += stretch[:-1]
        at += 1
    return Ring(tuple(points), tuple(Run(r.name, r.first, r.last % len(points), r.centre, r.radius) for r in runs))


def is_notch(run: Run) -> bool:
    """Tell whether a run is a line-up notch."""
    return any(word in run.name for word in NOTCH_RUNS)


def run_indices(run: Run, count: int) -> list[int]:
    """Return the point indices of a run in order, from first to last, wrapping round."""
    length = (run.last - run.first) % count or count
    return [(run.first + i) % count for i in range(length + 1)]


def arc_between(start: Point, end: Point, centre: Point, radius: float, sagitta: float) -> tuple[Point, ...]:
    """Return points of the shorter arc from start to end with at most the given sagitta (mm), both ends kept."""
    first = atan2(start[1] - centre[1], start[0] - centre[0])
    sweep = atan2(end[1] - centre[1], end[0] - centre[0]) - first
    sweep = (sweep + pi) % (2 * pi) - pi
    step = 2 * acos(max(0.0, 1 - sagitta / radius))
    parts = max(1, ceil(abs(sweep) / step - 1e-9))
    middle = [
        (centre[0] + radius * cos(first + sweep * i / parts), centre[1] + radius * sin(first + sweep * i / parts))
        for i in range(1, parts)
    ]
    return (start, *middle, end)


def coarse_ring(ring: Ring, most_turn: float, sagitta: float) -> tuple[tuple[Point, ...], tuple[bool, ...]]:
    """Return fewer points of a ring, for drawing, and for each whether a corner stands there.

    Points of arcs are thinned until the turn from one to the next is at most ``most_turn`` degrees and the sagitta at
    most ``sagitta`` mm. A corner is a point where the direction changes by more than 18 degrees (an n-sided core of more
    than 20 sides reads as round).
    """
    count = len(ring.points)
    keep = [True] * count
    for run in ring.runs:
        if run.centre is None or run.radius <= 0:
            continue
        indices = run_indices(run, count)
        chords = [dist(ring.points[i], ring.points[j]) for i, j in pairwise(indices)]
        turn = degrees(max(chords) / run.radius)
        wish = min(most_turn, degrees(2 * acos(max(0.0, 1 - sagitta / run.radius))))
        every = max(1, int(wish / max(turn, 1e-6)))
        for position, index in enumerate(indices[1:-1], 1):
            keep[index] = position % every == 0
    points = tuple(p for p, k in zip(ring.points, keep, strict=True) if k)
    if sum(run.centre is not None for run in ring.runs) > MANY_ARCS:
        # a free curve is many short arcs, and the ends of each are still there
        thin = shapely.get_coordinates(shapely.simplify(shapely.Polygon(points).exterior, sagitta))[:-1]
        points = tuple((float(x), float(y)) for x, y in thin)
    return points, corners(points)


def corners(points: tuple[Point, ...], least: float = 18.0) -> tuple[bool, ...]:
    """Tell for each point of a closed ring whether the direction changes there by more than ``least`` degrees."""
    ring = np.asarray(points)
    ahead = np.roll(ring, -1, axis=0) - ring
    behind = np.roll(ahead, 1, axis=0)
    cross = behind[:, 0] * ahead[:, 1] - behind[:, 1] * ahead[:, 0]
    dot = (behind * ahead).sum(axis=1)
    return tuple(bool(b) for b in np.abs(np.arctan2(cross, dot)) > radians(least))


def move(geometry: shapely.Geometry, pose: Pose) -> shapely.Geometry:
    """Return the geometry carried by the pose."""
    a, b, c, d, e, f = pose.matrix()
    matrix, shift = np.array([[a, b], [c, d]]), np.array([e, f])
    return sound(shapely.transform(geometry, lambda xy: xy @ matrix + shift))


def sound(area: shapely.Geometry) -> shapely.Geometry:
    """Return an area that shapely can go on with: rounding may make a sliver's border cross itself when it is moved."""
    return area if shapely.is_valid(area) else shapely.buffer(area, 0.0)


def pieces(geometry: shapely.Geometry, least: float = 0.05) -> shapely.Geometry:
    """Return the polygons of a geometry of at least ``least`` mm²: slivers between two flattenings of an arc go."""
    parts = shapely.get_parts(geometry)
    parts = parts[(shapely.get_type_id(parts) == 3) & (shapely.area(parts) >= least)]
    return sound(parts[0] if len(parts) == 1 else shapely.multipolygons(parts))


def points_of(points: Iterable[Point]) -> Array:
    """Return points as an array of shape (n, 2)."""
    return np.asarray(list(points), dtype=np.float64).reshape(-1, 2)
