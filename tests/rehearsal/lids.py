"""Lids and single slopes laid on walls: flat on the edges that carry them, as far over the outside of each wall as the steps say."""

from collections import Counter, defaultdict
from collections.abc import Iterator, Mapping, Sequence
from itertools import combinations, product
from types import MappingProxyType

import numpy as np
import numpy.typing as npt
import shapely

from tests.rehearsal.sentences import Reaches
from tests.rehearsal.standing import Board, Stood

Vector = npt.NDArray[np.float64]
Matrix = npt.NDArray[np.float64]  # 4 × 4

TOUCHES = 0.5  # mm within which a wall touches what lies on it
FITS = 0.3  # mm by which what is said of two walls may disagree
LEANS = 0.05  # of a wall's outward direction that must lie in the plane
UPHILL = 0.05  # sine of a slope from which “top” says which end is up
NOTHING_PAST: Mapping[str, float] = MappingProxyType({})
ALONG = 0.999  # cosine between edges that run alike
LEAST = 8.0  # mm of an edge that carries


def with_lids(
    assemblies: Sequence[tuple[Stood, ...]], boards: Sequence[Board], reaches: Sequence[Reaches]
) -> tuple[tuple[Stood, ...], ...]:
    """Return the assemblies, with what is said to reach over their walls laid on as often as it is cut."""
    found = [list(one) for one in assemblies]
    board_of = {board.letter: board for board in boards}
    said: dict[str, dict[str, list[float]]] = defaultdict(lambda: defaultdict(list))
    past: dict[str, dict[str, float]] = defaultdict(dict)
    for one in reaches:
        if one.at_ends:
            past[one.part][one.wall] = one.far
        else:
            said[one.part][one.wall].append(one.far)
    for letter, walls in said.items():
        board = board_of.get(letter)
        placed = Counter(one.board.letter for own in found for one in own)
        if board is None or placed[letter] >= board.count:
            continue
        for own in found:
            if (
                walls.keys() <= {one.board.letter for one in own}
                and (lid := lid_on(board, own, walls, past[letter])) is not None
            ):
                own.append(lid)
                break
    return tuple(map(tuple, found))


def lid_on(
    board: Board, stood: Sequence[Stood], walls: dict[str, list[float]], past: Mapping[str, float] = NOTHING_PAST
) -> Stood | None:
    """Return a board laid on walls so that it reaches over each as far (mm) as is said, and ``past`` both ends of some; None where it
    does so in no way."""
    carrying = [one for one in stood if one.board.letter in walls]
    best: tuple[float, Stood] | None = None
    for plane in (*_planes(carrying), *_leaning(carrying)):
        under = [one for one in carrying if abs(_highest(one, plane)) < TOUCHES]
        if {one.board.letter for one in under} != walls.keys():
            continue
        for matrix in _ways(board, plane, carrying):
            for fars in product(*(walls[one.board.letter] for one in under)):
                moved, off = _moved(board, matrix, plane, list(zip(under, fars, strict=True)), past)
                if off < FITS and (best is None or off < best[0] - 0.02):
                    best = off, Stood(board, moved)
    return best[1] if best else None


def _planes(walls: Sequence[Stood]) -> Iterator[Matrix]:
    """Yield frames whose z looks out of a wall's straight edge, square to it, and whose x runs along it, that no wall reaches above."""
    for one in walls:
        for site in one.board.sites:
            if site.strip or site.length < LEAST or site.bevel is not None:
                continue
            turn = one.matrix[:3, :3]
            along, out = turn @ np.append(site.along, 0.0), turn @ np.append(-site.inward, 0.0)
            frame = np.eye(4)
            frame[:3, :3] = np.column_stack((along, np.cross(out, along), out))
            frame[:3, 3] = (one.matrix @ np.append(site.middle, (0.0, 1.0)))[:3]
            if all(_highest(other, frame) < TOUCHES for other in walls) and not _downwards(one, -site.inward):
                yield frame


def _leaning(walls: Sequence[Stood]) -> Iterator[Matrix]:
    """Yield frames of planes that lean on two square edges, each along one of its rims, and that no wall reaches above."""
    rims = [rim for one in walls for rim in _rims(one)]
    for (one, at, along), (other, its, its_along) in combinations(rims, 2):
        if one is other or abs(float(along @ its_along)) < ALONG:
            continue
        across = (its - at) - float((its - at) @ along) * along
        if np.linalg.norm(across) < LEAST:
            continue
        across = across / np.linalg.norm(across)
        for x in (along, -along):
            frame = np.eye(4)
            frame[:3, :3] = np.column_stack((x, across, np.cross(x, across)))
            frame[:3, 3] = at
            if all(_highest(wall, frame) < TOUCHES for wall in walls):
                yield frame


