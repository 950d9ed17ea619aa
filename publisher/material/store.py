"""The store of layouts, ``layouts.json`` beside the spec: part of the design, so that the published table is the same
on every machine and a build only verifies.

A stored layout is never trusted: the judge looks at each one before it is used.
"""

import json
from collections.abc import Iterable, Iterator, Sequence

from publisher.basics import Finding, Place, Pose, record
from publisher.design import Design
from publisher.material.model import BoardNeeds, Item, Layout, Spare
from publisher.material.packing import Packed, numbered
from publisher.material.problem import Problem
from publisher.material.rules import STORE_UNREADABLE, STORED_LAYOUT_WRONG
from publisher.material.spares import MOST_SPARES, spare_flaw

STORE = "layouts.json"
STORE_FORMAT = 1
NOTE = "Verified layouts of this design, made by `publisher yield`. Outlines, sheets or counts that change make an entry stale."
MOST_IN_RUN = 20_000
LEAST_IN_RUN = 3  # copies after the first that make a run worth writing
Copy = tuple[str, float, float, float, bool]  # part, x, y (mm), turn (degrees), mirrored


@record
class Stored:
    """One entry: its sheets as (part, x, y, turn, mirrored) rows, mm and degrees; who made it, and with which versions."""

    sheets: tuple[tuple[Copy, ...], ...]
    engine: str
    seed: int
    made_with: str = ""


@record
class Store:
    """All entries by key; findings about a file or entries that could not be read."""

    entries: tuple[tuple[str, Stored], ...]
    findings: tuple[Finding, ...]

    def get(self, key: str) -> Stored | None:
        """Return the entry of a problem, or None."""
        return next((stored for name, stored in self.entries if name == key), None)


def read_store(design: Design) -> Store:
    """Read the design's store; an empty one when there is none."""
    file = design.file(STORE)
    if file is None:
        return Store((), ())
    return parse(file.data, file.name)


def parse(data: bytes, name: str) -> Store:
    """Read a store's bytes; what cannot be read is a finding, and left out."""
    place = Place(name)
    again = "delete it or run “publisher yield FOLDER --keep”; until then layouts are worked out anew at each build"
    try:
        document = json.loads(data.decode("utf-8"))
        layouts = document["layouts"] if document["format"] == STORE_FORMAT else None
        if not isinstance(layouts, dict):
            raise TypeError
    except (ValueError, KeyError, TypeError, RecursionError):
        words = f"{name} is no store of layouts of format {STORE_FORMAT} that can be read; it was not used"
        return Store((), (STORE_UNREADABLE.found(words, subject=name, hint=again, place=place),))
    entries: list[tuple[str, Stored]] = []
    findings: list[Finding] = []
    for key, entry in layouts.items():
        try:
            entries.append((key, _entry(entry)))
        except (KeyError, TypeError, ValueError):
            words = f"the layout {key[:12]} in {name} is not written as a layout; it was not used"
            findings.append(STORED_LAYOUT_WRONG.found(words, subject=name, hint=again, place=place))
    return Store(tuple(entries), tuple(findings))


def _entry(entry: object) -> Stored:
    """Read one entry. Raises KeyError, TypeError or ValueError when it has another form."""
    if not isinstance(entry, dict):
        raise TypeError
    sheets = tuple(tuple(copy for row in sheet for copy in _copies(row)) for sheet in entry["sheets"])
    made_with = entry.get("made_with", "")
    if not isinstance(entry["engine"], str) or not isinstance(entry["seed"], int) or not isinstance(made_with, str):
        raise TypeError
    return Stored(sheets, entry["engine"], entry["seed"], made_with)


def _copies(row: object) -> Iterator[Copy]:
    """Read one copy, or a run of them: [part, x, y, turn, mirrored] and, for a run, [times, step in x, step in y]."""
    if not isinstance(row, list) or len(row) not in (5, 8):
        raise TypeError
    first = _row(row[:5])
    times, dx, dy = row[5:] or (1, 0.0, 0.0)
    if isinstance(times, bool) or not isinstance(times, int) or not 0 < times <= MOST_IN_RUN:
        raise TypeError
    if not all(isinstance(v, int | float) and not isinstance(v, bool) for v in (dx, dy)):
        raise TypeError
    part, x, y, turn, mirrored = first
    for k in range(times):
        yield part, round(x + k * dx, 4), round(y + k * dy, 4), turn, mirrored


def _row(row: list[object]) -> Copy:
    """Read one copy."""
    part, x, y, turn, mirrored = row
    if not isinstance(part, str) or not isinstance(mirrored, bool) or any(isinstance(v, bool) for v in (x, y, turn)):
        raise TypeError
    if not isinstance(x, int | float) or not isinstance(y, int | float) or not isinstance(turn, int | float):
        raise TypeError
    return part, float(x), float(y), float(turn), mirrored


def recall(problem: Problem, store: Store) -> tuple[Packed | None, tuple[Finding, ...]]:
    """Return the stored layout of a problem if the judge finds that it holds; else None, and a finding that says why."""
    stored = store.get(problem.key())
    if stored is None:
        return None, ()
    sheets, wrong = _judged(problem, stored)
    if not wrong:
        return Packed(sheets, stored.engine, stored.seed), ()
    what = f"part “{problem.pieces[0].id}” alone" if problem.alone else "the whole list"
    words = f"the stored layout of {what} on {problem.sheet.label} does not hold ({wrong}); it was made anew"
    hint = f"{STORE} was edited or damaged: run “publisher yield FOLDER --keep” to write it again"
    return None, (STORED_LAYOUT_WRONG.found(words, subject=problem.board.id, hint=hint, place=Place(STORE)),)


