"""The columns of ``publisher sizes --vary``: values of sizes, spare of needs, sheets, pages, print scale, what boards may be."""

from collections.abc import Callable, Iterator
from functools import partial
from math import isinf

from publisher.api import Kind, PageCount, Sweep, SweepRow
from publisher.basics import record
from publisher.basics.wording import fixed, trimmed

UNIT: dict[Kind, str] = {"length": "mm", "angle": "°", "area": "mm²", "mass": "g", "force": "N"}


@record
class FigureColumn:
    """One column: the group that it stands in, its head, what it is in words for those who read it apart, and its cells."""

    over: str
    head: str
    words: str
    cells: tuple[str, ...]


def every_column(sweep: Sweep) -> list[FigureColumn]:
    """Return all columns in their order, the values first and at the end why a value cannot be built."""
    whys = FigureColumn("", "", "why it cannot be built", tuple(row.why for row in sweep.rows))
    return [*_values(sweep), *_figures(sweep), whys]


def told_apart(sweep: Sweep) -> tuple[list[FigureColumn], list[FigureColumn]]:
    """Return the columns whose cells differ, the values first, and those that say one thing all the way."""
    figures = _figures(sweep)
    varied = [c for c in figures if len(set(c.cells)) > 1 or len(sweep.rows) == 1]
    return [*_values(sweep), *varied], [c for c in figures if c not in varied]


def _values(sweep: Sweep) -> list[FigureColumn]:
    return [
        FigureColumn(
            span.size.name,
            UNIT.get(span.size.kind, ""),
            _with_unit(span.size.name, span.size.kind),
            tuple(trimmed(row.values[at], 4) for row in sweep.rows),
        )
        for at, span in enumerate(sweep.spans)
    ]


def _figures(sweep: Sweep) -> list[FigureColumn]:
    """Return all other columns, from the row that has most of them."""
    fullest = max(sweep.rows, key=lambda row: (len(row.needs), len(row.sheets)), default=None)
    if fullest is None:
        return []
    rows = sweep.rows
    return [*_spares(fullest, rows), *_sheets(fullest, rows), *_papers(fullest, sweep), *_boards(fullest, rows)]


def _spares(fullest: SweepRow, rows: tuple[SweepRow, ...]) -> Iterator[FigureColumn]:
    for at, need in enumerate(fullest.needs):
        words = f"{need.fact}, {'off its one value' if need.exact else 'to spare'}"
        head = f"spare {UNIT.get(need.kind, '')}".strip()
        yield FigureColumn(need.fact, head, _with_unit(words, need.kind), tuple(_margin(row, at) for row in rows))


def _sheets(fullest: SweepRow, rows: tuple[SweepRow, ...]) -> Iterator[FigureColumn]:
    """Yield for each sheet how many of it the whole list takes, then the copies of each part alone on one."""
    several = len({s.board for s in fullest.sheets}) > 1
    for at, sheet in enumerate(fullest.sheets):
        over = f"{sheet.board} {sheet.sheet}" if several else sheet.sheet
        there = [row.sheets[at] if at < len(row.sheets) else None for row in rows]
        cells = tuple(str(one.sheets or "too small") if one else "" for one in there)
        yield FigureColumn(over, "sheets", f"sheets {over} for all parts", cells)
        for number, (letter, _) in enumerate(sheet.copies):
            cells = tuple(str(one.copies[number][1]) if one and number < len(one.copies) else "" for one in there)
            yield FigureColumn(over, letter, f"{letter} a sheet {over}", cells)


def _papers(fullest: SweepRow, sweep: Sweep) -> Iterator[FigureColumn]:
    """Yield for each paper its pages of templates and tiles, and the parts that are tiled."""
    for at, paper in enumerate(fullest.papers):
        counts = [row.papers[at] if row.papers else None for row in sweep.rows]
        name, now = paper.paper, sweep.now.papers[at] if sweep.now is not None and sweep.now.papers else None
        yield FigureColumn(name, "pages", f"template pages of {name}", _cells(counts, _templates))
        yield FigureColumn(name, "tiles", f"tile pages of {name}", _cells(counts, _tiles))
        yield FigureColumn("", "tiled", f"tiled on {name}", _cells(counts, lambda c: " ".join(c.tiled) or "none"))
        if now is not None:
            cells = _cells(counts, partial(_more_tiled, now))
            yield FigureColumn("", "± tiled", f"tiled parts on {name}, against the size as it stands", cells)


def _boards(fullest: SweepRow, rows: tuple[SweepRow, ...]) -> Iterator[FigureColumn]:
    """Yield what scales the print may have, and how thick each board may be."""
    scales = ((row.papers, row.print_scale) for row in rows)
    cells = tuple(
        f"{fixed(100 * least, 2)} to {fixed(100 * most, 2)}" if known else "" for known, (least, most) in scales
    )
    yield FigureColumn("print scale", "%", "print scale, %", cells)
    for at, board in enumerate(fullest.boards):
        cells = tuple(_range(row.boards[at].least, row.boards[at].most) if at < len(row.boards) else "" for row in rows)
        yield FigureColumn(f"{board.board} takes", "mm", f"{board.board} may be, mm", cells)


def _margin(row: SweepRow, at: int) -> str:
    if at >= len(row.needs):
        return ""
    need = row.needs[at]
    if isinf(need.margin):
        return "open"
    if need.exact and need.met:
        return "exact"
    return fixed(need.margin, 2 if UNIT.get(need.kind) == "mm" else 3)


def _range(least: float, most: float) -> str:
    if not least and isinf(most):
        return "any"
    return f"{fixed(least, 2)} to {'any' if isinf(most) else fixed(most, 2)}"


def _cells(counts: list[PageCount | None], say: Callable[[PageCount], str]) -> tuple[str, ...]:
    return tuple("" if count is None else say(count) for count in counts)


def _templates(count: PageCount) -> str:
    return "" if count.templates is None else str(count.templates)


def _tiles(count: PageCount) -> str:
    return "too many" if count.tiles is None else str(count.tiles)


def _more_tiled(now: PageCount, count: PageCount) -> str:
    more = len(count.tiled) - len(now.tiled)
    return f"{more:+d}" if more else "0"


def _with_unit(words: str, kind: Kind) -> str:
    return f"{words}, {UNIT[kind]}" if kind in UNIT else words
