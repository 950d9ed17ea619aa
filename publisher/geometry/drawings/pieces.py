"""Pieces of path data carried to mm and made into lines and arcs: circles stay arcs, the rest is flattened to the sagitta."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import acos, atan2, ceil, cos, degrees, dist, hypot, pi, radians, sin, sqrt

import numpy as np

from publisher.basics import (
    SAGITTA,
    SAME_POINT,
    Arc,
    Line,
    Path,
    PathEdge,
    Point,
    closed_path,
)
from publisher.geometry.drawings.numbers import LARGEST_DRAWING, Matrix, carried, keeps_circles, scale_of
from publisher.geometry.drawings.path_data import Cubic, Elliptic, PathSegment, Straight, Subpath
from publisher.geometry.drawings.tree import Unreadable

MOST_DRAWING_POINTS = 200_000
_FINE = 5e-4  # a small thing is flattened finer: its size by this, so that its area is right too


@dataclass(slots=True)
class PointAllowance:
    """Counts the points that a drawing is flattened to."""

    left: int = MOST_DRAWING_POINTS

    def take(self, count: int) -> None:
        """Spend points; refuse the drawing when none are left."""
        self.left -= count
        if self.left < 0:
            raise Unreadable(
                f"the drawing comes to more than {MOST_DRAWING_POINTS} points", "simplify its paths, or check its size"
            )


def sagitta_of(paths: Sequence[Subpath], to_mm: Matrix, most: float = SAGITTA) -> float:
    """Return the sagitta in mm for an element: ``most``, or 1/2000 of its size when that is less."""
    points = [point for path in paths for piece in path.pieces for point in (piece.a, piece.b)]
    if not points:
        return most
    ends = np.asarray(points)
    size = hypot(*(ends.max(axis=0) - ends.min(axis=0)).tolist()) * scale_of(to_mm)
    if size > LARGEST_DRAWING:
        raise Unreadable("the drawing is larger than a kilometre", "check its size and its transforms")
    return min(most, max(size * _FINE, 1e-7))


def path_of(
    subpath: Subpath, to_mm: Matrix, name: str, sagitta: float = SAGITTA, budget: PointAllowance | None = None
) -> Path:
    """Return the subpath in mm, closed as it says; pieces of no length are left out."""
    budget = budget or PointAllowance()
    edges: list[PathEdge] = []
    for piece in subpath.pieces:
        if isinstance(piece, Straight):
            budget.take(1)
            found: Arc | list[Point] = [carried(to_mm, piece.a), carried(to_mm, piece.b)]
        elif isinstance(piece, Cubic):
            found = _cubic(piece, to_mm, sagitta, budget)
        else:
            found = _arc(piece, to_mm, name, sagitta, budget)
        if isinstance(found, Arc):
            if dist(found.start, found.end) > SAME_POINT:
                edges.append(found)
            continue
        at = found[0]
        for point in found[1:]:
            if dist(at, point) > SAME_POINT:
                edges.append(Line(name, at, point))
                at = point
    return closed_path(edges) if subpath.closed else Path(tuple(edges), closed=False)


def _cubic(piece: Cubic, to_mm: Matrix, sagitta: float, budget: PointAllowance) -> list[Point]:
    """Flatten a cubic in n equal steps of its parameter; a chord is off by at most max|B″|/(8n²).

    |B″| is at most 6·max(|a − 2p + q|, |p − 2q + b|), since B″ lies between its ends.
    """
    a, p, q, b = (carried(to_mm, point) for point in (piece.a, piece.p, piece.q, piece.b))
    bend = max(
        hypot(a[0] - 2.0 * p[0] + q[0], a[1] - 2.0 * p[1] + q[1]),
        hypot(p[0] - 2.0 * q[0] + b[0], p[1] - 2.0 * q[1] + b[1]),
    )
    n = max(1, ceil(sqrt(6.0 * bend / (8.0 * sagitta))))
    budget.take(n)
    points = [a]
    for k in range(1, n):
        t = k / n
        u = 1.0 - t
        w0, w1, w2, w3 = u * u * u, 3.0 * u * u * t, 3.0 * u * t * t, t * t * t
        points.append((w0 * a[0] + w1 * p[0] + w2 * q[0] + w3 * b[0], w0 * a[1] + w1 * p[1] + w2 * q[1] + w3 * b[1]))
    return [*points, b]


def _arc(arc: Elliptic, m: Matrix, name: str, sagitta: float, budget: PointAllowance) -> Arc | list[Point]:
    """Return an arc in mm: a true arc when it is one of a circle and the transform keeps circles, else its points."""
    a, b = carried(m, arc.a), carried(m, arc.b)
    if min(arc.rx, arc.ry) < 1e-9 or arc.a == arc.b:
        return [a, b]
    centre, rx, ry, first, whole = _centre(arc)
    size = max(rx, ry) * sqrt(2.0) * scale_of(m)
    n = max(1, ceil(abs(whole) / (2.0 * acos(max(0.0, 1.0 - sagitta / max(size, 2.0 * sagitta))))))
    budget.take(n)
    if keeps_circles(m) and abs(rx - ry) < 1e-9 * rx and abs(whole) < 2.0 * pi - 1e-6:
        flipped = m[0] * m[3] - m[1] * m[2] < 0.0
        sweep = degrees(-whole if flipped else whole)
        return Arc(name, a, b, carried(m, centre), rx * hypot(m[0], m[1]), sweep)
    c, s = cos(radians(arc.turn)), sin(radians(arc.turn))
    points = []
    for k in range(1, n):
        x, y = rx * cos(first + whole * k / n), ry * sin(first + whole * k / n)
        points.append(carried(m, (centre[0] + c * x - s * y, centre[1] + s * x + c * y)))
    return [a, *points, b]


def _centre(arc: Elliptic) -> tuple[Point, float, float, float, float]:
    """Return centre, radii (enlarged if too small), first angle and signed sweep in radians (SVG 1.1, appendix F.6.5)."""
    c, s = cos(radians(arc.turn)), sin(radians(arc.turn))
    hx, hy = (arc.a[0] - arc.b[0]) / 2.0, (arc.a[1] - arc.b[1]) / 2.0
    x, y = c * hx + s * hy, -s * hx + c * hy
    rx, ry = arc.rx, arc.ry
    needed = (x / rx) ** 2 + (y / ry) ** 2
    if needed > 1.0:
        rx, ry = rx * sqrt(needed), ry * sqrt(needed)
    low = (rx * y) ** 2 + (ry * x) ** 2
    root = sqrt(max(0.0, (rx * ry) ** 2 / low - 1.0)) * (1.0 if arc.large is not arc.sweep else -1.0)
    px, py = root * rx * y / ry, -root * ry * x / rx
    centre = (
        c * px - s * py + (arc.a[0] + arc.b[0]) / 2.0,
        s * px + c * py + (arc.a[1] + arc.b[1]) / 2.0,
    )
    first = atan2((y - py) / ry, (x - px) / rx)
    whole = (atan2((-y - py) / ry, (-x - px) / rx) - first) % (2.0 * pi)
    return centre, rx, ry, first, whole if arc.sweep else whole - 2.0 * pi


def full_turn(centre: Point, rx: float, ry: float) -> Subpath:
    """Return a circle or ellipse as a closed subpath of two half turns."""
    right, left = (centre[0] + rx, centre[1]), (centre[0] - rx, centre[1])
    halves: list[PathSegment] = [
        Elliptic(right, rx, ry, 0.0, False, True, left),
        Elliptic(left, rx, ry, 0.0, False, True, right),
    ]
    return Subpath(right, halves, True)
