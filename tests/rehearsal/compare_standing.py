"""What was stood held against where ``joints`` has it: the solids, wherever the piece as a whole lies."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt
import shapely

from tests.rehearsal.laid_on import Laid, ways
from tests.rehearsal.standing import Stood
from tests.rehearsal.truth import TruePanel

ALIKE = 0.15  # mm: ways to lay an outline on itself
FAR = 1.0  # mm: a solid as far off is not found
STEP = 2.0  # mm between the points of a solid's edges that are compared


@dataclass(frozen=True, slots=True)
class StoodWell:
    """Of the assembly that fits best: how many of its panels were stood, of how many, how many boards stand where none belongs, and mean
    and worst distance (mm) of the solids that were found."""

    found: int
    panels: int
    stray: int
    mean: float
    worst: float


def stood_well(stood: Sequence[Stood], assemblies: Sequence[Sequence[TruePanel]]) -> StoodWell | None:
    """Return how far what was stood is right; None where nothing was stood or no assembly has panels. A solid more than a millimetre off
    is not found."""
    best: StoodWell | None = None
    for panels in assemblies:
        for carry in _carries(stood, panels):
            found = _held(stood, panels, _centred(stood, panels, carry))
            if best is None or (found.found, -found.worst) > (best.found, -best.worst):
                best = found
    return best


def _carries(stood: Sequence[Stood], panels: Sequence[TruePanel]) -> Iterator[npt.NDArray[np.float64]]:
    """Yield the motions that lay the stood board that says most of how it lies on each panel of its part, each way that its outline
    allows: a disc says nothing."""
    letters = {panel.part.letter for panel in panels}
    firsts = {one.board.letter: one for one in reversed(stood) if one.board.letter in letters}
    if not firsts:
        return
    outlines = {panel.part.letter: panel.part.outline for panel in panels}
    allowed = {letter: _ways(one, outlines[letter]) for letter, one in firsts.items()}
    letter = min(allowed, key=lambda known: (len(allowed[known]), known))
    for panel in (p for p in panels if p.part.letter == letter):
        for one in allowed[letter]:
            flat = np.eye(4)
            flat[:2, :2], flat[:2, 3] = one.matrix[:, :2], one.matrix[:, 2]
            yield panel.matrix @ flat @ np.linalg.inv(firsts[letter].matrix)


def _ways(one: Stood, outline: shapely.Polygon) -> list[Laid]:
    laid = ways(one.board.area, outline)
    return [way for way in laid if way.worst < min(other.worst for other in laid) + ALIKE]


def _centred(
    stood: Sequence[Stood], panels: Sequence[TruePanel], carry: npt.NDArray[np.float64]
) -> npt.NDArray[np.float64]:
    """Return a motion moved so that the middles of all boards lie over those of their panels as well as may be: no board is the measure of
    the others."""
    moves = []
    for one in stood:
        middle = (carry @ one.matrix @ _middle(one.board.area))[:3]
        away = [
            (panel.matrix @ _middle(panel.part.outline))[:3] - middle
            for panel in panels
            if panel.part.letter == one.board.letter
        ]
        nearest = min(away, key=lambda off: float(np.abs(off).max()), default=np.full(3, np.inf))
        if np.abs(nearest).max() < FAR:
            moves.append(nearest)
    shift = np.eye(4)
    shift[:3, 3] = np.mean(moves, axis=0) if moves else 0.0
    return shift @ carry


def _held(stood: Sequence[Stood], panels: Sequence[TruePanel], carry: npt.NDArray[np.float64]) -> StoodWell:
    rest = list(panels)
    gaps: list[tuple[float, float]] = []
    for one in stood:
        off = [(_apart(one, panel, carry), n) for n, panel in enumerate(rest) if panel.part.letter == one.board.letter]
        if off and min(off)[0][1] < FAR:
            gap, number = min(off)
            gaps.append(gap)
            rest.pop(number)
    mean = float(np.mean([gap[0] for gap in gaps])) if gaps else np.inf
    worst = max((gap[1] for gap in gaps), default=np.inf)
    return StoodWell(len(gaps), len(panels), len(stood) - len(gaps), mean, worst)


def _apart(one: Stood, panel: TruePanel, carry: npt.NDArray[np.float64]) -> tuple[float, float]:
    """Return the mean and greatest distance of the edges of two boards, both ways; where either face may look out, of the better way."""
    moved = carry @ one.matrix
    if not one.either:
        return _off_both(one, panel, moved)
    return min((_off_both(one, panel, moved @ way) for way in (np.eye(4), *_overs(one))), key=lambda gap: gap[1])


def _overs(one: Stood) -> Iterator[npt.NDArray[np.float64]]:
    """Yield the motions by which a board that is alike on both faces comes to lie upon itself turned over."""
    over = shapely.transform(one.board.area, lambda points: points * (-1.0, 1.0))
    for way in ways(over, one.board.area):
        if way.worst < ALIKE:
            matrix = np.eye(4)
            matrix[:2, :2], matrix[:2, 3] = way.matrix[:, :2] @ np.diag((-1.0, 1.0)), way.matrix[:, 2]
            matrix[2, 2], matrix[2, 3] = -1.0, -one.board.thickness
            yield matrix


def _off_both(one: Stood, panel: TruePanel, moved: npt.NDArray[np.float64]) -> tuple[float, float]:
    if np.abs(moved @ _middle(one.board.area) - panel.matrix @ _middle(panel.part.outline)).max() > FAR:
        return np.inf, np.inf
    there = _off(
        np.linalg.inv(panel.matrix) @ moved,
        one.board.area,
        one.board.thickness,
        panel.part.outline,
        panel.part.thickness,
    )
    if there.max() > FAR:
        return float(there.mean()), float(there.max())
    back = _off(
        np.linalg.inv(moved) @ panel.matrix,
        panel.part.outline,
        panel.part.thickness,
        one.board.area,
        one.board.thickness,
    )
    both = np.concatenate((there, back))
    return float(both.mean()), float(both.max())


def _middle(area: shapely.Polygon) -> npt.NDArray[np.float64]:
    return np.array((area.centroid.x, area.centroid.y, 0.0, 1.0))


def _off(
    matrix: npt.NDArray[np.float64], own: shapely.Polygon, thickness: float, other: shapely.Polygon, its: float
) -> npt.NDArray[np.float64]:
    """Return how far points of a board's edges, carried into another's coordinates, are from that board's edges."""
    flat = shapely.get_coordinates(shapely.segmentize(own, STEP))
    off = []
    for z, level in ((0.0, 0.0), (-thickness, -its)):
        points = matrix @ np.column_stack((flat, np.full(len(flat), z), np.ones(len(flat)))).T
        gaps = shapely.distance(shapely.points(points[0], points[1]), other.boundary)
        off.append(np.hypot(gaps, points[2] - level))
    return np.concatenate(off)
