"""The engine of rows: lattices of one part alone on a sheet, counted on the sheet and ranked by that count.

Regular rows are the easiest to trace, so at equal count they win over any other layout.
"""

from collections.abc import Iterator
from itertools import islice

import numpy as np
import numpy.typing as npt

from publisher.basics import record
from publisher.material.bottom_left import CopyKind, CopySpot
from publisher.material.container import Container
from publisher.material.lattice import Borders, Envelope, Floats, Rows, lattices
from publisher.material.nfp import no_fit
from publisher.material.outlines import NESTING_GRID, FloatPath, Outline, turned
from publisher.material.problem import MOST_ON_SHEETS


@record
class Counted:
    """The best place of the best lattice of one turn on one sheet."""

    count: int
    pitch: float = 0.0
    lines: tuple[
        tuple[float, float, float, int], ...
    ] = ()  # each row's first x, its y (mm), its turn (degrees), its copies

    def spots(self, most: int) -> Iterator[tuple[float, float, float]]:
        """Yield x, y in mm on the sheet and the turn in degrees of each copy, ``most`` at most."""
        every = ((x + step * self.pitch, y, turn) for x, y, turn, copies in self.lines for step in range(copies))
        return islice(every, most)


class RowBook:
    """The lattices of one outline, worked out once for all sheets."""

    def __init__(self, shape: Outline, paired: bool, fineness: int) -> None:
        """``paired``: copies turned by 180° may stand between. ``fineness``: places of Q, and shifts, to try."""
        self.shape, self.fineness = shape, fineness
        self.n = _mm(no_fit((shape, 0.0, False), (shape, 0.0, False)))
        self.m = _mm(no_fit((shape, 0.0, False), (shape, 180.0, False))) if paired else None
        self.pages: dict[tuple[float, bool], Rows] = {}
        self.over_n: dict[float, Envelope] = {}

    def lattices(self, turn: float, pairs: bool) -> Rows:
        """Return the lattices at one turn (degrees); for pairs a half turn makes no difference."""
        turn = round(turn % (180.0 if pairs else 360.0), 9)
        if (turn, pairs) not in self.pages:
            n = tuple(turned(ring, turn) for ring in self.n)
            m = tuple(turned(ring, turn) for ring in self.m) if pairs and self.m is not None else None
            height = turned(self.shape.bare, turn)[:, 1]
            level = float(height.min() + height.max())
            borders = Borders(n, m, self.over_n.get(turn))
            self.over_n[turn] = borders.over_n
            self.pages[turn, pairs] = lattices(borders, turn, level, self.fineness, self.fineness)
        return self.pages[turn, pairs]


def rows(
    kind: CopyKind, book: RowBook, free: Container, turns: tuple[float, ...], most: int = MOST_ON_SHEETS
) -> tuple[CopySpot, ...]:
    """Return the fullest sheet of regular rows of one kind, rows along either side of an upright rectangular container.

    ``turns``: turns of P on the sheet to try (degrees). ``most``: of more copies only the first rows are returned.
    """
    box = (free.left / NESTING_GRID, free.bottom / NESTING_GRID, free.right / NESTING_GRID, free.top / NESTING_GRID)
    best, way = Counted(0), 0.0
    for turn in turns:
        for along in (0.0, 90.0):
            for pairs in (False, True) if book.m is not None else (False,):
                here = _at_turn(book, turn + along, pairs, _swung(box, along), best.count)
                if here.count > best.count:
                    best, way = here, along
    places = (_back(spot, way) for spot in best.spots(most))
    return tuple(
        CopySpot(kind, turn % 360.0, round(x * NESTING_GRID), round(y * NESTING_GRID)) for x, y, turn in places
    )


def _mm(rings: tuple[npt.NDArray[np.int64], ...]) -> tuple[FloatPath, ...]:
    """Return rings in mm."""
    return tuple(ring / NESTING_GRID for ring in rings)


def _swung(box: tuple[float, float, float, float], along: float) -> tuple[float, float, float, float]:
    """Return the container turned by ``along`` (0 or 90 degrees) about the origin."""
    left, bottom, right, top = box
    return box if along == 0.0 else (-top, left, -bottom, right)


