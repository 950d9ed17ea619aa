"""What ``publisher sizes --vary`` prints: a table, the jumps, the best value; the same as CSV and as JSON."""

import csv
from collections.abc import Iterator
from io import StringIO
from math import isfinite, isinf

from publisher.api import STANDARD, Jump, Kind, Saving, Sweep, SweepRow, say
from publisher.basics import record
from publisher.basics.units import inches
from publisher.basics.wording import fixed, trimmed

BUILT = {"yes": "can be built", "no": "cannot"}
UNIT: dict[Kind, str] = {"length": "mm", "angle": "°", "area": "mm²", "mass": "g", "force": "N"}


@record
class FigureColumn:
    """One column: the group that it stands in, its head, what it is in words for those who read it apart, and its cells."""

    over: str
    head: str
    words: str
    cells: tuple[str, ...]


def lines_of(sweep: Sweep) -> list[str]:
    """Return a sweep as lines of text."""
    spans = [f"{s.size.name} from {_value(s.least, s.size.kind)} to {_value(s.most, s.size.kind)}" for s in sweep.spans]
    now = ", ".join(f"{s.size.name} {_value(s.size.value, s.size.kind)}" for s in sweep.spans)
    lines = [f"{sweep.slug}, {sweep.variant or STANDARD}: {' and '.join(spans)}, {len(sweep.rows)} values (now {now})"]
    varied, rest = _columns(sweep)
    lines += _table(varied)
    lines += [f"  {row}" for row in _stopped(sweep)]
    if rest and len(sweep.rows) > 1:
        lines += ["  the same at every value", *(f"    {c.words}: {c.cells[0]}" for c in rest)]
    if sweep.jumps:
        lines += ["  where it jumps", *(f"    {jump_words(jump, sweep)}" for jump in sweep.jumps)]
    if sweep.savings:
        lines += ["  what other values save", *(f"    {saving_words(saving, sweep)}" for saving in sweep.savings)]
    return [*lines, *(f"  {words}" for words in verdict(sweep))]


def verdict(sweep: Sweep) -> Iterator[str]:
    """Yield which value is best, and which needs no value meets."""
    for one in sweep.missed:
        where = _named(sweep, one.values)
        yield f"no value meets the need of {one.fact}: nearest at {where}, where {say(one.short, one.kind)} is missing"
    if sweep.best is not None:
        row = sweep.best
        spare = " (needs for one exact value: exact)" if any(need.exact for need in row.needs) else ""
        yield f"best: {_named(sweep, row.values)}: meets every need with {_spare(row)} to spare{spare}; {_takes(row)}"
    elif not sweep.missed:
        yield "no value meets every need with 0.5 mm to spare"


def jump_words(jump: Jump, sweep: Sweep) -> str:
    """Return one jump as a sentence."""
    kind = next(s.size.kind for s in sweep.spans if s.size.name == jump.size)
    last, first = _fine(jump.last, kind), _fine(jump.first, kind)
    beside = "".join(
        f" ({name} {_fine(value, next(s.size.kind for s in sweep.spans if s.size.name == name))})"
        for name, value in jump.beside
    )
    before, after = jump.before or "none", jump.after or "none"
    match jump.kind:
        case "need":
            words = f"{jump.subject} is {before}, at {first} {after}"
        case "sheets":
            words = f"{before} sheet(s) {jump.subject} do for all parts, at {first} {after}"
        case "copies":
            part, _, sheet = jump.subject.partition(" on ")
            words = f"a sheet {sheet} gives {before} of {part}, at {first} {after}"
        case "pages":
            words = f"templates take {before} page(s) of {jump.subject}, at {first} {after}"
        case "tiled":
            words = f"tiled on {jump.subject}: {before}, at {first} {after}"
        case "built":
            words = f"it {BUILT[jump.before]}, at {first} it {BUILT[jump.after]}"
    return f"at {last}{beside} {words}"


def saving_words(saving: Saving, sweep: Sweep) -> str:
    """Return what another value saves as a sentence."""
    size = sweep.spans[0].size
    change = f"{_fine(abs(saving.change), size.kind)} {'less' if saving.change < 0 else 'more'}"
    match saving.kind:
        case "tiled":
            what = f"{saving.number} tiled part(s) on {saving.subject}: {', '.join(saving.parts)}"
        case "sheets":
            what = f"{saving.number} sheet(s) {saving.subject}"
        case _:
            what = f"{saving.number} page(s) of templates on {saving.subject}"
    missed = "" if saving.met else "; but a need is missed there"
    return f"{size.name} {change} ({_fine(saving.value, size.kind)}) saves {what}{missed}"


