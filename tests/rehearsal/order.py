"""The order of the acts held against what stands in the end: nothing is added to what is not there yet.

Each act adds so many copies of parts. Of what stands in the end such copies are taken as touch what is there; where none does, the act
comes too early, or what it goes to is never added. A picture that draws something thin under its only piece shows what must stand before.
"""

from collections import Counter
from collections.abc import Iterator, Sequence
from itertools import combinations

import numpy as np
import numpy.typing as npt
import shapely

from tests.rehearsal.acts import Act
from tests.rehearsal.standing import Stood

TOUCH = 1.0  # mm: boards that are nearer touch
STEP = 3.0  # mm between the points of a rim that are looked at


def too_early(acts: Sequence[Act], assemblies: Sequence[Sequence[Stood]]) -> Iterator[str]:
    """Yield, in words, the acts that add something to what does not stand yet."""
    for own in assemblies:
        if len(own) > 1:
            yield from _of_assembly(acts, own)


def _of_assembly(acts: Sequence[Act], own: Sequence[Stood]) -> Iterator[str]:
    letters = {one.board.letter for one in own}
    touching = touching_pairs(own)
    stands: set[int] = set()
    for act in acts:
        wanted = Counter({letter: count for letter, count in act.counts.items() if letter in letters})
        if not wanted:
            continue
        if act.needs_standing and not stands:
            yield f"page {act.page}, “{act.step}” {act.number}: what it is added to does not stand yet"
        if not _added(wanted, own, touching, stands):
            yield f"page {act.page}, “{act.step}” {act.number}: nothing that it touches stands yet"


def _added(wanted: Counter[str], own: Sequence[Stood], touching: set[tuple[int, int]], there: set[int]) -> bool:
    """Add so many copies to what is there, those first that touch it; say whether all do. What is tried first is there already when it is
    glued."""
    rest, good = Counter(wanted), True
    while +rest:
        free = [n for n, one in enumerate(own) if n not in there and rest[one.board.letter] > 0]
        if not free:
            break
        number = next((n for n in free if any((min(n, m), max(n, m)) in touching for m in there)), None)
        good = good and (number is not None or not there)
        number = free[0] if number is None else number
        there.add(number)
        rest[own[number].board.letter] -= 1
    return good


def touching_pairs(own: Sequence[Stood]) -> set[tuple[int, int]]:
    """Return the pairs, by their numbers, of boards that touch."""
    return {
        (n, m)
        for (n, one), (m, other) in combinations(enumerate(own), 2)
        if _reaches(one, other) or _reaches(other, one)
    }


def _reaches(one: Stood, other: Stood) -> bool:
    """Say whether a point of a board's rim is in another board or beside it."""
    rim = shapely.get_coordinates(shapely.segmentize(one.board.area.boundary, STEP))
    levels = (0.0, -one.board.thickness / 2, -one.board.thickness)
    points = np.vstack([np.column_stack((rim, np.full(len(rim), z), np.ones(len(rim)))) for z in levels])
    x, y, z = _from(other.matrix, one.matrix, points)
    level = (z < TOUCH) & (z > -other.board.thickness - TOUCH)
    return bool(shapely.contains_xy(other.board.area.buffer(TOUCH), x[level], y[level]).any())


def _from(
    frame: npt.NDArray[np.float64], matrix: npt.NDArray[np.float64], points: npt.NDArray[np.float64]
) -> npt.NDArray[np.float64]:
    return np.asarray((np.linalg.inv(frame) @ matrix @ points.T)[:3])