def _rims(one: Stood) -> Iterator[tuple[Stood, Vector, Vector]]:
    """Yield both rims of a wall's square edges that do not look down: a point of each and its direction."""
    for site in one.board.sites:
        if not site.strip and site.length >= LEAST and site.bevel is None and not _downwards(one, -site.inward):
            along = one.matrix[:3, :3] @ np.append(site.along, 0.0)
            for z in (0.0, -one.board.thickness):
                yield one, (one.matrix @ np.append(site.middle, (z, 1.0)))[:3], along


def _downwards(one: Stood, out: Vector) -> bool:
    """Say whether an edge looks down, on a board whose top is known."""
    return one.board.up is not None and float(out @ one.board.up) < UPHILL


def _highest(one: Stood, frame: Matrix) -> float:
    """Return how high (mm) a board reaches above a plane; of a bevelled rim the lower face may be the lower one."""
    ring = shapely.get_coordinates(one.board.area.exterior)
    square = all(site.bevel is None for site in one.board.sites)
    levels = (0.0, -one.board.thickness) if square else (0.0,)
    points = np.vstack([np.column_stack((ring, np.full(len(ring), z), np.ones(len(ring)))) for z in levels]).T
    return float((np.linalg.inv(frame) @ one.matrix @ points)[2].max())


def _ways(board: Board, plane: Matrix, walls: Sequence[Stood]) -> Iterator[Matrix]:
    """Yield the places of a board on a plane, its inside face down, one of its sides along x: moved it is later."""
    uphill = _uphill(plane, walls)
    seen: list[float] = []
    for site in board.sites:
        turn = -float(np.arctan2(site.along[1], site.along[0]))
        if site.strip or any(abs(np.cos(turn - other) - 1.0) < 1e-4 for other in seen):
            continue
        seen.append(turn)
        c, s = np.cos(turn), np.sin(turn)
        flat = np.eye(4)
        flat[:2, :2], flat[2, 3] = ((c, -s), (s, c)), board.thickness
        if board.up is not None and uphill is not None and float((flat[:2, :2] @ board.up) @ uphill) < 0.5:
            continue
        yield plane @ flat


def _uphill(plane: Matrix, walls: Sequence[Stood]) -> Vector | None:
    """Return the way uphill in a plane's own x and y; None where it is level or no wall says where its top is."""
    ups = [one.matrix[:3, :3] @ np.append(one.board.up, 0.0) for one in walls if one.board.up is not None]
    if not ups:
        return None
    up = np.mean(ups, axis=0)
    own = (plane[:3, :3].T @ up)[:2]
    long = float(np.hypot(*own))
    return own / long if long > UPHILL else None


def _moved(
    board: Board, matrix: Matrix, plane: Matrix, walls: Sequence[tuple[Stood, float]], past: Mapping[str, float]
) -> tuple[Matrix, float]:
    """Return the place of a board moved in its plane until it reaches over each wall as far as may be, and by how much the worst differs
    (inf where what is said leaves it free)."""
    flat = np.linalg.inv(plane)
    ring = shapely.get_coordinates(board.area.exterior)
    rim = (flat @ matrix @ np.column_stack((ring, np.full(len(ring), -board.thickness), np.ones(len(ring)))).T)[:2].T
    rows, goals = [], []
    for one, far in walls:
        out = flat[:3, :3] @ one.matrix[:3, 2]
        long = float(np.hypot(out[0], out[1]))
        if long < LEANS:
            return matrix, np.inf
        way = out[:2] / long
        at = (flat @ one.matrix @ (*shapely.get_coordinates(one.board.area)[0], 0.0, 1.0))[:3]
        rows.append(way)
        goals.append(float(at @ out) / long + far - float((rim @ way).max()))
        if one.board.letter in past:
            ring = shapely.get_coordinates(one.board.area.exterior)
            wall = (flat @ one.matrix @ np.column_stack((ring, np.zeros(len(ring)), np.ones(len(ring)))).T)[:2].T
            for side in (1.0, -1.0):
                end = side * np.array((-way[1], way[0]))
                rows.append(end)
                goals.append(float((wall @ end).max()) + past[one.board.letter] - float((rim @ end).max()))
    a, b = np.array(rows), np.array(goals)
    if np.linalg.matrix_rank(a, tol=0.1) < 2:
        return matrix, np.inf
    shift, *_ = np.linalg.lstsq(a, b, rcond=None)
    move = np.eye(4)
    move[:3, 3] = plane[:3, :3] @ np.append(shift, 0.0)
    return move @ matrix, float(np.abs(a @ shift - b).max())
