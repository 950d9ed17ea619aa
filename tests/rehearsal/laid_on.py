"""One outline laid on another by turning and moving it, never by turning it over: how far apart they stay."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import atan2, cos, sin

import numpy as np
import numpy.typing as npt
import shapely

STEP = 0.8  # mm between the points that are compared
SIDES = 6  # longest sides whose directions are tried
ROUNDS = 12
TURNS = 24  # of shapes without long sides

Points = npt.NDArray[np.float64]


@dataclass(frozen=True, slots=True, eq=False)
class Laid:
    """One way to lay an outline on another: the matrix (2 × 3) that carries it there, mean and greatest distance in mm."""

    matrix: Points
    mean: float
    worst: float


def apart(one: shapely.Polygon, other: shapely.Polygon) -> tuple[float, float]:
    """Return the mean and the greatest distance (mm) of the boundaries where ``one`` lies best on ``other``."""
    best = min(ways(one, other), key=lambda laid: laid.mean)
    return best.mean, best.worst


def ways(one: shapely.Polygon, other: shapely.Polygon) -> tuple[Laid, ...]:
    """Return the ways to lay ``one`` on ``other`` that are worth a try, each brought as near as it comes."""
    target = other.boundary
    shapely.prepare(target)
    own, its = _points(one), shapely.points(_points(other))
    found = []
    for turn in _turns(one, other):
        points = _turned(own - _middle(one), turn) + _middle(other)
        for _ in range(ROUNDS):
            points = _nearer(points, target)
        gaps = shapely.distance(shapely.points(points), target)
        back = shapely.distance(its, _rings(points, one))
        mean, worst = float((gaps.mean() + back.mean()) / 2), float(max(gaps.max(), back.max()))
        found.append(Laid(_carrying(own, points), mean, worst))
    return tuple(found)


def _carrying(own: Points, to: Points) -> Points:
    """Return the matrix (2 × 3) of the motion that carried points."""
    a, b = own - own.mean(axis=0), to - to.mean(axis=0)
    turn = atan2(float((a[:, 0] * b[:, 1] - a[:, 1] * b[:, 0]).sum()), float((a * b).sum()))
    rotation = np.array(((cos(turn), -sin(turn)), (sin(turn), cos(turn))))
    return np.column_stack((rotation, to.mean(axis=0) - rotation @ own.mean(axis=0)))


def _turns(one: shapely.Polygon, other: shapely.Polygon) -> Iterator[float]:
    """Yield angles that bring a long side of one onto a long side of the other; round shapes in steps."""
    mine, its = _long_sides(one), _long_sides(other)
    seen: list[float] = []
    for length, way in mine:
        for its_length, its_way in its:
            turn = (its_way - way) % (2 * np.pi)
            if abs(length - its_length) < 1.0 and not any(abs(turn - t) < 0.004 for t in seen):
                seen.append(turn)
    yield from seen or (2 * np.pi * n / TURNS for n in range(TURNS))


def _long_sides(shape: shapely.Polygon) -> list[tuple[float, float]]:
    ring = shapely.get_coordinates(shapely.Polygon(shape.exterior).normalize().simplify(0.08).exterior)
    sides = np.diff(ring, axis=0)
    lengths = np.hypot(sides[:, 0], sides[:, 1])
    longest = np.argsort(-lengths)[:SIDES]
    return [(float(lengths[n]), atan2(float(sides[n, 1]), float(sides[n, 0]))) for n in longest if lengths[n] > 4.0]


def _points(shape: shapely.Polygon) -> Points:
    return np.asarray(shapely.get_coordinates(shapely.segmentize(shape, STEP)))


def _rings(points: Points, like: shapely.Polygon) -> shapely.Geometry:
    """Return points as rings that are joined as the points of ``like`` are."""
    _, ring = shapely.get_coordinates(shapely.get_rings(shapely.segmentize(like, STEP)), return_index=True)
    return shapely.multilinestrings(shapely.linestrings(points, indices=ring))


def _middle(shape: shapely.Polygon) -> Points:
    return np.array((shape.centroid.x, shape.centroid.y))


def _turned(points: Points, turn: float) -> Points:
    c, s = cos(turn), sin(turn)
    return points @ np.array(((c, s), (-s, c)))


def _nearer(points: Points, target: shapely.Geometry) -> Points:
    """Return points turned and moved as a whole nearer to a boundary (least squares to the nearest points of it)."""
    lines = shapely.shortest_line(shapely.points(points), target)
    near = shapely.get_coordinates(shapely.get_point(lines, 1))
    a, b = points - points.mean(axis=0), near - near.mean(axis=0)
    turn = atan2(float((a[:, 0] * b[:, 1] - a[:, 1] * b[:, 0]).sum()), float((a * b).sum()))
    return _turned(a, turn) + near.mean(axis=0)
