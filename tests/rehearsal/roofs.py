"""Roofs of two slopes that are joined at the ridge, laid on gables that are as pointed.

The undersides lie on the gables' slopes, as far over one gable as over the other. No mark says so, and none needs to: they lie so in no
other way.
"""

from collections.abc import Iterator, Sequence
from itertools import combinations
from math import acos, degrees, radians, tan

import numpy as np
import numpy.typing as npt
import shapely
from shapely.geometry.polygon import orient

from tests.rehearsal.sites import Site
from tests.rehearsal.standing import Board, Stood

Vector = npt.NDArray[np.float64]

AS_POINTED = 1.0  # degrees by which gable and roof may differ
LEAST_FALL = 0.1  # of an edge's length
SLOPE = 10.0  # mm: a shorter edge is no slope of a gable


def with_roofs(assemblies: Sequence[tuple[Stood, ...]]) -> tuple[tuple[Stood, ...], ...]:
    """Return the assemblies, each roof laid on the first walls that carry it."""
    roofs = [one for one in assemblies if len(one) == 2 and _ridge(one[0].board) is not None]
    walls = [list(one) for one in assemblies if not any(one is roof for roof in roofs)]
    for roof in roofs:
        carrying = next((own for own in walls if _laid(roof, own)), None)
        if carrying is None:
            walls.append(list(roof))
        else:
            carrying += _laid(roof, carrying)
    return tuple(map(tuple, walls))


def _ridge(board: Board) -> Site | None:
    """Return the one bevelled edge of a slope."""
    bevelled = [site for site in board.sites if site.bevel is not None and site.bevel > 0.0]
    return bevelled[0] if len(bevelled) == 1 else None


def _laid(roof: tuple[Stood, ...], walls: Sequence[Stood]) -> list[Stood]:
    """Return both slopes in their places; none where no two gables are as pointed as they are."""
    ridge = _ridge(roof[0].board)
    if ridge is None or ridge.bevel is None:
        return []
    pointed = 180.0 - 2.0 * ridge.bevel
    tops = [top for one in walls for top in _tops(one, pointed)]
    pairs = [(float(np.hypot.reduce(b[0] - a[0])), a, b) for a, b in combinations(tops, 2)]
    if not pairs:
        return []
    far, one, other = max(pairs, key=lambda pair: pair[0])
    axis, down, across = (other[0] - one[0]) / far, one[1], one[2]
    outward = np.cross(axis, down)
    outward = outward if float(outward @ across) < 0.0 else -outward
    thick = roof[0].board.thickness
    inner = np.append(ridge.middle + thick * tan(radians(ridge.bevel)) * ridge.inward, -thick)
    own = np.column_stack((np.append(ridge.along, 0.0), np.append(ridge.inward, 0.0), (0.0, 0.0, 1.0)))
    turn = np.column_stack((np.cross(down, outward), down, outward)) @ own.T
    matrix = np.eye(4)
    matrix[:3, :3], matrix[:3, 3] = turn, (one[0] + other[0]) / 2 - turn @ inner
    return [Stood(slope.board, matrix @ np.linalg.inv(roof[0].matrix) @ slope.matrix) for slope in roof]


def _tops(one: Stood, pointed: float) -> Iterator[tuple[Vector, Vector, Vector]]:
    """Yield the corners of a standing board that are so pointed (degrees), with the ways down both slopes, in space."""
    ring = shapely.get_coordinates(orient(shapely.Polygon(one.board.area.exterior).simplify(0.05), 1.0).exterior)[:-1]
    for before, at, after in zip(np.roll(ring, 1, axis=0), ring, np.roll(ring, -1, axis=0), strict=True):
        a, b = before - at, after - at
        long = float(np.hypot(*a)), float(np.hypot(*b))
        convex = float(b[0] * a[1] - b[1] * a[0]) > 0.0
        if min(long) < SLOPE or not convex or not _falls(one.board, a) or not _falls(one.board, b):
            continue
        if abs(degrees(acos(float(np.clip(a @ b / (long[0] * long[1]), -1.0, 1.0)))) - pointed) < AS_POINTED:
            turn = one.matrix[:3, :3]
            apex = (one.matrix @ np.array((*at, 0.0, 1.0)))[:3]
            yield apex, turn @ np.append(a / long[0], 0.0), turn @ np.append(b / long[1], 0.0)


def _falls(board: Board, way: Vector) -> bool:
    """Say whether an edge falls from its upper end, on a board whose top is known."""
    return board.up is not None and float(way @ board.up) < -LEAST_FALL * float(np.hypot(*way))