def csv_of(sweep: Sweep) -> str:
    """Return the rows as CSV, lengths in mm; one head line."""
    out = StringIO()
    writer = csv.writer(out, lineterminator="\n")
    columns = [*_values(sweep), *_figures(sweep), _whys(sweep)]
    writer.writerow([column.words for column in columns])
    writer.writerows(zip(*(column.cells for column in columns), strict=True))
    return out.getvalue()


def record_of(sweep: Sweep) -> dict[str, object]:
    """Return a sweep as JSON, lengths in mm."""
    return {
        "slug": sweep.slug,
        "variant": sweep.variant or STANDARD,
        "whole": sweep.whole,
        "sizes": [
            {"name": s.size.name, "kind": s.size.kind, "now": s.size.value, "least": s.least, "most": s.most} for s in sweep.spans
        ],
        "rows": [_row(row) for row in sweep.rows],
        "jumps": [
            {
                "kind": j.kind, "subject": j.subject, "size": j.size, "last": j.last, "first": j.first, "before": j.before,
                "after": j.after, "beside": dict(j.beside),
            }
            for j in sweep.jumps
        ],
        "best": _row(sweep.best) if sweep.best else None,
        "savings": [
            {
                "kind": s.kind, "subject": s.subject, "value": s.value, "change": s.change, "number": s.number, "parts": list(s.parts),
                "met": s.met,
            }
            for s in sweep.savings
        ],
        "missed": [{"fact": m.fact, "nearest": list(m.values), "short": m.short} for m in sweep.missed],
    }  # fmt: skip


def _row(row: SweepRow) -> dict[str, object]:
    return {
        "values": list(row.values),
        "why": row.why,
        "met": row.met,
        "needs": [
            {"fact": n.fact, "value": _number(n.value), "margin": _number(n.margin), "met": n.met, "exact": n.exact}
            for n in row.needs
        ],
        "sheets": [
            {"board": s.board, "sheet": s.sheet, "sheets": s.sheets or None, "copies": dict(s.copies)}
            for s in row.sheets
        ],
        "papers": [
            {"paper": p.paper, "templates": p.templates, "tiles": p.tiles, "tiled": list(p.tiled)} for p in row.papers
        ],
        "print_scale": list(row.print_scale) if row.needs or row.papers else None,
        "boards": [{"board": b.board, "least": b.least, "most": _number(b.most)} for b in row.boards],
    }


def _number(value: float) -> float | None:
    return value if isfinite(value) else None


def _columns(sweep: Sweep) -> tuple[list[FigureColumn], list[FigureColumn]]:
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
    rows, found = sweep.rows, list[FigureColumn]()
    for at, need in enumerate(fullest.needs):
        cells = tuple(_margin(row, at) for row in rows)
        words = f"{need.fact}, {'off its one value' if need.exact else 'to spare'}"
        found.append(
            FigureColumn(need.fact, f"spare {UNIT.get(need.kind, '')}".strip(), _with_unit(words, need.kind), cells)
        )
    for at, sheet in enumerate(fullest.sheets):
        over = sheet.sheet if len({s.board for s in fullest.sheets}) == 1 else f"{sheet.board} {sheet.sheet}"
        cells = tuple(str(row.sheets[at].sheets or "too small") if at < len(row.sheets) else "" for row in rows)
        found.append(FigureColumn(over, "sheets", f"sheets {over} for all parts", cells))
        for number, (letter, _) in enumerate(sheet.copies):
            cells = tuple(
                str(row.sheets[at].copies[number][1])
                if at < len(row.sheets) and number < len(row.sheets[at].copies)
                else ""
                for row in rows
            )
            found.append(FigureColumn(over, letter, f"{letter} a sheet {over}", cells))
    for at, paper in enumerate(fullest.papers):
        counts = [row.papers[at] if row.papers else None for row in rows]
        cells = tuple("" if c is None or c.templates is None else str(c.templates) for c in counts)
        found.append(FigureColumn(paper.paper, "pages", f"template pages of {paper.paper}", cells))
        cells = tuple("" if c is None else "too many" if c.tiles is None else str(c.tiles) for c in counts)
        found.append(FigureColumn(paper.paper, "tiles", f"tile pages of {paper.paper}", cells))
        found.append(
            FigureColumn(
                "", "tiled", f"tiled on {paper.paper}", tuple(" ".join(c.tiled) or "none" if c else "" for c in counts)
            )
        )
        if sweep.now is not None and sweep.now.papers:
            start = len(sweep.now.papers[at].tiled)
            cells = tuple(
                f"{len(c.tiled) - start:+d}" if c and len(c.tiled) != start else "0" if c else "" for c in counts
            )
            found.append(
                FigureColumn("", "± tiled", f"tiled parts on {paper.paper}, against the size as it stands", cells)
            )
    cells = tuple(
        f"{fixed(100 * r.print_scale[0], 2)} to {fixed(100 * r.print_scale[1], 2)}" if r.papers else "" for r in rows
    )
    found.append(FigureColumn("print scale", "%", "print scale, %", cells))
    for at, board in enumerate(fullest.boards):
        cells = tuple(_range(row.boards[at].least, row.boards[at].most) if at < len(row.boards) else "" for row in rows)
        found.append(FigureColumn(f"{board.board} takes", "mm", f"{board.board} may be, mm", cells))
    return found


