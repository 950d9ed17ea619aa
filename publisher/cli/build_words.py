"""What ``publisher build`` says: a summary of each pack, a table of all designs, and both as JSON."""

from pathlib import Path
from typing import Literal

import click

from publisher.api import STANDARD, Built, BuiltExtra, BuiltPack, PlacedSet, Proof
from publisher.basics import errors, record
from publisher.basics.wording import counted, listed
from publisher.cli.report import as_read, finding_record

BuildState = Literal["built", "refused", "unreadable", "fault"]


EXTRAS = {"test_page": "free test page", "phone": "phone copy", "shop": "pictures for a shop"}
"""What is given beside the packs, in words."""


@record
class TableRow:
    """One design of a run: what became of it, its pages and sheets of board over all variants, seconds by the clock of its builds."""

    slug: str
    state: BuildState
    pages: int = 0
    sheets: int = 0
    seconds: float = 0.0


def table_lines(rows: list[TableRow]) -> list[str]:
    """Return the table of a run: a line for each design, then their sums."""
    width = max(6, *(len(row.slug) for row in rows))
    lines = [f"{'design':{width}}  {'state':10}  {'pages':>6}  {'sheets':>6}  {'seconds':>7}"]
    for row in rows:
        figures = f"{row.pages:6}  {row.sheets:6}" if row.state == "built" else f"{'-':>6}  {'-':>6}"
        lines.append(f"{row.slug:{width}}  {row.state:10}  {figures}  {row.seconds:7.1f}")
    states = [row.state for row in rows]
    said: dict[BuildState, str] = {
        "built": "built",
        "refused": "refused",
        "unreadable": "unreadable",
        "fault": "stopped by a fault of ours",
    }
    counts = ", ".join(f"{states.count(s)} {said[s]}" for s in said if s == "built" or s in states)
    pages, sheets = (sum(numbers) for numbers in ((r.pages for r in rows), (r.sheets for r in rows)))
    lines.append(f"{counted(len(rows), 'design')}: {counts}; {counted(pages, 'page')}, {counted(sheets, 'sheet')}")
    return lines


def row_record(row: TableRow) -> dict[str, object]:
    """Return the JSON form of a row."""
    return {
        "slug": row.slug,
        "state": row.state,
        "pages": row.pages,
        "sheets": row.sheets,
        "seconds": round(row.seconds, 3),
    }


def summary(builds: list[Built], placed: PlacedSet | None) -> None:
    """Print a line for each pack of a design, where it stands, and what became of files of an earlier build."""
    good = all(built.good for built in builds)
    for built in builds:
        title = f"{built.slug}" + (f", {built.variant}" if built.variant else "")
        if not built.good:
            click.echo(f"{title}: not built, {counted(len(errors(as_read(built.findings))), 'error')}")
        elif placed is None:
            why = "" if good else ": a design is put in place whole, and there are errors in it"
            click.echo(f"{title}: built, but not put in place{why}")
        else:
            for one in built.packs:
                click.echo(_line(title, one, placed.folder))
            for extra in built.extras:
                click.echo(_extra_line(title, extra, placed.folder))
    if placed is not None:
        show_left(placed)


def show_left(placed: PlacedSet) -> None:
    """Print what was removed, and what of an earlier build stays, each with its reason."""
    for word, left in (("removed", placed.removed), ("stays, made by an earlier build", placed.stays)):
        for why in dict.fromkeys(one.why for one in left):
            gone = ("all else that it made" if one.name == "." else one.name for one in left if one.why == why)
            names = sorted(gone, key=lambda name: not name.endswith(".pdf"))
            click.echo(f"    {word}: {listed(names, 4)} ({why})")


def left_record(placed: PlacedSet) -> dict[str, object]:
    """Return the JSON form of what was removed, and of what stays."""
    return {
        word: [{"file": str(placed.folder / one.name), "why": one.why} for one in left]
        for word, left in (("removed", placed.removed), ("stays", placed.stays))
    }


def _line(title: str, one: BuiltPack, folder: Path) -> str:
    pack, proof = one.pack, one.proof
    return (
        f"{title} {pack.version}, {pack.paper.title}: {counted(len(pack.pages), 'page')}, proved "
        f"({counted(len(pack.promises.lengths), 'length')}, {counted(len(pack.promises.outlines), 'outline')}, "
        f"largest difference {_worst(proof):.4f} mm)\n    {folder / one.pdf.path}"
    )


def _extra_line(title: str, one: BuiltExtra, folder: Path) -> str:
    pages, what = counted(len(one.pack.pages), "page"), EXTRAS[one.pack.purpose]
    return f"{title} {one.pack.version}, {what}, {one.pack.paper.title}: {pages}, proved\n    {folder / one.pdf.path}"


def _worst(proof: Proof) -> float:
    return max((abs(m.found - m.promised) for m in proof.measured), default=0.0)


def built_record(built: Built, placed: PlacedSet | None) -> dict[str, object]:
    """Return the JSON form of one variant."""
    folder = placed.folder if placed is not None else None
    return {
        "slug": built.slug,
        "variant": built.variant or STANDARD,
        "good": built.good,
        "placed": folder is not None,
        "files": [str(folder / o.path) for o in built.outputs] if folder else [],
        "packs": [
            {
                "file": str(folder / one.pdf.path),
                "paper": one.pack.paper.name,
                "pages": len(one.pack.pages),
                "lengths": len(one.pack.promises.lengths),
                "outlines": len(one.pack.promises.outlines),
                "worst_mm": _worst(one.proof),
            }
            for one in built.packs
            if folder
        ],
        "extras": [
            {
                "file": str(folder / one.pdf.path),
                "kind": one.pack.purpose,
                "paper": one.pack.paper.name,
                "pages": len(one.pack.pages),
            }
            for one in built.extras
            if folder
        ],
        **(left_record(placed) if placed is not None else {"removed": [], "stays": []}),
        "findings": [finding_record(f) for f in built.findings],
    }
