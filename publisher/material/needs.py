"""What to buy: the cut list, and for each board and sheet size the yield by real layouts."""

from collections.abc import Callable, Sequence

import numpy as np

from publisher.basics import Finding, RowPromise, run_checks
from publisher.design import Design, SheetSize
from publisher.geometry import Part, path_length
from publisher.material.buying import ways_to_buy, work_of
from publisher.material.checks import CHECKS, board_lists
from publisher.material.engines import EFFORTS, Desk
from publisher.material.model import BoardNeeds, CutRow, Yield
from publisher.material.promised import promised_layouts
from publisher.material.rules import LAYOUTS_STALE, STORE_UNREADABLE, STORED_LAYOUT_WRONG
from publisher.material.store import STORE, Stored, read_store
from publisher.material.yields import Shop, yield_of

MOST_TRACINGS = 10  # of a paper or thin card template; common practice, no source

FOUND_BY = ("publisher", "numpy", "pyclipper", "shapely", "spyrrow")  # whose versions may change which layout is found

Listener = Callable[[str, Stored], None]


def lay_out(
    design: Design,
    parts: tuple[Part, ...],
    effort: str = "quick",
    sheets: tuple[SheetSize, ...] | None = None,
    settled: Listener | None = None,
    trial: bool = False,
    versions: tuple[tuple[str, str], ...] = (),
) -> BoardNeeds:
    """Lay a design's parts out on the sheets of their boards.

    Layouts stored beside the spec are verified and used; what is missing is packed with ``effort`` (``quick``, ``careful``,
    ``patient``). An effort above quick tries to better what is stored and never lowers it. ``sheets``: sheet sizes to use
    instead of those on sale. ``settled`` is told each verified layout as soon as it is known, so that a run that is stopped
    can keep it. ``trial``: sizes are tried out, so nothing is said of layouts that are kept for the spec's own. ``versions``:
    (name, version) of this program and its libraries; a layout that is made now names those of the engines.
    Raises KeyError for an unknown effort.
    """
    cut = tuple(p for p in parts if p.count + p.spare > 0)
    made_with = ", ".join(f"{name} {version}" for name, version in versions if name in FOUND_BY)
    shop = Shop(Desk(EFFORTS[effort]), read_store(design), settled, made_with)
    findings: list[Finding] = list(shop.store.findings)
    yields: list[Yield] = []
    for todo in board_lists(design, cut, sheets):
        findings += run_checks(CHECKS, todo)
        for sheet in todo.laid_on():
            one, found = yield_of(todo, sheet, shop)
            yields.append(one)
            findings += found
    said = {STORE_UNREADABLE.id, STORED_LAYOUT_WRONG.id}  # a store that does not hold has been complained of already
    kept = shop.store.entries and not trial  # a design that keeps none wants none
    if kept and not any(f.check in said for f in findings):
        findings += _stale(yields)
    rows = tuple(_cut_row(p, design.use) for p in cut)
    return BoardNeeds(
        rows,
        tuple(yields),
        tuple(findings),
        tuple(map(_promised, cut, rows)),
        promised_layouts(yields, cut),
        ways_to_buy(yields, cut),
        work_of(design.boards, cut),
    )


def _promised(part: Part, row: CutRow) -> RowPromise:
    """Return what the printed cut list must say of a part, from the part itself."""
    xs, ys = zip(*part.outline.outer.points, strict=True)
    size = (float(max(xs) - min(xs)), float(max(ys) - min(ys)))
    often = row.tracings if row.sturdy else 0
    return RowPromise(part.id, part.letter, part.name, part.board, part.count, part.spare, part.mirrored, *size, often)


def _stale(yields: Sequence[Yield]) -> tuple[Finding, ...]:
    """Return the finding for layouts kept beside the spec that are no longer of it; () when none was made just now."""
    made = sum(one.fresh for one in yields)
    if not made:
        return ()
    every = sum(len(one.rows) + 1 for one in yields)
    finding = LAYOUTS_STALE.found(
        f"{made} of {every} layouts are not among those kept beside the spec: an outline, a sheet or a number has changed since; "
        "they were made just now, in a search that is kept short",
        subject=STORE,
        hint="run “publisher yield FOLDER --effort careful --keep”: it looks longer, and every build then only verifies",
        value=made,
        limit=0,
    )
    return (finding,)


def _cut_row(part: Part, use: str) -> CutRow:
    """Return a part's line of the cut list."""
    width, height = (float(v) for v in np.ptp(np.asarray(part.outline.outer.points), axis=0))
    copies = part.count + part.spare
    tracings = copies if use == "trace" and part.printed != "sizes" else 0
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
        path_length(part.outline) * copies,
        tracings,
        tracings > MOST_TRACINGS,
    )
