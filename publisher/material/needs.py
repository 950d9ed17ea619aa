"""What to buy: the cut list, and for each board and sheet size the yield by real layouts."""

import numpy as np

from publisher.basics import Finding, LineKind, run_checks
from publisher.design import Design, SheetSize
from publisher.geometry import Part, path_length
from publisher.material.checks import CHECKS, MOST_COPIES, BoardList
from publisher.material.engines import EFFORTS, Desk, solve
from publisher.material.fitting import grid_count, grid_sheets
from publisher.material.model import BoardNeeds, CutRow, Layout, Yield, YieldRow
from publisher.material.packing import Packed
from publisher.material.problem import Problem, alone, frames, net_area, piece_of
from publisher.material.store import Store, read_store, recall


def lay_out(
    design: Design, parts: tuple[Part, ...], effort: str = "quick", sheets: tuple[SheetSize, ...] | None = None
) -> BoardNeeds:
    """Lay a design's parts out on the sheets of their boards.

    Layouts stored beside the spec are verified and used; what is missing is packed with ``effort`` (``quick``, ``careful``,
    ``patient``). An effort above quick tries to better what is stored and never lowers it. ``sheets``: sheet sizes to use
    instead of those on sale. Raises LayoutFault when a layout of ours does not hold, KeyError for an unknown effort.
    """
    desk, store = Desk(EFFORTS[effort]), read_store(design)
    findings: list[Finding] = list(store.findings)
    yields: list[Yield] = []
    for board in design.boards:
        used = tuple(p for p in parts if p.board == board.id and p.count + p.spare > 0)
        if not used:
            continue
        todo = BoardList(board, board.sheets if sheets is None else sheets, used)
        findings += run_checks(CHECKS, todo)
        if sum(p.count + p.spare for p in used) > MOST_COPIES:
            continue
        for sheet in todo.usable():
            one, found = _yield(todo, sheet, desk, store)
            yields.append(one)
            findings += found
    return BoardNeeds(tuple(_cut_row(p) for p in parts if p.count + p.spare > 0), tuple(yields), tuple(findings))


def _cut_row(part: Part) -> CutRow:
    """Return a part's line of the cut list."""
    width, height = (float(v) for v in np.ptp(np.asarray(part.outline.outer.points), axis=0))
    return CutRow(
        part.id,
        part.letter,
        part.name,
        part.board,
        part.count,
        part.spare,
        part.mirrored,
        width,
        height,
        path_length(part.outline) * (part.count + part.spare),
    )


def _yield(todo: BoardList, sheet: SheetSize, desk: Desk, store: Store) -> tuple[Yield, tuple[Finding, ...]]:
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
            layouts, made, found = _settle(problem, desk, store)
            findings += found
            fresh += made
        layout = layouts[0] if layouts else Layout(problem.key(), board.id, sheet, (), "rows", 0)
        rows.append(YieldRow(part.id, len(layout.items), grid, layout))
    laid: tuple[Layout, ...] = ()
    if pieces:
        laid, made, found = _settle(Problem(pieces, board, sheet, turnable, False), desk, store)
        findings += found
        fresh += made
    area = sum(net_area(p) * p.count for p in pieces)
    one = Yield(
        board=board.id,
        sheet=sheet,
        rows=tuple(rows),
        sheets=laid,
        grid_sheets=grid_sheets(pieces, width, height, board.knife_gap, turnable),
        bound=int(np.ceil(area / (width * height) - 1e-9)),
        offcut_share=1.0 - area / (len(laid) * sheet.width * sheet.height) if laid else 0.0,
        cut_length=sum(path_length(p.outline) * (p.count + p.spare) for p in fitting),
        score_length=sum(_score_length(p) * (p.count + p.spare) for p in fitting),
        left_out=tuple(p.id for p in todo.parts if p not in fitting),
        fresh=fresh,
    )
    return one, tuple(findings)


def _settle(problem: Problem, desk: Desk, store: Store) -> tuple[tuple[Layout, ...], int, tuple[Finding, ...]]:
    """Return the best layout known, whether it was made just now (0 or 1), and findings about a stored one."""
    kept, findings = recall(problem, store)
    best, made = kept, 0
    if kept is None or desk.effort is not EFFORTS["quick"]:
        tried = solve(problem, desk)
        if kept is None or _better(problem, tried, kept):
            best, made = tried, 1
    assert best is not None
    key = problem.key()
    layouts = tuple(
        Layout(key, problem.board.id, problem.sheet, items, best.engine, best.seed) for items in best.sheets
    )
    return layouts, made, findings


def _better(problem: Problem, tried: Packed, kept: Packed) -> bool:
    """Say whether a layout betters the stored one: more copies alone, or fewer sheets for the list."""
    if problem.alone:
        return sum(map(len, tried.sheets)) > sum(map(len, kept.sheets))
    return len(tried.sheets) < len(kept.sheets)


def _score_length(part: Part) -> float:
    """Return the length (mm) of a part's marks to score or fold."""
    total = 0.0
    for mark in part.marks:
        if mark.kind in (LineKind.SCORE, LineKind.FOLD):
            points = np.asarray((*mark.points, mark.points[0]) if mark.closed else mark.points)
            total += float(np.hypot(*np.diff(points, axis=0).T).sum())
    return total