def _judged(problem: Problem, stored: Stored) -> tuple[tuple[tuple[Item, ...], ...], str]:
    """Return a stored layout's sheets with their copies numbered, and what is wrong with them; '' when they hold."""
    known = {p.id for p in problem.pieces}
    strange = [row[0] for sheet in stored.sheets for row in sheet if row[0] not in known]
    if strange:
        return (), f"part “{strange[0]}” is not in the list"
    sheets = numbered(problem.pieces, _items(stored))
    flaws = problem.flaws(sheets)
    if flaws:
        return sheets, flaws[0].message
    whole = all(sheets) and (not problem.alone or len(sheets) == 1)
    return sheets, "" if whole else "it has an empty sheet, or too many"


def _items(stored: Stored) -> tuple[tuple[Item, ...], ...]:
    """Return an entry's copies as items on its sheets, not numbered yet."""
    return tuple(
        tuple(Item(part, 0, Pose(x, y, turn, mirrored)) for part, x, y, turn, mirrored in sheet)
        for sheet in stored.sheets
    )


def recall_spare(problem: Problem, laid: Sequence[Layout], part: str, key: str, store: Store) -> Spare | None:
    """Return the stored spare copies of a part on a list's sheets if the judge finds that they hold; else None."""
    stored = store.get(key)
    if stored is None:
        return None
    sheets = _items(stored)
    found = Spare(part, key, sheets, sum(map(len, sheets)) >= MOST_SPARES)
    return None if spare_flaw(problem, laid, found) else found


def stored_layouts(layouts: Sequence[Layout]) -> Stored:
    """Return layouts of one problem as they are stored."""
    first = layouts[0]
    return Stored(tuple(_copies_of(layout.items) for layout in layouts), first.engine, first.seed, first.made_with)


def stored_spare(spare: Spare) -> Stored:
    """Return spare copies as they are stored."""
    return Stored(tuple(_copies_of(sheet) for sheet in spare.sheets), "bottom-left", 0)


def _copies_of(items: Sequence[Item]) -> tuple[Copy, ...]:
    return tuple(
        (i.part, round(i.pose.x, 4), round(i.pose.y, 4), round(i.pose.turn, 6), i.pose.mirrored) for i in items
    )


def layouts_document(needs: tuple[BoardNeeds, ...], before: bytes | None = None) -> bytes:
    """Return the store of all layouts of ``needs`` (one for each variant), as bytes that are equal for equal layouts.

    Entries of ``before`` (the bytes of the present store) that ``needs`` does not name are kept: another variant may use
    them. After a run of all variants leave it out, so that stale entries go.
    """
    return store_document(tuple(entry for need in needs for entry in _entries(need)), before)


def store_document(entries: Iterable[tuple[str, Stored]], before: bytes | None = None) -> bytes:
    """Return a store of (key, layout) entries, and those of ``before`` under other keys."""
    found = dict(parse(before, STORE).entries) if before else {}
    found.update(entries)
    lines = [f"    {json.dumps(key)}: {_record(found[key])}" for key in sorted(found)]
    body = ",\n".join(lines)
    text = f'{{\n  "format": {STORE_FORMAT},\n  "note": {json.dumps(NOTE)},\n  "layouts": {{\n{body}\n  }}\n}}\n'
    return text.encode()


def _entries(need: BoardNeeds) -> Iterator[tuple[str, Stored]]:
    """Yield (key, entry) for all layouts that hold anything, and for the spares on them."""
    for one in need.yields:
        for row in one.rows:
            if row.layout.items:
                yield row.layout.key, stored_layouts((row.layout,))
        if one.sheets:
            yield one.sheets[0].key, stored_layouts(one.sheets)
        for spare in one.spares:
            yield spare.key, stored_spare(spare)


def _record(stored: Stored) -> str:
    """Return one entry as JSON on few lines: one for each sheet."""
    rows = ",\n        ".join(json.dumps([list(row) for row in runs(sheet)]) for sheet in stored.sheets)
    made_with = f'"made_with": {json.dumps(stored.made_with)}, ' if stored.made_with else ""
    return f'{{"engine": {json.dumps(stored.engine)}, "seed": {stored.seed}, {made_with}"sheets": [\n        {rows}]}}'


def runs(sheet: Sequence[Copy]) -> Iterator[tuple[object, ...]]:
    """Yield the copies of a sheet, those that follow each other at an even step as one run: a sheet of tiles stays short."""
    at = 0
    while at < len(sheet):
        part, x, y, turn, mirrored = sheet[at]
        times, dx, dy = 1, 0.0, 0.0
        if at + LEAST_IN_RUN < len(sheet):
            # the step is taken over several copies, so that rounding each place does not break the run
            for far in (at + LEAST_IN_RUN, at + 1):
                dx = round((sheet[far][1] - x) / (far - at), 7)
                dy = round((sheet[far][2] - y) / (far - at), 7)
                times = 1
                while at + times < len(sheet) and sheet[at + times] == (
                    part, round(x + times * dx, 4), round(y + times * dy, 4), turn, mirrored
                ):  # fmt: skip
                    times += 1
                if times > LEAST_IN_RUN:
                    break
        if times > LEAST_IN_RUN:
            yield (part, x, y, turn, mirrored, times, dx, dy)
            at += times
        else:
            yield sheet[at]
            at += 1
