"""What comes of a brief, up to the pages: worked out, compared, laid out on sheets together, kept, shown."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from publisher.basics import Finding
    from publisher.brief import Brief
    from publisher.material import Shared, Stored
    from publisher.pages import Pack
    from publisher.pipeline import Worked

LAYOUTS = "layouts.json"  # the layouts that are kept beside a spec
STAGES = ("sizes", "parts", "assembly", "layouts", "pages")  # what may be shown, in the order of the work


def work(
    brief: Brief,
    variant: str = "",
    effort: str = "quick",
    sheets: tuple[str, ...] = (),
    settled: Callable[[str, Stored], None] | None = None,
    advise: bool = False,
) -> Worked:
    """Work one variant out, up to the layouts on board: sizes, parts, how they go together, facts, needs, findings.

    ``effort`` (quick, careful, patient): how long to look for layouts. ``sheets``: sizes of sheets at hand ("500x700 mm") in
    place of those of the spec. ``settled`` is told of each layout as soon as it is verified. ``advise``: every value that a
    hint names is tried with the whole design. Raises Refusal for a sheet that is no size.
    """
    from publisher import pipeline
    from publisher.design import sheet_size

    return pipeline.work(brief, variant, effort, tuple(map(sheet_size, sheets)) or None, settled, advise)


def with_pages(worked: Worked) -> Worked:
    """Return what was worked out with all that is found on its pages too, as ``build`` finds it, for each paper of the inputs.

    Raises Refusal for an unknown paper.
    """
    from publisher import pipeline

    return pipeline.with_pages(worked)


def compose(worked: Worked) -> tuple[tuple[Pack, ...], tuple[Finding, ...]]:
    """Return the pages of a pack for each paper of the inputs, and what was found on them; () when a room before found an error.

    Raises Refusal for an unknown paper.
    """
    from publisher.pipeline import compose_packs

    return compose_packs(worked)


def compare(works: tuple[Worked, ...]) -> tuple[Finding, ...]:
    """Return what does not meet among the designs that say at which sizes they meet others, on every board of theirs."""
    from publisher.pipeline import compare_family

    return compare_family(works)


def shop(works: tuple[Worked, ...], effort: str = "quick") -> tuple[Shared, ...]:
    """Lay out on one shopping list what several works cut from the same board: one entry for each board and sheet size that two of
    them or more are cut from, with the sheets that it saves."""
    from publisher import pipeline

    return pipeline.shop(works, effort)


def yield_table(worked: Worked) -> str:
    """Return what the sheets give as CSV; '' when the design could not be laid out."""
    from publisher.material import yield_csv

    return "" if worked.needs is None else yield_csv(worked.needs, worked.pieces)


def keep_layouts(brief: Brief, works: tuple[Worked, ...], whole: bool = False) -> None:
    """Write the layouts of these works beside the spec. ``whole``: they are all the design's variants, so that layouts which none
    of them uses go; those of works that could not be laid out stay.

    Raises Refusal when the file cannot be written.
    """
    from publisher.material import layouts_document

    needs = tuple(one.needs for one in works if one.needs is not None)
    if needs:
        _put(brief, layouts_document(needs, None if whole and len(needs) == len(works) else _kept(brief)))


def keep_verified(brief: Brief, found: dict[str, Stored]) -> None:
    """Add layouts that ``work`` told of to those beside the spec. Raises Refusal when the file cannot be written."""
    from publisher.material import store_document

    _put(brief, store_document(tuple(found.items()), _kept(brief)))


def _kept(brief: Brief) -> bytes | None:
    store = brief.file(LAYOUTS)
    return store.data if store else None


def _put(brief: Brief, document: bytes) -> None:
    from publisher.release import put_in_place

    put_in_place(Path(brief.inputs.folder), [(LAYOUTS, document)])


def show(worked: Worked, stage: str) -> tuple[str, ...]:
    """Return what one of the ``STAGES`` gave as lines of text, lengths in mm; () for a stage that was not reached.

    Pages are those for every paper of the inputs, each pack after a line with its paper. Raises Refusal for an unknown paper.
    """
    from publisher import dumps

    if stage == "sizes" and worked.design is not None:
        return tuple(dumps.sizes_lines(worked.design))
    if stage == "parts":
        return tuple(dumps.parts_lines(worked.pieces))
    if stage == "assembly" and worked.joined is not None:
        return tuple(dumps.assembly_lines(worked.joined))
    if stage == "layouts" and worked.needs is not None:
        return tuple(dumps.layouts_lines(worked.needs))
    if stage == "pages":
        packs, _ = compose(worked)
        lines = ((f"paper {p.paper.name}", *(x for page in p.pages for x in dumps.page_lines(page, p))) for p in packs)
        return tuple(line for pack in lines for line in pack)
    return ()


def show_json(worked: Worked, stage: str) -> Any:
    """Return what one of the ``STAGES`` gave as JSON: every field of its records; None for a stage that was not reached."""
    from publisher import dumps

    found: dict[str, Callable[[], object]] = {
        "sizes": lambda: worked.design and worked.design.sizes,
        "parts": lambda: worked.pieces or None,
        "assembly": lambda: worked.joined,
        "layouts": lambda: worked.needs,
        "pages": lambda: tuple({"paper": p.paper.name, "pages": p.pages} for p in compose(worked)[0]) or None,
    }
    return dumps.as_json(found[stage]())
