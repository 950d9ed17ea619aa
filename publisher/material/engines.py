"""All engines behind one function for a problem; the best verified layout wins, and at equal numbers regular rows do."""

from collections.abc import Sequence
from dataclasses import replace
from itertools import product

import numpy as np
import shapely

from publisher.basics import record
from publisher.material.bending import most_tilted
from publisher.material.bottom_left import Bin, CopyKind, CopySpot, FilledSheet, copies_on, fill
from publisher.material.container import Container, upright
from publisher.material.fitting import best_turn
from publisher.material.judge import LayoutFault
from publisher.material.model import Item, Piece
from publisher.material.outlines import NESTING_GRID, Outline, distinct_turns, outline
from publisher.material.packing import Packed, best_packing, items, numbered, usual_turns
from publisher.material.problem import Problem
from publisher.material.row_lists import main_piece, rows_first
from publisher.material.rows import RowBook, rows
from publisher.material.strip_rounds import Seeds, fewer_sheets, more_on_one_sheet


@record
class Effort:
    """How much is tried; all of it counted, none of it timed, so that every machine comes to the same layout."""

    step: float  # degrees between the turns of rows
    fineness: tuple[
        int, ...
    ]  # places and shifts of a row's second copy; a greater effort does all that a lesser one does
    orders: int  # orders of a list: the fixed ones, then changes of the best
    largest: int  # more copies than this on a sheet are only laid in rows
    bends: int = 0  # patterns of tilted lattices that are bent to fit, for each copy more
    seeds: Seeds = ()  # of the improver, each with the way that the strip runs
    most_asked: int = 0  # with more copies on a sheet the improver needs longer than that
    seconds: int = 0  # that the improver may take for one question: its only limit of time, and far from the usual


PATIENT_SEEDS = tuple((seed, upright) for seed in (2, 3, 4, 5) for upright in (True, False))
EFFORTS = {
    "quick": Effort(15.0, (16,), 2, 60),
    "careful": Effort(5.0, (16, 32), 40, 150, bends=6, seeds=((2, True), (3, False)), most_asked=40, seconds=8),
    "patient": Effort(2.5, (16, 32, 64), 200, 400, bends=24, seeds=PATIENT_SEEDS, most_asked=150, seconds=40),
}


FIXED_ORDERS = 5
COPIES_TRIED = 600  # copies laid in all orders of a list together


class Desk:
    """What is worked out once for a design: outlines as the engines see them, and their lattices."""

    def __init__(self, effort: Effort) -> None:
        """Start with nothing worked out."""
        self.effort = effort
        self._outlines: dict[tuple[Piece, float], Outline] = {}
        self._books: dict[tuple[Piece, float, bool], tuple[RowBook, ...]] = {}

    def outline(self, piece: Piece, gap: float) -> Outline:
        """Return a piece's outline for a gap."""
        key = (replace(piece, count=1, mirrored=0, angles=()), gap)
        if key not in self._outlines:
            self._outlines[key] = outline(piece.rings, gap)
        return self._outlines[key]

    def books(self, piece: Piece, gap: float, paired: bool) -> tuple[RowBook, ...]:
        """Return the lattices of a piece, coarse ones first."""
        key = (replace(piece, count=1, mirrored=0, angles=()), gap, paired)
        if key not in self._books:
            shape = self.outline(piece, gap)
            self._books[key] = tuple(RowBook(shape, paired, fineness) for fineness in self.effort.fineness)
        return self._books[key]


def solve(problem: Problem, desk: Desk) -> Packed:
    """Return the best layout of a problem. Raises LayoutFault when it does not hold."""
    packed = _alone(problem, desk) if problem.alone else _list(problem, desk)
    wrong = problem.flaws(packed.sheets)
    if wrong:
        raise LayoutFault(f"layout by {packed.engine} on {problem.sheet.label}: {wrong[0].message}")
    return packed


def _alone(problem: Problem, desk: Desk) -> Packed:
    """Lay as many copies as one sheet takes: rows, rows with the rest filled up, bottom-left."""
    piece, free = problem.pieces[0], upright(problem.free())
    best = Packed((), "rows", 0)
    if piece.count == 0:
        return best
    for framed in problem.framed():
        here = _fullest(replace(framed[0], count=piece.count), problem, free, desk)
        if sum(map(len, here.sheets)) > sum(map(len, best.sheets)):
            best = here
    return best