def _whys(sweep: Sweep) -> FigureColumn:
    return FigureColumn("", "", "why it cannot be built", tuple(row.why for row in sweep.rows))


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


def _table(columns: list[FigureColumn]) -> list[str]:
    """Return aligned columns under two head lines; a group's name stands once, over the first of its columns."""
    heads, over = [c.head for c in columns], [c.over for c in columns]
    over = [name if not at or name != over[at - 1] else "" for at, name in enumerate(over)]
    wide = [max(len(head), *map(len, c.cells)) for head, c in zip(heads, columns, strict=True)]
    for at, name in enumerate(over):  # a group's name may reach over the columns of its group
        group = next((k for k in range(at + 1, len(over)) if over[k]), len(over)) if name else at + 1
        short = len(name) - sum(wide[at:group]) - 2 * (group - at - 1)
        wide[at] += max(0, short)
    top = ""
    for at, name in enumerate(over):
        if name:
            group = next((k for k in range(at + 1, len(over)) if over[k]), len(over))
            top += "  " + f"{name:>{sum(wide[at:group]) + 2 * (group - at - 1)}}"
    rows = [heads, *(list(cells) for cells in zip(*(c.cells for c in columns), strict=True))]
    return [
        top,
        *("  " + "  ".join(f"{cell:>{w}}" for cell, w in zip(row, wide, strict=True)).rstrip() for row in rows),
    ]


def _stopped(sweep: Sweep) -> Iterator[str]:
    """Yield why values cannot be built: once for values in a row that say the same."""
    last = ""
    for row in sweep.rows:
        if row.why and row.why != last:
            yield f"from {_named(sweep, row.values)}: {row.why}"
        last = row.why


def _named(sweep: Sweep, values: tuple[float, ...]) -> str:
    return ", ".join(f"{s.size.name} {_fine(v, s.size.kind)}" for s, v in zip(sweep.spans, values, strict=True))


def _takes(row: SweepRow) -> str:
    """Return what a value takes: sheets of the first size that does, pages of the first paper."""
    said = []
    for board in dict.fromkeys(one.board for one in row.sheets):
        one = next((s for s in row.sheets if s.board == board and s.sheets), None)
        said.append(f"{one.sheets} sheet(s) {one.sheet}" if one else f"no sheet of {board} takes every part")
    if row.papers and row.papers[0].pages is not None:
        said.append(f"{row.papers[0].pages} page(s) of templates on {row.papers[0].paper}")
    return ", ".join(said)


def _spare(row: SweepRow) -> str:
    spare = [(need.margin, need.kind) for need in row.needs if not need.exact and isfinite(need.margin)]
    lengths = [margin for margin, kind in spare if kind == "length"]
    return f"{_fine(min(lengths), 'length')} or more" if lengths else "room"


def _with_unit(words: str, kind: Kind) -> str:
    return f"{words}, {UNIT[kind]}" if kind in UNIT else words


def _value(value: float, kind: Kind) -> str:
    return say(value, kind)


def _fine(value: float, kind: Kind) -> str:
    """Return a value to 0.01 mm, as jumps are found; lengths in both units."""
    if kind == "length":
        return f"{trimmed(value, 4)} mm ({fixed(inches(value), 3)} in)"
    return say(value, kind)
