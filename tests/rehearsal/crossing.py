"""Boards on edge that cross, each slotted by half: stood by their slots alone, for where all joints are alike they bear no letter.

A slot goes into one of the other kind from the other side, floor on floor, both tops the same way. Which of them belong together is
tried: no board may go through another one where neither is slotted, and in the end no slot may be left open.
"""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt
import shapely
from shapely.geometry.polygon import orient

from tests.rehearsal.joins import shared_board
from tests.rehearsal.parts import ReadPart, clearest
from tests.rehearsal.standing import SLOT_WIDER, Board, Stood

Matrix = npt.NDArray[np.float64]  # 4 × 4
Vector = npt.NDArray[np.float64]

DEEP = 1.5  # times a board's thickness: a gap between two tabs is as deep as one
SQUARE = 0.02  # cosine of a corner of a slot
BESIDE = 25.0  # mm from a slot to its letter
ON_FLOOR = 0.5  # mm: floors that are nearer meet
IN_BOARD = 0.004  # share of a board in another one that crosses it: less is play
TRIES = 4000


@dataclass(frozen=True, slots=True, eq=False)
class Lap:
    """A slot that is open at an edge: the middle of its floor, the way into the board (unit), its letters."""

    floor: Vector
    inward: Vector
    letters: frozenset[str] = frozenset()


Slotted = dict[str, tuple[Lap, ...]]  # by letter of the part


def crossed(boards: Sequence[Board], parts: Sequence[ReadPart]) -> tuple[tuple[Stood, ...], ...]:
    """Return the gratings that boards with slots alone make; nothing where one of them would be left over."""
    part_of = clearest(parts)
    thick = sorted({board.thickness for board in boards})
    laps = {board.letter: laps_of(board, part_of[board.letter], thick) for board in boards if not _joined_else(board)}
    slotted = {letter: own for letter, own in laps.items() if own}
    rest = [board for board in boards if board.letter in slotted and board.count]
    if len(rest) < 2 and not any(board.count > 1 for board in rest):
        return ()
    root = max(rest, key=lambda board: len(slotted[board.letter]))
    stood = _Search(rest, slotted).from_(root)
    return (tuple(stood),) if stood else ()


def _joined_else(board: Board) -> bool:
    return bool(board.tabs or board.slots) or any(site.strip or site.bevel is not None for site in board.sites)


def laps_of(board: Board, part: ReadPart, thick: Sequence[float]) -> tuple[Lap, ...]:
    """Return the slots in a board's edges that are as wide as another board, each with the letters beside it."""
    ring = shapely.get_coordinates(orient(shapely.Polygon(board.area.exterior).simplify(0.05), 1.0).exterior)[:-1]
    found: list[tuple[Lap, shapely.LineString]] = []
    for n in range(len(ring)):
        a, b, c, d = (ring[(n + k) % len(ring)] for k in range(4))
        down, across, up = b - a, c - b, d - c
        wide, deep = float(np.hypot(*across)), min(float(np.hypot(*down)), float(np.hypot(*up)))
        if not any(SLOT_WIDER[0] < wide - other < SLOT_WIDER[1] for other in thick) or deep < DEEP * max(thick):
            continue
        inward = down / np.hypot(*down)
        into = (
            float(across[0] * down[1] - across[1] * down[0]) > 0.0
        )  # the board lies on the left: it goes round a slot
        if into and abs(float(across @ inward)) < SQUARE * wide and float(up @ inward) < -0.9 * np.hypot(*up):
            found.append((Lap((b + c) / 2, inward), shapely.LineString((a, b, c, d))))
    letters: dict[int, set[str]] = {}
    for note in part.notes if found else ():
        gaps = [line.distance(shapely.Point(note.x, note.y)) for _, line in found]
        if note.kind == "match" and min(gaps) < BESIDE:
            letters.setdefault(int(np.argmin(gaps)), set()).add(note.text)
    return tuple(Lap(lap.floor, lap.inward, frozenset(letters.get(n, ()))) for n, (lap, _) in enumerate(found))


class _Search:
    """All ways to stand crossing boards, one after another."""

    def __init__(self, boards: Sequence[Board], laps: Slotted) -> None:
        self.boards, self.laps, self.tries = boards, laps, 0

    def from_(self, root: Board) -> list[Stood] | None:
        """Return how all boards stand from one on; None where they do not."""
        return self._more([Stood(root, np.eye(4), True)])

    def _more(self, stood: list[Stood]) -> list[Stood] | None:
        self.tries += 1
        free = next(self._free(stood), None)
        placed = Counter(one.board.letter for one in stood)
        if free is None:
            return stood if all(placed[board.letter] == board.count for board in self.boards) else None
        one, lap = free
        for board in self.boards if self.tries < TRIES else ():
            if placed[board.letter] >= board.count:
                continue
            for other in self.laps[board.letter]:
                for matrix in _crossings(one.board, lap, board, other):
                    more = Stood(board, one.matrix @ matrix, True)
                    if not self._hits(more, stood) and (found := self._more([*stood, more])) is not None:
                        return found
        return None

    def _free(self, stood: Sequence[Stood]) -> Iterator[tuple[Stood, Lap]]:
        """Yield the slots that no other board's slot meets."""
        floors = [[_floor(one, lap) for lap in self.laps[one.board.letter]] for one in stood]
        for n, one in enumerate(stood):
            others = [floor for m, own in enumerate(floors) if m != n for floor in own]
            for lap, floor in zip(self.laps[one.board.letter], floors[n], strict=True):
                if not any(np.abs(floor - other).max() < ON_FLOOR for other in others):
                    yield one, lap

    def _hits(self, more: Stood, stood: Sequence[Stood]) -> bool:
        """Say whether a board goes through one that stands, or stands in its place."""
        own = (more.matrix, more.board.area, more.board.thickness)
        solids = [(one.matrix, one.board.area, one.board.thickness) for one in stood]
        return any(max(shared_board(own, one, 2.0), shared_board(one, own, 2.0)) > IN_BOARD for one in solids)


def _floor(one: Stood, lap: Lap) -> Vector:
    return np.asarray((one.matrix @ np.array((*lap.floor, -one.board.thickness / 2, 1.0)))[:3])


def _crossings(one: Board, lap: Lap, board: Board, other: Lap) -> Iterator[Matrix]:
    """Yield the two places of a board in a slot of one that stands, its outside to either side; none where tops or letters forbid it."""
    if (lap.letters or other.letters) and not lap.letters & other.letters:
        return
    if (
        one.up is not None
        and board.up is not None
        and float(one.up @ lap.inward) * float(board.up @ other.inward) > 0.0
    ):
        return
    down = np.append(lap.inward, 0.0)
    aside = np.cross(down, (0.0, 0.0, 1.0))
    own = np.column_stack(
        (np.append(other.inward, 0.0), np.cross((0.0, 0.0, 1.0), np.append(other.inward, 0.0)), (0, 0, 1.0))
    )
    for face in (aside, -aside):
        turn = np.column_stack((-down, np.cross(face, -down), face)) @ own.T
        matrix = np.eye(4)
        matrix[:3, :3] = turn
        matrix[:3, 3] = np.append(lap.floor, -one.thickness / 2) - turn @ np.append(other.floor, -board.thickness / 2)
        yield matrix
