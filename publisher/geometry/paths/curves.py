"""Exact pieces of an outline: straight lines and arcs, how they flatten, shift and meet.

Outlines are built and changed as curves and flattened once, so that an arc keeps its centre and radius to the end.
"""

from collections.abc import Callable
from dataclasses import dataclass
from math import acos, atan2, ceil, cos, dist, hypot, pi, sin, sqrt

from publisher.basics import Point

SAGITTA = 0.005  # mm: greatest distance between a chord and its arc
SAME = 1e-6  # mm: points closer than this are one point


@dataclass(frozen=True, slots=True)
class Curve:
    """A straight line, or an arc of less than a full turn, from ``start`` to ``end`` (mm) with the name of its run.

    ``centre`` is None for a line; ``ccw`` says which way an arc is travelled. Material lies on the left.
    """

    name: str
    start: Point
    end: Point
    centre: Point | None = None
    radius: float = 0.0
    ccw: bool = True

    def sweep(self) -> float:
        """Return the angle of an arc in radians, in (0, 2π); 0 for a line."""
        if self.centre is None:
            return 0.0
        first, last = angle(self.centre, self.start), angle(self.centre, self.end)
        turn = (last - first) if self.ccw else (first - last)
        return turn % (2.0 * pi)

    def length(self) -> float:
        """Return the true length in mm (of the arc, not of its chords)."""
        return dist(self.start, self.end) if self.centre is None else self.radius * self.sweep()

    def direction(self, at: Point) -> Point:
        """Return the unit vector of travel at a point of the curve."""
        if self.centre is None:
            size = dist(self.start, self.end)
            return ((self.end[0] - self.start[0]) / size, (self.end[1] - self.start[1]) / size)
        x, y = (at[0] - self.centre[0]) / self.radius, (at[1] - self.centre[1]) / self.radius
        return (-y, x) if self.ccw else (y, -x)

    def reversed(self) -> "Curve":
        """Return the curve travelled the other way."""
        return Curve(self.name, self.end, self.start, self.centre, self.radius, not self.ccw)

    def moved(self, carry: Callable[[Point], Point], mirrored: bool = False) -> "Curve":
        """Return the curve carried by a rigid motion (or mirror, which changes the way an arc is travelled)."""
        centre = None if self.centre is None else carry(self.centre)
        return Curve(self.name, carry(self.start), carry(self.end), centre, self.radius, self.ccw is not mirrored)


def angle(centre: Point, at: Point) -> float:
    """Return the direction from ``centre`` to ``at`` in radians."""
    return atan2(at[1] - centre[1], at[0] - centre[0])


def polar(radius: float, angle_rad: float, centre: Point = (0.0, 0.0)) -> Point:
    """Return the point at this distance (mm) and direction (radians) from ``centre``."""
    return (centre[0] + radius * cos(angle_rad), centre[1] + radius * sin(angle_rad))


def flatten(curve: Curve, sagitta: float = SAGITTA) -> list[Point]:
    """Return the curve's points without its end. A chord over the angle a lies r(1 − cos(a/2)) from its arc."""
    if curve.centre is None:
        return [curve.start]
    whole = curve.sweep()
    step = min(2.0 * acos(max(-1.0, 1.0 - sagitta / curve.radius)), pi / 4.0)
    count = max(1, ceil(whole / step - 1e-9))
    first = angle(curve.centre, curve.start)
    each = whole / count if curve.ccw else -whole / count
    return [curve.start, *(polar(curve.radius, first + k * each, curve.centre) for k in range(1, count))]


def shifted(curve: Curve, by: float) -> Curve | None:
    """Return the curve moved to its left (into the material) by ``by`` mm; None when an arc shrinks to nothing."""
    if curve.centre is None:
        x, y = curve.direction(curve.start)
        dx, dy = -y * by, x * by
        return Curve(
            curve.name,
            (curve.start[0] + dx, curve.start[1] + dy),
            (curve.end[0] + dx, curve.end[1] + dy),
        )
    radius = curve.radius - by if curve.ccw else curve.radius + by
    if radius <= SAME:
        return None
    ratio, (cx, cy) = radius / curve.radius, curve.centre

    def out(point: Point) -> Point:
        return (cx + (point[0] - cx) * ratio, cy + (point[1] - cy) * ratio)

    return Curve(curve.name, out(curve.start), out(curve.end), curve.centre, radius, curve.ccw)


def meet(a: Curve, b: Curve, near: Point) -> Point | None:
    """Return where the lines or circles that carry two curves meet, the one nearest to ``near``; None if they do not."""
    if a.centre is None and b.centre is None:
        found = _line_line(a, b)
    elif a.centre is None:
        found = _line_circle(a, b)
    elif b.centre is None:
        found = _line_circle(b, a)
    else:
        found = _circle_circle(a, b)
    return min(found, key=lambda p: dist(p, near)) if found else None


def _line_line(a: Curve, b: Curve) -> list[Point]:
    (ax, ay), (bx, by) = a.direction(a.start), b.direction(b.start)
    cross = ax * by - ay * bx
    if abs(cross) < 1e-9:
        return []
    wx, wy = b.start[0] - a.start[0], b.start[1] - a.start[1]
    t = (wx * by - wy * bx) / cross
    return [(a.start[0] + t * ax, a.start[1] + t * ay)]


def _line_circle(line: Curve, arc: Curve) -> list[Point]:
    assert arc.centre is not None
    x, y = line.direction(line.start)
    wx, wy = arc.centre[0] - line.start[0], arc.centre[1] - line.start[1]
    along, off = wx * x + wy * y, wx * -y + wy * x
    rest = arc.radius**2 - off**2
    if rest < 0.0:
        return []
    half = sqrt(rest)
    return [(line.start[0] + t * x, line.start[1] + t * y) for t in (along - half, along + half)]


def _circle_circle(a: Curve, b: Curve) -> list[Point]:
    assert a.centre is not None and b.centre is not None
    dx, dy = b.centre[0] - a.centre[0], b.centre[1] - a.centre[1]
    apart = hypot(dx, dy)
    if apart < SAME:
        return []
    along = (apart**2 + a.radius**2 - b.radius**2) / (2.0 * apart)
    rest = a.radius**2 - along**2
    if rest < 0.0:
        return []
    half, x, y = sqrt(rest), dx / apart, dy / apart
    mx, my = a.centre[0] + along * x, a.centre[1] + along * y
    return [(mx - half * y, my + half * x), (mx + half * y, my - half * x)]
