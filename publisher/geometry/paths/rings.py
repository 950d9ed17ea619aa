"""Rings: points with named runs, made from exact curves and turned back into them."""

from collections.abc import Iterable, Sequence
from itertools import pairwise
from math import sin

from publisher.basics import Point
from publisher.geometry.model import Region, Ring, Run
from publisher.geometry.paths.curves import SAGITTA, SAME, Curve, flatten

_Key = tuple[str, Point | None, float, bool]


class Pen:
    """Draws a chain of named curves from a point (mm)."""

    def __init__(self, at: Point) -> None:
        """Put the pen down at ``at``."""
        self.at = at
        self.curves: list[Curve] = []

    def line(self, to: Point, name: str) -> "Pen":
        """Draw a straight line."""
        self.curves.append(Curve(name, self.at, to))
        self.at = to
        return self

    def arc(self, to: Point, centre: Point, radius: float, name: str, ccw: bool = True) -> "Pen":
        """Draw an arc of less than a full turn about ``centre``; the pen and ``to`` lie on its circle."""
        self.curves.append(Curve(name, self.at, to, centre, radius, ccw))
        self.at = to
        return self


def circle(centre: Point, radius: float, name: str, ccw: bool = True) -> tuple[Curve, Curve]:
    """Return a full circle (mm) as two half turns, from its rightmost point."""
    right, left = (centre[0] + radius, centre[1]), (centre[0] - radius, centre[1])
    return (Curve(name, right, left, centre, radius, ccw), Curve(name, left, right, centre, radius, ccw))


def straight(corners: Sequence[tuple[Point, str]]) -> tuple[Curve, ...]:
    """Return the closed chain of lines through the corners; each corner comes with the name of the edge that starts there."""
    return tuple(Curve(name, start, corners[(i + 1) % len(corners)][0]) for i, (start, name) in enumerate(corners))


def ring_of(curves: Iterable[Curve], sagitta: float = SAGITTA) -> Ring:
    """Return the closed ring of a chain of curves: arcs flattened, neighbours of one run merged, specks dropped.

    No run goes round the whole ring (it is halved instead), so ``first`` never equals ``last``.
    """
    points: list[Point] = []
    runs: list[tuple[_Key, int]] = []
    for curve in curves:
        if curve.length() < SAME:
            continue
        key = (curve.name, curve.centre, curve.radius, curve.ccw or curve.centre is None)
        if not runs or runs[-1][0] != key:
            runs.append((key, len(points)))
        points.extend(flatten(curve, sagitta))
    if len(runs) > 1 and runs[0][0] == runs[-1][0]:
        runs.pop(0)  # the last run goes on past the first point
    if len(runs) == 1:
        key, first = runs[0]
        runs.append((key, (first + len(points) // 2) % len(points)))
    return Ring(
        tuple(points),
        tuple(Run(key[0], first, runs[(i + 1) % len(runs)][1], key[1], key[2]) for i, (key, first) in enumerate(runs)),
    )


def run_points(ring: Ring, run: Run) -> tuple[Point, ...]:
    """Return the points of a run, both ends included."""
    if run.first < run.last:
        return ring.points[run.first : run.last + 1]
    return ring.points[run.first :] + ring.points[: run.last + 1]


def curves_of(ring: Ring) -> tuple[Curve, ...]:
    """Return the exact curves of a ring: one per arc run, one per segment of a straight run."""
    curves: list[Curve] = []
    for run in ring.runs:
        points = run_points(ring, run)
        if run.centre is None:
            curves.extend(Curve(run.name, a, b) for a, b in pairwise(points))
        else:
            (cx, cy), (ax, ay), (bx, by) = run.centre, points[0], points[1]
            ccw = (ax - cx) * (by - cy) - (ay - cy) * (bx - cx) > 0.0
            curves.append(Curve(run.name, points[0], points[-1], run.centre, run.radius, ccw))
    return tuple(curves)


def signed_area(curves: Iterable[Curve]) -> float:
    """Return the exact area in mm² inside a closed chain: positive anticlockwise, arcs as arcs.

    Shoelace over the curves' ends plus the circular segments r²(a − sin a)/2.
    """
    total = 0.0
    for curve in curves:
        total += (curve.start[0] * curve.end[1] - curve.end[0] * curve.start[1]) / 2.0
        if curve.centre is not None:
            sweep = curve.sweep()
            segment = curve.radius**2 * (sweep - sin(sweep)) / 2.0
            total += segment if curve.ccw else -segment
    return total


def reverse(curves: Sequence[Curve]) -> tuple[Curve, ...]:
    """Return the chain travelled the other way round."""
    return tuple(curve.reversed() for curve in reversed(curves))


def oriented(curves: Sequence[Curve], hole: bool = False) -> tuple[Curve, ...]:
    """Return the closed chain anticlockwise, or clockwise for a hole."""
    return tuple(curves) if (signed_area(curves) > 0.0) is not hole else reverse(curves)


def area(region: Region) -> float:
    """Return the exact area of a region in mm², holes taken off."""
    return signed_area(curves_of(region.outer)) + sum(signed_area(curves_of(hole)) for hole in region.holes)


def path_length(region: Region) -> float:
    """Return the exact length in mm of all outlines of a region: what a knife travels."""
    rings = (region.outer, *region.holes)
    return sum(curve.length() for ring in rings for curve in curves_of(ring))
