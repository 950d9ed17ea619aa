"""One outline laid on another by turning and moving it, never by turning it over: how far apart they stay."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from math import atan2, cos, sin

import numpy as np
import numpy.typing as npt
import shapely

STEP = 0.8  # mm between the points that are compared
SIDES = 6  # longest sides whose directions are tried
ROUNDS = 12
STRAY, MOST, FEWEST = (
    0.3,
    0.8,
    0.5,
)  # mm by which dots of a line are off it at most; shares of all dots that are tried, and needed
OPEN = 1.6  # radians: dots round something leave no wider gap
MORE_ROUNDS, STILL = 300, 0.0002  # mm that no point moves any more
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

    def brought(turns: Iterable[float]) -> Iterator[Laid]:
        for turn in turns:
            points = _turned(own - _middle(one), turn) + _middle(other)
            for _ in range(ROUNDS):
                points = _nearer(points, target)
            yield _measured(points, own, one, its, target)

    found = [*brought(_turns(one, other))]
    if min(laid.mean for laid in found) > STRAY:  # the long sides of smooth shapes are chords, which lead nowhere
        found += brought(_steps())
    best = min(found, key=lambda laid: laid.mean)
    points = own @ best.matrix[:, :2].T + best.matrix[:, 2]
    for _ in range(MORE_ROUNDS):  # of smooth shapes, which slide along each other slowly
        moved = _nearer(points, target)
        if np.abs(moved - points).max() < STILL:
            break
        points = moved
    return (*(laid for laid in found if laid is not best), _measured(points, own, one, its, target))


def _measured(
    points: Points, own: Points, one: shapely.Polygon, its: npt.NDArray[np.object_], target: shapely.Geometry
) -> Laid:
    gaps = shapely.distance(shapely.points(points), target)
    back = shapely.distance(its, _rings(points, one))
    mean, worst = float((gaps.mean() + back.mean()) / 2), float(max(gaps.max(), back.max()))
    return Laid(_motion(own, points), mean, worst)


def dots_on(dots: Points, outline: shapely.Polygon) -> Laid:
    """Return how an outline comes to lie under dots that were drawn along it, other dots among them: the matrix carries the outline to the
    dots, and the distances (mm) are those of the dots that belong to it."""
    hull = shapely.convex_hull(shapely.multipoints(dots))
    target = outline.exterior
    shapely.prepare(target)
    if _widest_gap(dots) > OPEN:
        return Laid(np.eye(3)[:2], np.inf, np.inf)  # a straight line says nothing of an outline
    tries = []
    for turn in _turns(hull, outline):
        points = _turned(dots - _middle(hull), turn) + _middle(outline)
        tries.append(_trimmed(points, target, 2 * ROUNDS))
    points = min(
        tries, key=lambda tried: float(np.minimum(shapely.distance(shapely.points(tried), target), STRAY).mean())
    )
    points = _trimmed(points, target, MORE_ROUNDS)
    gaps = shapely.distance(shapely.points(points), target)
    own = gaps[gaps < STRAY]
    if len(own) < FEWEST * len(dots):
        return Laid(np.eye(3)[:2], np.inf, np.inf)
    return Laid(_motion(points, dots), float(own.mean()), float(own.max()))


def _trimmed(points: Points, target: shapely.Geometry, rounds: int) -> Points:
    """Return points turned and moved nearer to a boundary; those that are far from it, as dots of other lines are, count for nothing."""
    for round_ in range(rounds):
        gaps = shapely.distance(shapely.points(points), target)
        most = np.inf if round_ < ROUNDS // 2 else max(STRAY, float(np.quantile(gaps, MOST)))
        kept = points[gaps <= most]
        motion = _motion(
            kept, shapely.get_coordinates(shapely.get_point(shapely.shortest_line(shapely.points(kept), target), 1))
        )
        moved = points @ motion[:, :2].T + motion[:, 2]
        if np.abs(moved - points).max() < STILL:
            break
        points = moved
    return points


def _widest_gap(dots: Points) -> float:
    """Return the widest angle (radians) about their middle in which no dots lie."""
    away = dots - (dots.min(axis=0) + dots.max(axis=0)) / 2
    angles = np.sort(np.arctan2(away[:, 1], away[:, 0]))
    return float(np.diff(angles, append=angles[0] + 2 * np.pi).max())


def _motion(own: Points, to: Points) -> Points:
    """Return the matrix (2 × 3) of the motion that carries points nearest to others (least squares)."""
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
    yield from seen or _steps()


def _steps() -> Iterator[float]:
    return (2 * np.pi * n / TURNS for n in range(TURNS))


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
