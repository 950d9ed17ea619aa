"""The yield of one board on one sheet size: each part alone, the whole list, its free spares and its offcuts."""

from collections.abc import Callable

from publisher.basics import Finding, record
from publisher.design import SheetSize
from publisher.geometry import Part, path_length
from publisher.material.boxes import most_at_right_angles
from publisher.material.buying import score_length
from publisher.material.checks import BoardList
from publisher.material.ease import ease
from publisher.material.engines import EFFORTS, Desk, solve
from publisher.material.fitting import grid_count, grid_sheets
from publisher.material.judge import polygons
from publisher.material.model import Layout, Spare, Yield, YieldRow
from publisher.material.offcuts import largest_offcut
from publisher.material.packing import Packed
from publisher.material.problem import MOST_ON_SHEETS, Problem, net_area
from publisher.material.spares import find_spares, spare_key
from publisher.material.store import Store, Stored, recall, recall_spare, stored_layouts, stored_spare


@record
class Shop:
    """What all yields of a run share: the engines, the store, and who wants to know of each verified layout."""

    desk: Desk
    store: Store
    settled: Callable[[str, Stored], None] | None = None
    made_with: str = ""  # what a layout that is made now is made with

    def tell(self, key: str, stored: Stored) -> None:
        """Tell the listener of a verified layout."""
        if self.settled is not None:
            self.settled(key, stored)


@record
class _Settled:
    """The best layout known of a problem: its sheets, how many layouts were made just now (0 or 1), findings about a stored one."""

    layouts: tuple[Layout, ...] = ()
    made: int = 0
    findings: tuple[Finding, ...] = ()


def yield_of(todo: BoardList, sheet: SheetSize, shop: Shop) -> tuple[Yield, tuple[Finding, ...]]:
    """Lay the parts of one board out on one sheet size: each alone, and all together."""
    fitting = todo.fitting(sheet)
    problems = {p.id: todo.alone(p, sheet) for p in todo.parts}
    singly = {p.id: _settle(problems[p.id], shop) for p in fitting}
    whole = todo.listed(fitting, sheet)
    listed = _settle(whole, shop) if fitting else _Settled()
    spares = tuple(s for p in fitting if (s := _spare(whole, listed.layouts, p.id, shop)) is not None)
    settled = (*singly.values(), listed)
    rows = tuple(_row(part, problem, singly.get(part, _Settled()).layouts) for part, problem in problems.items())
    made = sum(one.made for one in settled)
    one = _figures(todo, whole, fitting, rows, listed.layouts, spares, made)
    return one, tuple(finding for one in settled for finding in one.findings)


def _row(part: str, problem: Problem, layouts: tuple[Layout, ...]) -> YieldRow:
    """Return what one sheet gives of a part alone, beside a careless grid; nothing of one that does not fit."""
    board, free = problem.board, problem.free()
    grid = min(MOST_ON_SHEETS, grid_count(problem.pieces[0], free.width, free.height, board.knife_gap, problem.frames))
    layout = layouts[0] if layouts else Layout(problem.key(), board.id, problem.sheet, (), "rows", 0)
    square = most_at_right_angles(problem)
    most = problem.pieces[0].count if square is None else square
    one = ease(problem.pieces, (layout.items,))
    return YieldRow(part, len(layout.items), grid, layout, most, square is not None, one)


def _figures(
    todo: BoardList,
    whole: Problem,
    fitting: tuple[Part, ...],
    rows: tuple[YieldRow, ...],
    laid: tuple[Layout, ...],
    spares: tuple[Spare, ...],
    made: int,
) -> Yield:
    """Return what was laid out with its figures: area, lengths to cut and score, offcuts."""
    board, sheet = whole.board, whole.sheet
    width, height = todo.room(sheet)
    area = sum(net_area(piece) * piece.count for piece in whole.pieces)
    lengths = {p.id: path_length(p.outline) for p in fitting}
    sheets = [layout.items for layout in laid]
    offcuts = tuple(largest_offcut(polygons(whole.pieces, items), whole.free(), board.knife_gap) for items in sheets)
    largest = max((box.width * box.height for box in offcuts if box), default=0.0)
    return Yield(
        board=board.id,
        sheet=sheet,
        rows=rows,
        sheets=laid,
        grid_sheets=grid_sheets(whole.pieces, width, height, board.knife_gap, whole.frames),
        bound=whole.least_sheets(),
        offcut_share=1.0 - area / (len(laid) * sheet.width * sheet.height) if laid else 0.0,
        cut_length=sum(lengths[p.id] * (p.count + p.spare) for p in fitting),
        score_length=sum(score_length(p) * (p.count + p.spare) for p in fitting),
        left_out=tuple(p.id for p in todo.parts if p not in fitting),
        fresh=made,
        cut_lengths=tuple(sum(lengths[i.part] for i in layout.items) for layout in laid),
        offcuts=offcuts,
        spares=spares,
        ease=ease(whole.pieces, sheets, largest),
    )


def _settle(problem: Problem, shop: Shop) -> _Settled:
    """Return the best layout known: the stored one, or one made now where it lacks or a greater effort betters it."""
    kept, findings = recall(problem, shop.store)
    best, made = kept, 0
    if kept is None or shop.desk.effort is not EFFORTS["quick"] or _can_be_more(problem, kept):
        tried = solve(problem, shop.desk)
        if kept is None or _better(problem, tried, kept):
            best, made = tried, 1
    assert best is not None
    key = problem.key()
    stored = shop.store.get(key)
    made_with = stored.made_with if stored is not None and not made else shop.made_with
    layouts = tuple(
        Layout(key, problem.board.id, problem.sheet, items, best.engine, best.seed, made_with) for items in best.sheets
    )
    if any(best.sheets):
        shop.tell(key, stored_layouts(layouts))
    return _Settled(layouts, made, findings)


def _can_be_more(problem: Problem, kept: Packed) -> bool:
    """Say whether a stored layout of a rectangle alone, not made in blocks, is below what is possible at right angles: blocks are
    then tried."""
    if not problem.alone or kept.engine == "blocks":
        return False
    most = most_at_right_angles(problem)
    return most is not None and len(kept.sheets[0]) < most


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