def _back(spot: tuple[float, float, float], along: float) -> tuple[float, float, float]:
    """Return a spot of the turned container on the sheet as it lies."""
    x, y, turn = spot
    return spot if along == 0.0 else (y, -x, turn - 90.0)


def _at_turn(book: RowBook, turn: float, pairs: bool, box: tuple[float, float, float, float], at_least: int) -> Counted:
    """Return the best lattice at one turn, if it gives more than ``at_least``."""
    found = book.lattices(turn, pairs)
    bare = turned(book.shape.bare, found.turn)
    low, high = bare.min(axis=0), bare.max(axis=0)
    spare = (box[0] - low[0], box[1] - low[1], box[2] - high[0], box[3] - high[1])
    spare_q = (box[0] + high[0], box[1] + high[1], box[2] + low[0], box[3] + low[1])
    if spare[2] < spare[0] or spare[3] < spare[1]:
        return Counted(0)
    best = Counted(at_least)
    # row 0 has its P, or its Q, at the container's bottom
    ups = np.array([np.full_like(found.dy, spare[1]), spare_q[1] - found.dy][: 1 + found.paired])
    # a lattice whose rows and columns could not give more is not counted
    most = _most(found, ups, spare, spare_q)
    for number in np.argsort(-most, axis=None, kind="stable").tolist():
        start, i = divmod(number, len(found.dy))
        if most[start, i] <= best.count:
            break
        best = _count(found, i, float(ups[start, i]), spare, spare_q, best)
    return best


def _most(found: Rows, ups: Floats, spare: tuple[float, ...], spare_q: tuple[float, ...]) -> Floats:
    """Return for each lattice, with row 0 at each of some heights, a number of copies that it cannot exceed."""

    def grid(room: tuple[float, ...], dy: Floats) -> Floats:
        across = np.floor((room[2] - room[0]) / found.pitch + 1e-7) + 1
        first = np.ceil((room[1] - ups - dy) / found.rise - 1e-9)
        return np.asarray(across * (np.floor((room[3] - ups - dy) / found.rise + 1e-9) - first + 1))

    return grid(spare, np.zeros_like(found.dy)) + (grid(spare_q, found.dy) if found.paired else 0.0)


def _count(
    found: Rows, i: int, up: float, spare: tuple[float, ...], spare_q: tuple[float, ...], best: Counted
) -> Counted:
    """Count one lattice with row 0 at height ``up``, over all shifts that bring a copy to the left edge; return the better of it and
    of ``best``."""
    pitch, rise, shift = float(found.pitch[i]), float(found.rise[i]), float(found.shift[i])
    lines = []  # of P, then of Q: x residues, heights, left and right ends
    for room, dx, dy in ((spare, 0.0, 0.0), (spare_q, float(found.dx[i]), float(found.dy[i])))[: 1 + found.paired]:
        first = int(np.ceil((room[1] - up - dy) / rise - 1e-9))
        last = int(np.floor((room[3] - up - dy) / rise + 1e-9))
        row = np.arange(first, last + 1)
        along = row % 2 if found.zigzag[i] else row
        lines.append((dx + shift * along, up + dy + row * rise, np.full(len(row), room[0]), np.full(len(row), room[2])))
    x, y, left, right = (np.concatenate(of) for of in zip(*lines, strict=True))
    if not len(x):
        return best
    shifts = np.unique(np.round((left - x) % pitch, 9))
    first_x = left + (x + shifts[:, None] - left + 1e-7) % pitch - 1e-7
    each = np.maximum(np.floor((right - first_x) / pitch + 1e-7) + 1, 0)
    total = each.sum(axis=1)
    k = int(total.argmax())
    if total[k] <= best.count:
        return best
    turns = np.where(np.arange(len(y)) < len(lines[0][0]), found.turn, found.turn + 180.0)
    laid = zip(first_x[k].tolist(), y.tolist(), turns.tolist(), each[k].astype(int).tolist(), strict=True)
    return Counted(int(total[k]), pitch, tuple(laid))
