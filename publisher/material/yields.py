"""The yield of one board on one sheet size: each part alone, the whole list, its free spares and its offcuts."""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from publisher.basics import Finding, LineKind
from publisher.design import SheetSize
from publisher.geometry import Part, path_length
from publisher.material.checks import BoardList
from publisher.material.engines import EFFORTS, Desk, solve
from publisher.material.fitting import grid_count, grid_sheets
from publisher.material.judge import polygons
from publisher.material.model import Layout, Spare, Yield, YieldRow
from publisher.material.offcuts import largest_offcut
from publisher.material.packing import Packed
from publisher.material.problem import Problem, alone, frames, net_area, piece_of
from publisher.material.spares import find_spares, spare_key
from publisher.material.store import Store, Stored, recall, recall_spare, stored_layouts, stored_spare


@dataclass(frozen=True, slots=True)
class Shop:
    """What all yields of a run share: the engines, the store, and who wants to know of each verified layout."""

    desk: Desk
    store: Store
    settled: Callable[[str, Stored], None] | None = None

    def tell(self, key: str, stored: Stored) -> None:
        """Tell the listener of a verified layout."""
        if self.settled is not None:
            self.settled(key, stored)


def yield_of(todo: BoardList, sheet: SheetSize, shop: Shop) -> tuple[Yield, tuple[Finding, ...]]:
    """Lay the parts of one board out on one sheet size: each alone, and all together."""
    board, (width, height) = todo.board, todo.room(sheet)
    turnable = frames(board.grain)
    findings: list[Finding] = []
    rows: list[YieldRow] = []
    fresh = 0
    fitting = tuple(p for p in todo.parts if not todo.excess(p, sheet))
    pieces = tuple(piece_of(p, board) for p in fitting)
    for part in todo.parts:
        piece = piece_of(part, board)
        grid = grid_count(piece, width, height, board.knife_gap, turnable)
        problem = alone(piece, board, sheet)
        layouts: tuple[Layout, ...] = ()
        if part in fitting:
            layouts, made, found = _settle(problem, shop)
            findings += found
            fresh += made
        layout = layouts[0] if layouts else Layout(problem.key(), board.id, sheet, (), "rows", 0)
        rows.append(YieldRow(part.id, len(layout.items), grid, layout))
    laid: tuple[Layout, ...] = ()
    spares: tuple[Spare, ...] = ()
    if pieces:
        whole = Problem(pieces, board, sheet, turnable, False)
        laid, made, found = _settle(whole, shop)
        findings += found
        fresh += made
        spares = tuple(s for p in fitting if (s := _spare(whole, laid, p.id, shop)) is not None)
    area = sum(net_area(p) * p.count for p in pieces)
    lengths = {p.id: path_length(p.outline) for p in fitting}
    free = Problem(pieces, board, sheet, turnable, False).free()
    one = Yield(
        board=board.id,
        sheet=sheet,
        rows=tuple(rows),
        sheets=laid,
        grid_sheets=grid_sheets(pieces, width, height, board.knife_gap, turnable),
        bound=int(np.ceil(area / (width * height) - 1e-9)),
        offcut_share=1.0 - area / (len(laid) * sheet.width * sheet.height) if laid else 0.0,
        cut_length=sum(lengths[p.id] * (p.count + p.spare) for p in fitting),
        score_length=sum(_score_length(p) * (p.count + p.spare) for p in fitting),
        left_out=tuple(p.id for p in todo.parts if p not in fitting),
        fresh=fresh,
        cut_lengths=tuple(sum(lengths[i.part] for i in layout.items) for layout in laid),
        spares=spares,
        offcuts=tuple(largest_offcut(polygons(pieces, s.items), free, board.knife_gap) for s in laid),
    )
    return one, tuple(findings)


def _settle(problem: Problem, shop: Shop) -> tuple[tuple[Layout, ...], int, tuple[Finding, ...]]:
    """Return the best layout known, whether it was made just now (0 or 1), and findings about a stored one."""
    kept, findings = recall(problem, shop.store)
    best, made = kept, 0
    if kept is None or shop.desk.effort is not EFFORTS["quick"]:
        tried = solve(problem, shop.desk)
        if kept is None or _better(problem, tried, kept):
            best, made = tried, 1
    assert best is not None
    key = problem.key()
    layouts = tuple(
        Layout(key, problem.board.id, problem.sheet, items, best.engine, best.seed) for items in best.sheets
    )
    if any(best.sheets):
        shop.tell(key, stored_layouts(layouts))
    return layouts, made, findings


def _better(problem: Problem, tried: Packed, kept: Packed) -> bool:
    """Say whether a layout betters the stored one: more copies alone, or fewer sheets for the list."""
    if problem.alone:
        return sum(map(len, tried.sheets)) > sum(map(len, kept.sheets))
    return len(tried.sheets) < len(kept.sheets)


def _spare(problem: Problem, laid: tuple[Layout, ...], part: str, shop: Shop) -> Spare | None:
    """Return the spare copies of a part that go on a list's sheets: the stored ones if they hold."""
    if not laid:
        return None
    key = spare_key(problem, laid, part)
    found = recall_spare(problem, laid, part, key, shop.store) or find_spares(problem, laid, part)
    if found is not None:
        shop.tell(key, stored_spare(found))
    return found


def _score_length(part: Part) -> float:
    """Return the length (mm) of a part's marks to score or fold."""
    return sum(mark.path.length for mark in part.marks if mark.kind in (LineKind.SCORE, LineKind.FOLD))
