"""A smooth line of many points as few arcs that run into each other without a kink.

Writers draw true arcs, and an outline that is shifted by the trace allowance stays exact only where its pieces are lines and
arcs; hundreds of short lines would also make heavy pages.
"""

from collections.abc import Sequence
from math import cos, hypot, radians, sqrt

import numpy as np
import numpy.typing as npt

from publisher.basics import SAME_POINT, Arc, Line, Path, PathEdge, Point, polyline, record
from publisher.geometry.paths.rings import next_of, one_before

ARC_TOLERANCE = 0.004  # mm: how far a point may lie off the arcs
CORNER = 20.0  # degrees: a sharper bend between two neighbours is a corner, and stays one
STRAIGHT = 1e5  # mm: an arc of a larger radius is a line
MOST_SWEEP = 143.0  # degrees: an arc of a larger sweep turns too far to follow its points
FARTHEST = 256  # points that one pair of arcs may stand for
Array = npt.NDArray[np.float64]


def fitted(points: Sequence[Point], name: str, tolerance: float = ARC_TOLERANCE) -> Path:
    """Return a closed line through ``points`` (mm, not repeated at the end) as arcs and lines, in the same direction.

    Between corners neighbours share their tangents. Each pair of arcs is a biarc with equal tangent lengths (K. M. Bolton,
    "Biarc curves", Computer-Aided Design 7, 1975); it is lengthened as long as all points stay within ``tolerance``.
    """
    ring = np.asarray(points, dtype=np.float64)
    if len(ring) < 4:
        return polyline(points, True, name)
    ahead, behind = _tangents(ring)
    corners = [i for i in range(len(ring)) if float(ahead[i] @ behind[i]) < cos(radians(CORNER))]
    start = corners[0] if corners else 0
    order = [(start + k) % len(ring) for k in range(len(ring) + 1)]
    ring, ahead, behind = ring[order], ahead[order], behind[order]
    stops = [*(k for k in range(1, len(ring) - 1) if order[k] in corners), len(ring) - 1]
    return Path(_pairs(_Smooth(_listed(ring), _listed(ahead), _listed(behind), name, tolerance), stops))


def fitted_line(
    points: Sequence[Point], tangents: Sequence[Point], name: str, tolerance: float = ARC_TOLERANCE
) -> tuple[PathEdge, ...]:
    """Return an open smooth line through ``points`` (mm) with these unit tangents as arcs and lines, from the first point."""
    return _pairs(_Smooth(points, tangents, tangents, name, tolerance), [len(points) - 1])


@record
class _Smooth:
    """Points with their unit tangents ahead and behind. Plain numbers: each arc has but a few points to look at."""

    points: Sequence[Point]
    ahead: Sequence[Point]
    behind: Sequence[Point]
    name: str
    tolerance: float


def _listed(array: Array) -> list[Point]:
    return [(x, y) for x, y in array.tolist()]


def _pairs(line: _Smooth, stops: Sequence[int]) -> tuple[PathEdge, ...]:
    """Return biarcs from the first point to the last; none goes past a stop."""
    curves: list[PathEdge] = []
    at, reach = 0, 8
    for stop in stops:
        while at < stop:
            to, pair = _longest(line, at, stop, reach)
            at, reach = to, to - at
            curves += pair
    return tuple(curves)


def _tangents(ring: Array) -> tuple[Array, Array]:
    """Return the unit tangent at each point, looking ahead and looking behind: that of the circle through its neighbours,
    or at a corner the direction of each side."""
    out = next_of(ring) - ring
    size_out = np.linalg.norm(out, axis=1)[:, None]
    into, size_in = one_before(out), one_before(size_out)
    out, into = out / size_out, into / size_in
    middle = into * size_out + out * size_in  # weights as on the circle through three points
    middle /= np.maximum(np.linalg.norm(middle, axis=1)[:, None], 1e-12)
    sharp = ((out * into).sum(axis=1) < cos(radians(CORNER)))[:, None]
    return np.where(sharp, out, middle), np.where(sharp, into, middle)


def _longest(line: _Smooth, at: int, stop: int, reach: int) -> tuple[int, list[PathEdge]]:
    """Return how far one biarc goes from point ``at``, and its curves; at least to the next point, at first as far as the last."""
    low, high = at + 1, min(stop, at + FARTHEST)
    pair: list[PathEdge] = []
    step, failed = max(1, reach - 1), False
    while low < high:  # go on by longer steps while they hold, then by ever shorter ones
        to = min(low + step, high)
        found = _biarc(line, at, to)
        if found:
            low, pair = to, found
        else:
            high, failed = to - 1, True
        step = max(1, (high - low + 1) // 2) if failed else 2 * step
    return low, pair or _biarc(line, at, at + 1, check=False)


def _biarc(line: _Smooth, first: int, last: int, check: bool = True) -> list[PathEdge]:
    """Return the two curves from one point to another; nothing when a point between lies too far off."""
    (ax, ay), (bx, by) = line.points[first], line.points[last]
    (sx, sy), (tx, ty) = line.ahead[first], line.behind[last]
    vx, vy = bx - ax, by - ay
    square, along, apart = vx * vx + vy * vy, vx * (sx + tx) + vy * (sy + ty), 2.0 * (1.0 - sx * tx - sy * ty)
    if along <= 0.0:
        return [] if check else [Line(line.name, (ax, ay), (bx, by))]
    # the smaller root's form without cancellation, also right when the tangents are parallel
    d = square / (along + sqrt(along * along + apart * square))
    q = ((ax + bx + d * (sx - tx)) / 2.0, (ay + by + d * (sy - ty)) / 2.0)
    pair = [
        _arc(line.name, (ax, ay), q, (ax, ay), (sx, sy)),
        _arc(line.name, q, (bx, by), (bx, by), (tx, ty)),
    ]
    pair = [edge for edge in pair if edge.length > SAME_POINT]
    if check and not (
        all(isinstance(edge, Line) or abs(edge.sweep) < MOST_SWEEP for edge in pair)
        and _near(pair, line.points[first + 1 : last], line.tolerance)
    ):
        return []
    return pair


def _arc(name: str, start: Point, end: Point, touch: Point, tangent: Point) -> PathEdge:
    """Return the arc between two points that has this tangent at one of them, ``touch``; a line when it is as good as one."""
    nx, ny = -tangent[1], tangent[0]
    other = end if touch == start else start
    wx, wy = other[0] - touch[0], other[1] - touch[1]
    off = nx * wx + ny * wy
    square = wx * wx + wy * wy
    if abs(off) * 2.0 * STRAIGHT <= square or square < SAME_POINT * SAME_POINT:
        return Line(name, start, end)
    signed = square / (2.0 * off)
    centre = (touch[0] + nx * signed, touch[1] + ny * signed)
    return Arc.between(name, start, end, centre, hypot(touch[0] - centre[0], touch[1] - centre[1]), signed > 0.0)


def _near(pair: Sequence[PathEdge], points: Sequence[Point], tolerance: float) -> bool:
    """Say whether each point lies within the tolerance of one of the edges."""
    return all(any(_away(edge, point) <= tolerance for edge in pair) for point in points)


def _away(edge: PathEdge, point: Point) -> float:
    if isinstance(edge, Arc):
        return abs(hypot(point[0] - edge.centre[0], point[1] - edge.centre[1]) - edge.radius)
    x, y = edge.direction(edge.start)
    return abs((point[0] - edge.start[0]) * y - (point[1] - edge.start[1]) * x)
