"""Pieces of path data carried to mm and made into curves: circles stay arcs, the rest is flattened to the sagitta."""

from itertools import pairwise
from math import acos, atan2, ceil, cos, dist, hypot, pi, radians, sin, sqrt

from publisher.basics import Point
from publisher.geometry.curves import SAGITTA, SAME, Curve
from publisher.geometry.drawings.numbers import Matrix
from publisher.geometry.drawings.path_data import Arc, Cubic, Line, Piece, Subpath


def curves_of_subpath(path: Subpath, to_mm: Matrix, name: str) -> tuple[Curve, ...]:
    """Return the subpath's curves in mm; pieces of no length are left out."""
    return tuple(
        curve for piece in path.pieces for curve in _curves(piece, to_mm, name) if dist(curve.start, curve.end) > SAME
    )


def _at(m: Matrix, p: Point) -> Point:
    return (m[0] * p[0] + m[2] * p[1] + m[4], m[1] * p[0] + m[3] * p[1] + m[5])


def _curves(piece: Piece, m: Matrix, name: str) -> tuple[Curve, ...]:
    if isinstance(piece, Line):
        return (Curve(name, _at(m, piece.a), _at(m, piece.b)),)
    if isinstance(piece, Cubic):
        points = _cubic(_at(m, piece.a), _at(m, piece.p), _at(m, piece.q), _at(m, piece.b))
    else:
        found = _arc(piece, m, name)
        if isinstance(found, Curve):
            return (found,)
        points = found
    return tuple(Curve(name, a, b) for a, b in pairwise(points))


def _cubic(a: Point, p: Point, q: Point, b: Point) -> list[Point]:
    """Flatten a cubic in n equal steps of its parameter; a chord is off by at most max|B″|/(8n²).

    |B″| is at most 6·max(|a − 2p + q|, |p − 2q + b|), since B″ lies between its ends.
    """
    bend = max(
        hypot(a[0] - 2.0 * p[0] + q[0], a[1] - 2.0 * p[1] + q[1]),
        hypot(p[0] - 2.0 * q[0] + b[0], p[1] - 2.0 * q[1] + b[1]),
    )
    n = max(1, min(2000, ceil(sqrt(6.0 * bend / (8.0 * SAGITTA)))))
    points = [a]
    for k in range(1, n):
        t = k / n
        u = 1.0 - t
        w = (u**3, 3.0 * u * u * t, 3.0 * u * t * t, t**3)
        points.append(
            (
                w[0] * a[0] + w[1] * p[0] + w[2] * q[0] + w[3] * b[0],
                w[0] * a[1] + w[1] * p[1] + w[2] * q[1] + w[3] * b[1],
            )
        )
    return [*points, b]


def _arc(arc: Arc, m: Matrix, name: str) -> Curve | list[Point]:
    """Return an arc in mm: a true arc when it is one of a circle and the transform keeps circles, else its points."""
    a, b = _at(m, arc.a), _at(m, arc.b)
    if arc.rx < SAME or arc.ry < SAME or dist(arc.a, arc.b) < 1e-12:
        return [a, b]
    centre, rx, ry, first, whole = _centre(arc)
    keeps = abs(m[0] * m[2] + m[1] * m[3]) < 1e-9 * (m[0] ** 2 + m[1] ** 2) and abs(
        hypot(m[0], m[1]) - hypot(m[2], m[3])
    ) < 1e-9 * hypot(m[0], m[1])
    if keeps and abs(rx - ry) < 1e-9 * rx and abs(whole) < 2.0 * pi - 1e-6:
        flipped = m[0] * m[3] - m[1] * m[2] < 0.0
        return Curve(name, a, b, _at(m, centre), rx * hypot(m[0], m[1]), (whole > 0.0) is not flipped)
    size = max(rx, ry) * max(hypot(m[0], m[1]), hypot(m[2], m[3]))
    n = max(1, min(4000, ceil(abs(whole) / (2.0 * acos(max(0.0, 1.0 - SAGITTA / max(size, 2.0 * SAGITTA)))))))
    c, s = cos(radians(arc.turn)), sin(radians(arc.turn))
    points = []
    for k in range(1, n):
        x, y = rx * cos(first + whole * k / n), ry * sin(first + whole * k / n)
        points.append(_at(m, (centre[0] + c * x - s * y, centre[1] + s * x + c * y)))
    return [a, *points, b]


def _centre(arc: Arc) -> tuple[Point, float, float, float, float]:
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
    halves: list[Piece] = [Arc(right, rx, ry, 0.0, False, True, left), Arc(left, rx, ry, 0.0, False, True, right)]
    return Subpath(right, halves, True)