def _fullest(piece: Piece, problem: Problem, free: Container, desk: Desk) -> Packed:
    """Lay as many copies as one sheet takes, in one frame."""
    kind = _kind(piece, problem, desk)
    rowed = _rows(piece, kind, problem, free, desk)
    askew = _askew(piece, kind, problem, desk, len(rowed))
    spots = askew or rowed
    best = Packed(_sheets((piece,), _begun(spots, free)), "rows askew" if askew else "rows", 0)
    if len(spots) >= piece.count or piece.count > desk.effort.largest:
        return best
    best = _filled_up(best, spots, piece, kind, free)
    # rows and bottom-left lay rectangles exactly, and discs as close as can be; the improver misses exact fits
    if _boxy(piece) or _round(piece) or sum(map(len, best.sheets)) >= desk.effort.most_asked:
        return best
    return more_on_one_sheet(problem, kind, piece, best, desk.effort.seeds, desk.effort.seconds)


def _kind(piece: Piece, problem: Problem, desk: Desk) -> CopyKind:
    """Return the copies of a piece, with the turns that are tried: all that it may have, or the usual ones and the one at which
    it fits the sheet best."""
    shape = desk.outline(piece, problem.board.knife_gap)
    turns = distinct_turns(shape, piece.angles or usual_turns(piece.rings[0]))
    if not piece.angles:
        box = problem.free()
        turns = (*turns, best_turn(piece, box.width, box.height, (0.0,))[0])
    return CopyKind(0, shape, False, tuple(dict.fromkeys(turns)), piece.count)


def _begun(spots: Sequence[CopySpot], free: Container) -> list[Bin]:
    """Return a sheet on which copies lie already; none when none do."""
    return [Bin([FilledSheet(free, list(spots))])] if spots else []


def _filled_up(
    rows_alone: Packed, spots: tuple[CopySpot, ...], piece: Piece, kind: CopyKind, free: Container
) -> Packed:
    """Return the rows with what room is left filled bottom-left, or all laid so, if it is more; else the rows alone."""
    best = rows_alone
    starts = (spots, ()) if spots else (spots,)
    for seed, (start, across) in enumerate(product(starts, (False, True)), 1):
        full = fill(free, [kind] * (piece.count - len(start)), 1, across, _begun(start, free))
        if copies_on(full) > sum(map(len, best.sheets)):
            engine = f"{rows_alone.engine}, then bottom-left" if start else "bottom-left"
            best = Packed(_sheets((piece,), full), engine, seed)
    return best


def _askew(piece: Piece, kind: CopyKind, problem: Problem, desk: Desk, base: int) -> tuple[CopySpot, ...]:
    """Return a sheet of more than ``base`` copies in a lattice that lies askew, or ()."""
    half = 180.0
    turns = piece.angles
    paired = all((a + half) % 360.0 in {b % 360.0 for b in turns} for a in turns)
    if not desk.effort.bends or not paired or _boxy(piece) or piece.count > desk.effort.largest:
        return ()
    symmetric = len(distinct_turns(kind.outline, (0.0, half))) == 1
    book = desk.books(piece, problem.board.knife_gap, not symmetric)[0]
    box = problem.free()
    room = (box.left, box.bottom, box.right, box.top)
    found = most_tilted(book, room, turns, base, desk.effort.step, desk.effort.bends)
    return tuple(CopySpot(kind, turn % 360.0, round(x * NESTING_GRID), round(y * NESTING_GRID)) for x, y, turn in found)


def _rows(piece: Piece, kind: CopyKind, problem: Problem, free: Container, desk: Desk) -> tuple[CopySpot, ...]:
    """Return the fullest sheet of rows."""
    half = 180.0
    paired = not piece.angles or all((a + half) % 360.0 in {b % 360.0 for b in piece.angles} for a in piece.angles)
    turns = piece.angles
    if not turns:
        steps = np.arange(0.0, half, desk.effort.step)
        tilts = {0.0, *(t % half for t in usual_turns(piece.rings[0]))}
        if _boxy(piece):
            steps = steps[:0]
        turns = distinct_turns(kind.outline, tuple(sorted({*tilts, *(float(s) for s in steps)})))
    # a lattice along the sheet's other side is that of the part turned back by 90 degrees
    if paired:
        turns = tuple(dict.fromkeys(t % half for t in turns))
        symmetric = len(distinct_turns(kind.outline, (0.0, half))) == 1
        paired = not symmetric
    found = (rows(kind, book, free, turns) for book in desk.books(piece, problem.board.knife_gap, paired))
    return max(found, key=len)


