"""The store of layouts, ``layouts.json`` beside the spec: part of the design, so that the published table is the same
on every machine and a build only verifies.

A stored layout is never trusted: the judge looks at each one before it is used.
"""

import json
from collections.abc import Iterator
from dataclasses import dataclass

from publisher.basics import Finding, Place, Pose
from publisher.design import Design
from publisher.material.model import BoardNeeds, Item, Layout
from publisher.material.packing import Packed, numbered
from publisher.material.problem import Problem
from publisher.material.rules import STORE_UNREADABLE, STORED_LAYOUT_WRONG

STORE = "layouts.json"
FORMAT = 1
NOTE = "Verified layouts of this design, made by `publisher yield`. Outlines, sheets or counts that change make an entry stale."


@dataclass(frozen=True, slots=True)
class Stored:
    """One entry: its sheets as (part, x, y, turn, mirrored) rows, mm and degrees; who made it."""

    sheets: tuple[tuple[tuple[str, float, float, float, bool], ...], ...]
    engine: str
    seed: int


@dataclass(frozen=True, slots=True)
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
    again = "delete it or run `publisher yield FOLDER --keep`; until then layouts are worked out anew at each build"
    try:
        document = json.loads(data.decode("utf-8"))
        layouts = document["layouts"] if document["format"] == FORMAT else None
        if not isinstance(layouts, dict):
            raise TypeError
    except (ValueError, KeyError, TypeError, RecursionError):
        words = f"{name} is no store of layouts of format {FORMAT} that can be read; it was not used"
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
    sheets = tuple(tuple(_row(row) for row in sheet) for sheet in entry["sheets"])
    if not isinstance(entry["engine"], str) or not isinstance(entry["seed"], int):
        raise TypeError
    return Stored(sheets, entry["engine"], entry["seed"])


def _row(row: object) -> tuple[str, float, float, float, bool]:
    """Read one copy."""
    if not isinstance(row, list) or len(row) != 5:
        raise TypeError
    part, x, y, turn, mirrored = row
    if not isinstance(part, str) or not isinstance(mirrored, bool) or any(isinstance(v, bool) for v in (x, y, turn)):
        raise TypeError
    if not all(isinstance(v, int | float) for v in (x, y, turn)):
        raise TypeError
    return part, float(x), float(y), float(turn), mirrored


def recall(problem: Problem, store: Store) -> tuple[Packed | None, tuple[Finding, ...]]:
    """Return the stored layout of a problem if the judge finds that it holds; else None, and a finding that says why."""
    stored = store.get(problem.key())
    if stored is None:
        return None, ()
    known = {p.id for p in problem.pieces}
    strange = [row[0] for sheet in stored.sheets for row in sheet if row[0] not in known]
    message = f"part “{strange[0]}” is not in the list" if strange else ""
    sheets: tuple[tuple[Item, ...], ...] = ()
    if not strange:
        items = (
            tuple(Item(part, 0, Pose(x, y, turn, mirrored)) for part, x, y, turn, mirrored in sheet)
            for sheet in stored.sheets
        )
        sheets = numbered(problem.pieces, items)
        wrong = problem.flaws(sheets)
        message = wrong[0].message if wrong else ""
    if not message and (not problem.alone or len(sheets) == 1) and all(sheets):
        return Packed(sheets, stored.engine, stored.seed), ()
    what = f"part “{problem.pieces[0].id}” alone" if problem.alone else "the whole list"
    words = (
        f"the stored layout of {what} on {problem.sheet.label} does not hold "
        f"({message or 'it has an empty sheet, or too many'}); it was made anew"
    )
    hint = f"{STORE} was edited or damaged: run `publisher yield FOLDER --keep` to write it again"
    return None, (STORED_LAYOUT_WRONG.found(words, subject=problem.board.id, hint=hint, place=Place(STORE)),)


def layouts_document(needs: tuple[BoardNeeds, ...], before: bytes | None = None) -> bytes:
    """Return the store of all layouts of ``needs`` (one for each variant), as bytes that are equal for equal layouts.

    Entries of ``before`` (the bytes of the present store) that ``needs`` does not name are kept: another variant may use
    them.
    """
    kept = dict(parse(before, STORE).entries) if before else {}
    found = {key: record for need in needs for key, record in _records(need)}
    for key, stored in kept.items():
        found.setdefault(key, _record(stored.sheets, stored.engine, stored.seed))
    lines = [f"    {json.dumps(key)}: {found[key]}" for key in sorted(found)]
    body = ",\n".join(lines)
    text = f'{{\n  "format": {FORMAT},\n  "note": {json.dumps(NOTE)},\n  "layouts": {{\n{body}\n  }}\n}}\n'
    return text.encode()


def _records(need: BoardNeeds) -> Iterator[tuple[str, str]]:
    """Yield (key, JSON of the entry) for all layouts that hold anything."""
    for one in need.yields:
        groups: dict[str, list[Layout]] = {}
        for layout in (*(row.layout for row in one.rows), *one.sheets):
            groups.setdefault(layout.key, []).append(layout)
        for key, layouts in groups.items():
            sheets = tuple(
                tuple((i.part, i.pose.x, i.pose.y, i.pose.turn, i.pose.mirrored) for i in layout.items)
                for layout in layouts
            )
            if any(sheets):
                yield key, _record(sheets, layouts[0].engine, layouts[0].seed)


def _record(sheets: tuple[tuple[tuple[str, float, float, float, bool], ...], ...], engine: str, seed: int) -> str:
    """Return one entry as JSON on few lines: one for each sheet."""
    rows = ",\n        ".join(
        json.dumps([[part, round(x, 4), round(y, 4), round(turn, 6), mirrored] for part, x, y, turn, mirrored in sheet])
        for sheet in sheets
    )
    return f'{{"engine": {json.dumps(engine)}, "seed": {seed}, "sheets": [\n        {rows}]}}'
