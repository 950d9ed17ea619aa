"""All engines behind one function for a problem; the best verified layout wins, and at equal numbers regular rows do."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import product

import numpy as np
import shapely

from publisher.basics import Pose, record
from publisher.material.bending import most_tilted
from publisher.material.bottom_left import Bin, CopyKind, CopySpot, FilledSheet, copies_on, fill
from publisher.material.box_lists import box_lists
from publisher.material.boxes import box_form, laid_as_boxes
from publisher.material.container import Container, upright
from publisher.material.ease import easiest_first
from publisher.material.fitting import EXACT, best_turn, grid_count
from publisher.material.model import Item, Piece
from publisher.material.outlines import NESTING_GRID, Outline, distinct_turns, outline, turned
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


def solve_like(problem: Problem, known: Packed, desk: Desk) -> Packed:
    """Return the layout of a problem that the engine of a known layout finds, where only some sizes differ a little: a part alone at
    the turns of the known one; a list by the same engine, and by all of them where that does not hold."""
    if not problem.alone:
        return solve(problem, desk, known.engine)
    piece = problem.pieces[0]
    turns = {item.pose.turn for sheet in known.sheets for item in sheet}
    if turns and not piece.angles and not box_form(piece).rectangle:
        both = tuple(sorted({round((t + half) % 360.0, 6) for t in turns for half in (0.0, 180.0)}))
        problem = replace(problem, pieces=(replace(piece, angles=both),), frames=(0.0,))
    return solve(problem, desk, known.engine)


def solve(problem: Problem, desk: Desk, engine: str = "") -> Packed:
    """Return the best layout of a problem that the judge finds to hold: most copies alone, fewest sheets for a list, and of equal
    ones the easiest to cut.

    An engine whose layout does not hold is passed over for the next. When none does, each copy gets a sheet of its own; what fits no
    sheet at all is laid on none. ``engine``: the only one that is tried, where it is one of those that can be tried alone.
    """
    laid = _alone(problem, desk, engine) if problem.alone else _list(problem, desk, engine)
    found = [packed for packed in laid if any(packed.sheets)]
    while found:
        most = min(map(_few, found))
        best = [packed for packed in found if _few(packed) == most]
        for packed in easiest_first(problem, best):
            if not problem.flaws(packed.sheets):
                return packed
        found = [packed for packed in found if _few(packed) != most]
    last = one_by_one(problem)
    return Packed((), "rows", 0) if problem.flaws(last.sheets) else last


def _few(packed: Packed) -> tuple[int, int]:
    """Return what is less for a layout of more copies, then for one on fewer sheets."""
    return (-sum(map(len, packed.sheets)), len(packed.sheets))


def one_by_one(problem: Problem) -> Packed:
    """Lay each copy in the middle of a sheet of its own, at the turn at which it fits best; alone only one."""
    free, sheets = problem.free(), list[tuple[Item, ...]]()
    for in_frames in zip(*problem.framed(), strict=True):
        fits = [(best_turn(piece, free.width, free.height, (0.0,)), piece) for piece in in_frames]
        (turn, _), piece = min(fits, key=lambda one: one[0][1])
        for copy in range(1 if problem.alone else piece.count):
            mirrored = copy >= piece.count - piece.mirrored
            at = -turn if mirrored and not piece.angles else turn
            ring = turned(np.asarray(piece.rings[0], dtype=np.float64), at, mirrored)
            middle = np.array((free.left + free.right, free.bottom + free.top)) / 2
            x, y = (middle - (ring.min(axis=0) + ring.max(axis=0)) / 2).round(4).tolist()
            sheets.append((Item(piece.id, 0, Pose(x, y, round(at, 6) % 360.0, mirrored)),))
    return Packed(numbered(problem.pieces, sheets), "one by one", 0)


def _alone(problem: Problem, desk: Desk, engine: str = "") -> list[Packed]:
    """Lay as many copies as one sheet takes: blocks, rows, rows with the rest filled up, bottom-left."""
    piece, free = problem.pieces[0], upright(problem.free())
    if piece.count == 0:
        return []
    framed = (replace(pieces[0], count=piece.count) for pieces in problem.framed())
    return [packed for one in framed for packed in _of_one(one, problem, free, desk, engine)]


def _of_one(piece: Piece, problem: Problem, free: Container, desk: Desk, engine: str) -> list[Packed]:
    """Lay as many copies as one sheet takes, in one frame."""
    boxed = laid_as_boxes(piece, problem)
    blocks = [Packed(numbered((piece,), (boxed,)), "blocks", 0)] if boxed else []
    if boxed and box_form(piece).rectangle:
        return blocks
    kind = _kind(piece, problem, desk)
    rowed = _rows(piece, kind, problem, free, desk)
    askew = _askew(piece, kind, problem, desk, len(rowed))
    spots = (askew or rowed)[: piece.count]
    best = Packed(_sheets((piece,), _begun(spots, free)), "rows askew" if askew else "rows", 0)
    if spots and (engine == "rows" or len(spots) >= piece.count or piece.count > desk.effort.largest):
        return [*blocks, best]
    best = _filled_up(best, spots, piece, kind, free)
    # the improver misses the closest layouts of rectangles and discs
    if not (_boxy(piece) or _round(piece) or sum(map(len, best.sheets)) >= desk.effort.most_asked):
        best = more_on_one_sheet(problem, kind, piece, best, desk.effort.seeds, desk.effort.seconds)
    return [*blocks, best]


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
    added = 0
    for seed, (start, across) in enumerate(product(starts, (False, True)), 1):
        if start and across and not added:
            continue  # no room was found from below, so there is none from the left
        full = fill(free, [kind] * (piece.count - len(start)), 1, across, _begun(start, free), empty={})
        added = copies_on(full) - len(start)
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
    room = box.sides
    found = most_tilted(book, room, turns, base, desk.effort.step, desk.effort.bends)
    return tuple(CopySpot(kind, turn % 360.0, round(x * NESTING_GRID), round(y * NESTING_GRID)) for x, y, turn in found)


def _rows(
    piece: Piece, kind: CopyKind, problem: Problem, free: Container, desk: Desk, more: int = 0
) -> tuple[CopySpot, ...]:
    """Return the fullest sheet of rows: no more copies of it than ``piece.count`` and ``more``."""
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
    most = piece.count + more
    found = (rows(kind, book, free, turns, most) for book in desk.books(piece, problem.board.knife_gap, paired))
    return max(found, key=len)


def _boxy(piece: Piece) -> bool:
    """Say whether a piece is a rectangle, or nearly: tilted rows of it never pay."""
    whole = shapely.Polygon(piece.rings[0])
    return bool(whole.area > 0.995 * whole.minimum_rotated_rectangle.area)


def _round(piece: Piece) -> bool:
    """Say whether a piece is a disc, or nearly."""
    whole = shapely.Polygon(piece.rings[0])
    return bool(whole.area > 0.99 * np.pi * shapely.minimum_bounding_radius(whole) ** 2)


def _list(problem: Problem, desk: Desk, engine: str = "") -> list[Packed]:
    """Lay the whole list: all by bottom-left or in rectangles, or whole sheets of one part first where a part fills some."""
    gap, area = problem.board.knife_gap, problem.free().width * problem.free().height
    found: list[Packed] = []
    least = -(-sum(desk.outline(p, gap).area * p.count for p in problem.pieces) // max(area, 1e-9))
    for frame in range(len(problem.framed())):
        found += _in_frame(frame, problem, desk, engine)
        if min(len(packed.sheets) for packed in found) <= least:
            break
    if desk.effort.seeds:
        best = min(found, key=lambda packed: len(packed.sheets))
        better = fewer_sheets(problem, best, desk.effort.seeds, desk.effort.seconds)
        found += [better] if better is not best else []
    return found


def _in_frame(frame: int, problem: Problem, desk: Desk, engine: str = "") -> list[Packed]:
    """Lay the whole list in one frame; what fits the sheet in another frame only gets sheets of its own, turned."""
    free, pieces = upright(problem.free()), problem.framed()[frame]
    here = tuple(number for number, piece in enumerate(pieces) if _fits(piece, problem))
    found = _list_framed(tuple(pieces[number] for number in here), problem, free, desk, engine) if here else []
    if len(here) == len(pieces):
        return found
    beside: list[Packed] = []
    for turned_pieces in problem.framed():
        left = tuple(p for number, p in enumerate(turned_pieces) if number not in here and _fits(p, problem))
        beside += _list_framed(left, problem, free, desk) if left else []
    last = min(beside, key=lambda packed: (-sum(map(len, packed.sheets)), len(packed.sheets)))
    return [replace(packed, sheets=(*packed.sheets, *last.sheets)) for packed in found] or [last]


def _fits(piece: Piece, problem: Problem) -> bool:
    """Say whether a piece fits the sheet in its frame."""
    free = problem.free()
    return best_turn(piece, free.width, free.height, (0.0,))[1] <= EXACT


def _list_framed(
    pieces: tuple[Piece, ...], problem: Problem, free: Container, desk: Desk, engine: str = ""
) -> list[Packed]:
    """Lay the whole list in one frame."""
    if engine == "bottom-left":
        return [_by_bottom_left(pieces, problem, free, desk)]
    if engine == "rows, then bottom-left" and (first := _rows_first(pieces, problem, free, desk)):
        return [first]
    found = [*_whole_sheets_first(pieces, problem, free, desk)]
    found += [] if found else box_lists(pieces, problem)
    if _copies(pieces) > desk.effort.largest * 4 and found:
        return found
    rowed = _rows_first(pieces, problem, free, desk)
    return [*found, *([rowed] if rowed else []), _by_bottom_left(pieces, problem, free, desk)]


def _by_bottom_left(pieces: tuple[Piece, ...], problem: Problem, free: Container, desk: Desk) -> Packed:
    """Lay pieces bottom-left; a long list takes long each time, so fewer orders of it are tried."""
    tries = max(min(desk.effort.orders, FIXED_ORDERS), min(desk.effort.orders, COPIES_TRIED // max(1, _copies(pieces))))
    box = problem.free()
    askew = tuple(
        (number, turn)
        for number, piece in enumerate(pieces)
        if not piece.angles
        for turn, _ in (best_turn(piece, box.width, box.height, (0.0,)),)
    )
    return best_packing(pieces, free, problem.board.knife_gap, None, tries, dict(askew))


def _whole_sheets_first(pieces: tuple[Piece, ...], problem: Problem, free: Container, desk: Desk) -> Iterator[Packed]:
    """Yield the list with whole sheets of each part that fills some, and what is left of it laid bottom-left and in rectangles;
    nothing when no part fills a sheet."""
    many = _copies(pieces) > desk.effort.largest * 4
    sheets: list[tuple[Item, ...]] = []
    rest: list[Piece] = []
    for number, piece in enumerate(pieces):
        plain = piece.count - piece.mirrored
        room = problem.free()
        fills = plain >= grid_count(piece, room.width, room.height, problem.board.knife_gap, (0.0,))
        wanted = fills and (many or box_form(piece).rectangle)
        full = _full_sheet(number, pieces, problem, free, desk) if wanted else ()
        while full and plain >= len(full):
            sheets.append(full)
            plain -= len(full)
        if full and plain > desk.effort.largest:
            lowest = sorted(full, key=lambda i: (i.pose.y, i.pose.x))[:plain]
            sheets.append(tuple(lowest))
            plain = 0
        rest.append(replace(piece, count=plain + piece.mirrored))
    if not sheets:
        return
    left = tuple(rest)
    if not _copies(left):
        yield Packed(numbered(pieces, sheets), "whole sheets", 0)
        return
    for packed in (*box_lists(left, problem), _by_bottom_left(left, problem, free, desk)):
        bare = (tuple(replace(item, copy=0) for item in sheet) for sheet in packed.sheets)
        yield Packed(numbered(pieces, (*sheets, *bare)), f"whole sheets, then {packed.engine}", packed.seed)


def _full_sheet(
    number: int, pieces: tuple[Piece, ...], problem: Problem, free: Container, desk: Desk
) -> tuple[Item, ...]:
    """Return a sheet full of plain copies of one piece, not numbered yet."""
    piece = pieces[number]
    boxed = laid_as_boxes(piece, problem, more=1)
    if boxed and box_form(piece).rectangle:
        return boxed
    kind = CopyKind(number, desk.outline(piece, problem.board.knife_gap), False, piece.angles, piece.count)
    spots = _rows(piece, kind, problem, free, desk, more=1)  # one more tells a full sheet from a list that ends
    (rowed,) = items(pieces, [Bin([FilledSheet(free, list(spots))])])
    return max(boxed, rowed, key=len)


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