def _boxy(piece: Piece) -> bool:
    """Say whether a piece is a rectangle, or nearly: tilted rows of it never pay."""
    whole = shapely.Polygon(piece.rings[0])
    return bool(whole.area > 0.995 * whole.minimum_rotated_rectangle.area)


def _round(piece: Piece) -> bool:
    """Say whether a piece is a disc, or nearly."""
    whole = shapely.Polygon(piece.rings[0])
    return bool(whole.area > 0.99 * np.pi * shapely.minimum_bounding_radius(whole) ** 2)


def _list(problem: Problem, desk: Desk) -> Packed:
    """Lay the whole list: all by bottom-left, or whole sheets of rows first where a part fills some."""
    free, gap = upright(problem.free()), problem.board.knife_gap
    best: Packed | None = None
    for pieces in problem.framed():
        here = _list_framed(pieces, problem, free, desk)
        if best is None or len(here.sheets) < len(best.sheets):
            best = here
        least = -(-sum(desk.outline(p, gap).area * p.count for p in pieces) // max(free.area, 1e-9))
        if len(best.sheets) <= least:
            break
    assert best is not None
    return fewer_sheets(problem, best, desk.effort.seeds, desk.effort.seconds)


def _list_framed(pieces: tuple[Piece, ...], problem: Problem, free: Container, desk: Desk) -> Packed:
    """Lay the whole list in one frame."""
    gap = problem.board.knife_gap
    sheets: list[Bin] = []
    rest: list[Piece] = []
    many = sum(p.count for p in pieces) > desk.effort.largest * 4
    for number, piece in enumerate(pieces):
        kind = CopyKind(number, desk.outline(piece, gap), False, piece.angles, piece.count)
        plain = piece.count - piece.mirrored
        spots = _rows(piece, kind, problem, free, desk) if many else ()
        while spots and plain >= len(spots):
            sheets.append(Bin([FilledSheet(free, list(spots))]))
            plain -= len(spots)
        if spots and plain > desk.effort.largest:
            lowest = sorted(spots, key=lambda s: (s.y, s.x))[:plain]
            sheets.append(Bin([FilledSheet(free, lowest)]))
            plain = 0
        rest.append(replace(piece, count=plain + piece.mirrored))
    # a long list takes long each time: fewer orders of it are tried
    tries = max(min(desk.effort.orders, FIXED_ORDERS), min(desk.effort.orders, COPIES_TRIED // max(1, _copies(rest))))
    packed = best_packing(tuple(rest), free, gap, None, tries)
    if not sheets:
        rowed = _rows_first(pieces, problem, free, desk)
        return rowed if rowed is not None and len(rowed.sheets) <= len(packed.sheets) else packed
    both = numbered(pieces, (*items(pieces, sheets), *packed.sheets))
    return Packed(both, "rows, then bottom-left", packed.seed)


def _rows_first(pieces: tuple[Piece, ...], problem: Problem, free: Container, desk: Desk) -> Packed | None:
    """Lay the list with rows of its main part first, if it has one."""
    gap = problem.board.knife_gap
    main = main_piece(pieces, [desk.outline(p, gap).area for p in pieces])
    if main is None:
        return None
    piece = pieces[main]
    kind = CopyKind(main, desk.outline(piece, gap), False, piece.angles, piece.count)
    return rows_first(pieces, main, _rows(piece, kind, problem, free, desk), free, gap)


def _copies(pieces: Sequence[Piece]) -> int:
    return sum(piece.count for piece in pieces)


def _sheets(pieces: tuple[Piece, ...], sheets: list[Bin]) -> tuple[tuple[Item, ...], ...]:
    """Return numbered items."""
    return numbered(pieces, items(pieces, sheets))
