"""How two boards may stand to each other where edges of the same letter meet, by what a builder knows: seen from outside the edges run
against each other; bevelled ones close to a mitre; of two plain ones one board runs through and the other ends on its inside face."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from math import cos, radians, sin

import numpy as np
import numpy.typing as npt
import shapely

from tests.rehearsal.sites import Site

Matrix = npt.NDArray[np.float64]  # 4 × 4
Vector = npt.NDArray[np.float64]

TOPS = 0.5  # share of “top” that must lie along an edge to say anything of it
SLICES = 4  # of a board with bevels
SAME = 1.0  # mm within which two boards are one
UP = np.array((0.0, 0.0, 1.0))


@dataclass(frozen=True, slots=True, eq=False)
class Side:
    """A board at a join: its thickness (mm), where its top is (None: not said), the site."""

    thickness: float
    up: Vector | None
    site: Site


@dataclass(frozen=True, slots=True, eq=False)
class Way:
    """One way to join: the matrix carries the second board into the frame of the first; ``through``: which board runs through, "" in a
    mitre."""

    matrix: Matrix
    through: str


def joined_ways(a: Side, b: Side) -> Iterator[Way]:
    """Yield the ways in which the second board may stand at the first."""
    if not _tops_agree(a, b) or (a.site.strip and b.site.strip):
        return
    if a.site.strip:
        yield Way(_on_inside(a, b), "a")
    elif b.site.strip:
        yield Way(np.linalg.inv(_on_inside(b, a)), "b")
    elif a.site.bevel is None and b.site.bevel is None:
        yield Way(_on_inside(a, b), "a")
        yield Way(np.linalg.inv(_on_inside(b, a)), "b")
        yield Way(_folded(a, b, 0.0), "line")
    elif a.site.bevel is not None and b.site.bevel is not None:
        yield Way(_folded(a, b, a.site.bevel + b.site.bevel), "")


def _tops_agree(a: Side, b: Side) -> bool:
    """Say whether both tops lie the same way along the join, as far as they say anything; along it the second board runs against the
    first."""
    if a.up is None or b.up is None:
        return True
    one, other = float(a.up @ a.site.along), -float(b.up @ b.site.along)
    return min(abs(one), abs(other)) < TOPS or one * other > 0.0


def _on_inside(a: Side, b: Side) -> Matrix:
    """Return the place of a board whose edge ends on the inside face of another, its outside over the line of that one's site."""
    along, inward = np.append(a.site.along, 0.0), np.append(a.site.inward, 0.0)
    return _carried(b.site, (-along, -UP, -inward), np.append(a.site.middle, -a.thickness))


def _folded(a: Side, b: Side, by: float) -> Matrix:
    """Return the place of a board at an edge of another, folded inwards by so many degrees about the line of both outside faces."""
    along, outward = np.append(a.site.along, 0.0), -np.append(a.site.inward, 0.0)
    c, s = cos(radians(by)), sin(radians(by))
    return _carried(b.site, (-along, c * outward - s * UP, c * UP + s * outward), np.append(a.site.middle, 0.0))


def _carried(site: Site, to: tuple[Vector, Vector, Vector], middle: Vector) -> Matrix:
    """Return the matrix that carries a site's direction, inward way and face to three directions, and its middle to a point."""
    own = np.column_stack((np.append(site.along, 0.0), np.append(site.inward, 0.0), UP))
    turn = np.column_stack(to) @ own.T
    matrix = np.eye(4)
    matrix[:3, :3], matrix[:3, 3] = turn, middle - turn @ np.append(site.middle, 0.0)
    return matrix


@dataclass(frozen=True, slots=True, eq=False)
class Solid:
    """A board in its place; what it is so deep (mm) under its drawn face, for bevels take something there."""

    matrix: Matrix
    thickness: float
    at: Callable[[float], shapely.Polygon]


def shared(one: Solid, other: Solid) -> float:
    """Return the share of a board's middle plane that lies in another board, where bevels leave something of it."""
    return shared_board(
        (one.matrix, one.at(one.thickness / 2.0), one.thickness),
        (other.matrix, other.at(0.0), other.thickness),
        at=other.at,
    )


def shared_board(
    one: tuple[Matrix, shapely.Polygon, float],
    other: tuple[Matrix, shapely.Polygon, float],
    step: float = 4.0,
    at: Callable[[float], shapely.Polygon] | None = None,
) -> float:
    """Return the share of a board's middle plane that lies in another board, more than a little below its faces; ``at``: what that one is
    so deep under its face, where it is not the same everywhere."""
    matrix, area, thickness = one
    left, bottom, right, top = area.bounds
    grid = np.array(
        [(x, y) for x in np.arange(left + step / 2, right, step) for y in np.arange(bottom + step / 2, top, step)]
    )
    grid = grid[shapely.contains_xy(area.buffer(-0.5), grid)] if len(grid) else grid
    if not len(grid):
        return 0.0
    points = (
        np.linalg.inv(other[0])
        @ matrix
        @ np.column_stack((grid, np.full(len(grid), -thickness / 2), np.ones(len(grid)))).T
    )
    deep = (points[2] < -0.3) & (points[2] > 0.3 - other[2])
    if at is None:
        return float((deep & shapely.contains_xy(other[1].buffer(-0.3), points[0], points[1])).mean())
    within = np.zeros(len(grid), dtype=np.bool_)
    for n in range(SLICES):
        top, low = (-other[2] * share / SLICES for share in (n, n + 1))
        own = deep & (points[2] <= top) & (points[2] > low)
        if own.any():
            within[own] = shapely.contains_xy(at(-low).buffer(-0.3), points[0][own], points[1][own])
    return float(within.mean())


def one_place(a: Matrix, b: Matrix, area: shapely.Polygon) -> bool:
    """Say whether two places of a board are one."""
    left, bottom, right, top = area.bounds
    points = np.array([(x, y, 0.0, 1.0) for x in (left, right) for y in (bottom, top)]).T
    return bool(np.abs(a @ points - b @ points).max() < SAME)
