"""What ``publisher sizes --vary`` prints: a table, the jumps, the best value; the same as CSV and as JSON."""

import csv
from collections.abc import Iterator
from io import StringIO
from math import isfinite

from publisher.api import STANDARD, Jump, Kind, Saving, Sweep, SweepRow, say
from publisher.basics.units import inches
from publisher.basics.wording import counted, fixed, trimmed
from publisher.cli.vary_columns import FigureColumn, every_column, told_apart

BUILT = {"yes": "can be built", "no": "cannot"}


def lines_of(sweep: Sweep) -> list[str]:
    """Return a sweep as lines of text."""
    spans = [f"{s.size.name} from {_value(s.least, s.size.kind)} to {_value(s.most, s.size.kind)}" for s in sweep.spans]
    now = ", ".join(f"{s.size.name} {_value(s.size.value, s.size.kind)}" for s in sweep.spans)
    lines = [
        f"{sweep.slug}, {sweep.variant or STANDARD}: {' and '.join(spans)}, {counted(len(sweep.rows), 'value')} (now {now})"
    ]
    varied, rest = told_apart(sweep)
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
            words = f"of sheets {jump.subject} all parts take {before}, at {first} {after}"
        case "copies":
            part, _, sheet = jump.subject.partition(" on ")
            words = f"a sheet {sheet} gives {before} of {part}, at {first} {after}"
        case "pages":
            words = f"of pages of {jump.subject} the templates take {before}, at {first} {after}"
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
            what = f"{counted(saving.number, 'tiled part')} on {saving.subject}: {', '.join(saving.parts)}"
        case "sheets":
            what = f"{counted(saving.number, 'sheet')} of {saving.subject}"
        case _:
            what = f"{counted(saving.number, 'page')} of templates on {saving.subject}"
    missed = "" if saving.met else "; but a need is missed there"
    return f"{size.name} {change} ({_fine(saving.value, size.kind)}) saves {what}{missed}"


def csv_of(sweep: Sweep) -> str:
    """Return the rows as CSV, lengths in mm; one head line."""
    out = StringIO()
    writer = csv.writer(out, lineterminator="\n")
    columns = every_column(sweep)
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


def _table(columns: list[FigureColumn]) -> list[str]:
    """Return aligned columns under two head lines; a group's name stands once, over the first of its columns."""
    top, wide = "", list[int]()
    for group in _groups(columns):
        own, name = [max([len(c.head), *map(len, c.cells)]) for c in group], group[0].over
        reach = sum(own) + 2 * (len(own) - 1)  # a group's name may reach over the columns of its group
        own[0] += max(0, len(name) - reach)
        top += f"  {name:>{reach}}"
        wide += own
    rows = [[c.head for c in columns], *zip(*(c.cells for c in columns), strict=True)]
    return [
        top,
        *("  " + "  ".join(f"{cell:>{w}}" for cell, w in zip(row, wide, strict=True)).rstrip() for row in rows),
    ]


def _groups(columns: list[FigureColumn]) -> list[list[FigureColumn]]:
    """Return the columns by group: one without a name stands in the group before it."""
    groups: list[list[FigureColumn]] = []
    for column, last in zip(columns, ("", *(c.over for c in columns)), strict=False):
        if not groups or (column.over and column.over != last):
            groups.append([])
        groups[-1].append(column)
    return groups


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
        said.append(
            f"{counted(one.sheets, 'sheet')} of {one.sheet}" if one else f"no sheet of {board} takes every part"
        )
    if row.papers and row.papers[0].pages is not None:
        said.append(f"{counted(row.papers[0].pages, 'page')} of templates on {row.papers[0].paper}")
    return ", ".join(said)


def _spare(row: SweepRow) -> str:
    spare = [(need.margin, need.kind) for need in row.needs if not need.exact and isfinite(need.margin)]
    lengths = [margin for margin, kind in spare if kind == "length"]
    return f"{_fine(min(lengths), 'length')} or more" if lengths else "room"


def _value(value: float, kind: Kind) -> str:
    return say(value, kind)


def _fine(value: float, kind: Kind) -> str:
    """Return a value to 0.01 mm, as jumps are found; lengths in both units."""
    if kind == "length":
        return f"{trimmed(value, 4)} mm ({fixed(inches(value), 3)} in)"
    return say(value, kind)
