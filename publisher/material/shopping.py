"""Several designs on one shopping list: the parts of all that are cut from the same board, laid out together."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from publisher.basics import record
from publisher.design import Board, Design, SheetSize
from publisher.geometry import Part
from publisher.material.engines import EFFORTS, Desk, solve
from publisher.material.fitting import best_turn
from publisher.material.model import BoardNeeds, Item, Piece, Yield
from publisher.material.problem import MOST_ON_SHEETS, Problem, frames, piece_of


@record
class ListedDesign:
    """One design on the list: its name on it, what it is cut from, its parts, and what it needs by itself."""

    name: str
    design: Design
    parts: tuple[Part, ...]
    needs: BoardNeeds


@record
class Shared:
    """One board on one sheet size, for all designs together.

    ``members``: the designs that are cut from it, each with the sheets that it takes by itself. ``sheets``: those that all take
    together, each with its copies; a part's name there is the design's name, a blank and the part's.
    """

    board: str
    thickness: float
    sheet: SheetSize
    members: tuple[tuple[str, int], ...]
    sheets: tuple[tuple[Item, ...], ...]

    @property
    def saved(self) -> int:
        """How many sheets it saves to lay all out together."""
        return sum(count for _, count in self.members) - len(self.sheets)


def shop_together(listed: Sequence[ListedDesign], effort: str = "quick") -> tuple[Shared, ...]:
    """Lay out what several designs cut from the same board, on each sheet size that all of them can be cut from.

    Boards are the same when thickness, faces, grain and margin are; all pieces keep the widest knife gap that one of the designs asks
    for. Boards of one design only are left out: its own yield says all. Nothing takes more sheets together than one after another.
    Raises KeyError for an unknown effort.
    """
    desk = Desk(EFFORTS[effort])
    return tuple(_shared(board, sheet, members, desk) for board, sheet, members in _groups(listed))


def _same(board: Board) -> tuple[object, ...]:
    return (round(board.thickness, 6), board.faces, board.grain, board.edge_margin)


def _groups(listed: Sequence[ListedDesign]) -> Iterator[tuple[Board, SheetSize, tuple[ListedDesign, ...]]]:
    """Yield each board and sheet size from which two designs or more are cut, with these designs."""
    told: set[tuple[object, ...]] = set()
    for one in listed:
        for board in one.design.boards:
            for sheet in board.sheets:
                key = (*_same(board), sheet.width, sheet.height)
                members = tuple(other for other in listed if _sheets_alone(other, board, sheet) is not None)
                if key not in told and len(members) > 1:
                    gaps = (b.knife_gap for m in members for b in m.design.boards if _same(b) == _same(board))
                    yield replace(board, knife_gap=max(gaps)), sheet, members
                told.add(key)


def _boards(one: ListedDesign, board: Board) -> tuple[str, ...]:
    """Return the names under which a design has this board."""
    return tuple(own.id for own in one.design.boards if _same(own) == _same(board))


def _own(one: ListedDesign, board: Board, sheet: SheetSize) -> tuple[Yield, ...]:
    """Return what a design needs of a board in sheets of this size."""
    names, size = _boards(one, board), (sheet.width, sheet.height)
    return tuple(
        need for need in one.needs.yields if need.board in names and (need.sheet.width, need.sheet.height) == size
    )


def _sheets_alone(one: ListedDesign, board: Board, sheet: SheetSize) -> int | None:
    """Return how many sheets of this size a design takes of this board by itself; None when it is not cut from it, or when a part
    of it fits no such sheet."""
    own = _own(one, board, sheet)
    if not own or any(need.left_out for need in own):
        return None
    return sum(len(need.sheets) for need in own)


def _shared(board: Board, sheet: SheetSize, members: tuple[ListedDesign, ...], desk: Desk) -> Shared:
    """Lay out all parts of the members together, or one member after another where that takes no more sheets."""
    alone = tuple((one.name, _sheets_alone(one, board, sheet) or 0) for one in members)
    pieces = tuple(piece for one in members for piece in _pieces(one, board))
    after_another = tuple(laid for one in members for laid in _own_sheets(one, board, sheet))
    problem = Problem(pieces, board, sheet, frames(board.grain), False)
    together = after_another
    if sum(piece.count for piece in pieces) <= MOST_ON_SHEETS and _all_fit(problem):
        tried = solve(problem, desk).sheets
        together = tried if len(tried) < len(after_another) else after_another
    return Shared(board.id, board.thickness, sheet, alone, together)


def _pieces(one: ListedDesign, board: Board) -> Iterator[Piece]:
    """Yield the pieces that a design cuts from a board, under the design's name."""
    for part in one.parts:
        if part.board in _boards(one, board) and part.count + part.spare > 0:
            piece = piece_of(part, board)
            yield Piece(_named(one, part.id), piece.rings, piece.angles, piece.count, piece.mirrored)


def _own_sheets(one: ListedDesign, board: Board, sheet: SheetSize) -> Iterator[tuple[Item, ...]]:
    """Yield the sheets of a design's own layout, its parts under the design's name."""
    for need in _own(one, board, sheet):
        for layout in need.sheets:
            yield tuple(Item(_named(one, item.part), item.copy, item.pose) for item in layout.items)


def _named(one: ListedDesign, part: str) -> str:
    return f"{one.name} {part}"


def _all_fit(problem: Problem) -> bool:
    free = problem.free()
    return all(best_turn(piece, free.width, free.height, problem.frames)[1] <= 0.0 for piece in problem.pieces)
