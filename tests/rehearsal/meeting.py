"""Letters held against what stands: where a board has come to stand, each edge, strip and row of it meets one of the same letter.

Boards are stood by what most of their joins agree on, so that a single wrong letter moves none of them. Whoever copies letters to the foam
and looks for the other edge sees it.
"""

from collections import Counter
from collections.abc import Iterator, Sequence

import numpy as np
import numpy.typing as npt

from tests.rehearsal.acts import Act
from tests.rehearsal.parts import ReadPart
from tests.rehearsal.standing import Board, Row, Stood

Points = npt.NDArray[np.float64]

NEAR = 1.6  # thicknesses of the thicker board: edges that meet are nearer
SHARES = np.linspace(-0.9, 0.9, 7)  # of half an edge's length
DOTTED_LINE = "dotted line"
OURS = ">"  # in letters that words gave to edges without one


def unmet(assemblies: Sequence[Sequence[Stood]], boards: Sequence[Board]) -> Iterator[str]:
    """Yield, in words, the letters of standing boards that meet none; those that a board bears that stands nowhere are left out."""
    placed = {one.board.letter for own in assemblies for one in own}
    elsewhere = {letter for board in boards if board.letter not in placed for letter, _ in _lettered(board)}
    for own in assemblies:
        ends = [
            (n, letter, _carried(one, points)) for n, one in enumerate(own) for letter, points in _lettered(one.board)
        ]
        for n, letter, points in ends:
            if letter not in elsewhere and not any(
                n != m and letter == other and _meet(points, its, _far(own[n], own[m])) for m, other, its in ends
            ):
                yield f"part {own[n].board.letter}: no {letter} is where its {letter} comes to stand"


def strays(boards: Sequence[Board]) -> Iterator[str]:
    """Yield, in words, the letters that stand beside nothing which another board could meet."""
    yield from (
        f"part {board.letter}: its letter {letter} stands at no edge" for board in boards for letter in board.astray
    )


def unlike_pictures(acts: Sequence[Act], boards: Sequence[Board]) -> Iterator[str]:
    """Yield, in words, the letters of pictures that stand alone, or that no template of what is added bears: each stands at both edges that
    meet."""
    borne = {board.letter: {letter for letter, _ in _lettered(board)} | {*board.astray} for board in boards}
    for act in acts:
        added = [borne[one.letter] for one in act.added if one.letter in borne]
        for letter, count in Counter(act.letters).items() if added else ():
            if count % 2:
                yield f"page {act.page}, “{act.step}” {act.number}: the letter {letter} stands at one edge alone"
            if not any(letter in own for own in added):
                yield f"page {act.page}, “{act.step}” {act.number}: nothing that it adds bears the letter {letter}"


def unmarked(boards: Sequence[Board], parts: Sequence[ReadPart]) -> Iterator[str]:
    """Yield, in words, the bevelled edges beside which no dotted line runs where their bevels end, though the part's words say it does."""
    words = {part.letter: " ".join(part.words) for part in parts}
    for board in boards:
        for site in board.sites if DOTTED_LINE in words.get(board.letter, "") else ():
            if site.bevel is not None and site.bevel > 0.0 and not site.dotted:
                yield f"part {board.letter}: no dotted line is where its bevel of {site.bevel:g}° ends"


def _far(one: Stood, other: Stood) -> float:
    return NEAR * max(one.board.thickness, other.board.thickness)


def _lettered(board: Board) -> Iterator[tuple[str, Points]]:
    """Yield the letters of a board, each with points of the edge, strip or row that bears it."""
    for site in board.sites:
        along = site.middle + SHARES[:, None] * site.length / 2 * site.along
        for letter in site.letters:
            if OURS not in letter:
                yield letter, _both_faces(along, board.thickness)
    for row in (*board.tabs, *board.slots):
        if row.letter:
            yield row.letter, _both_faces(_of_row(row), board.thickness)


def _of_row(row: Row) -> Points:
    return np.array([middle * row.along + row.base * row.out for middle in row.middles])


def _both_faces(flat: Points, thickness: float) -> Points:
    return np.vstack([np.column_stack((flat, np.full(len(flat), z))) for z in (0.0, -thickness / 2, -thickness)])


def _carried(one: Stood, points: Points) -> Points:
    return points @ one.matrix[:3, :3].T + one.matrix[:3, 3]


def _meet(one: Points, other: Points, far: float) -> bool:
    """Say whether two edges run along each other for a while: most points of the shorter one are near the line of the other."""
    return min(_off(one, other), _off(other, one)) < far


def _off(points: Points, line: Points) -> float:
    """Return how far (mm) points are in the middle from the stretch on which others lie."""
    third = len(line) // 3
    gaps = []
    for start in range(0, len(line), third):
        a, b = line[start], line[start + third - 1]
        way = b - a
        long = float(way @ way)
        share = np.clip((points - a) @ way / long, 0.0, 1.0) if long else np.zeros(len(points))
        gaps.append(np.linalg.norm(points - a - share[:, None] * way, axis=1))
    return float(np.median(np.min(gaps, axis=0)))
