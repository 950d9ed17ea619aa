"""What is given beside the packs of a variant: a free test page for each paper, the instructions for a phone, pictures for a shop."""

from collections.abc import Iterable
from dataclasses import replace
from functools import partial

from publisher.brief import Brief
from publisher.design import Design, variants, work_out
from publisher.pages import Pack, PackImage, ShownPage, compose, paper_for, record_of, with_attachment
from publisher.pipeline.model import Worked
from publisher.pipeline.trying import papers_of
from publisher.release import board_name

PAGE_IMAGE = "pack:"  # begins the name of the picture of a page: no file of a design has a colon in its name


def free_papers(worked: Worked, wanted: tuple[str, ...] = ()) -> tuple[str, ...]:
    """Return the papers for which a variant has a free test page: () for a trial, and where an earlier variant is drawn for the same
    boards in the same language and used in the same way, so that its test page tries the same."""
    brief, design = worked.brief, worked.design
    if design is None or brief.inputs.sets or not _is_first(brief, design):
        return ()
    return papers_of(design, wanted or brief.inputs.papers)


def _is_first(brief: Brief, design: Design) -> bool:
    """Say whether no variant before this one is cut from the same boards in the same way."""
    names = ("", *variants(brief))
    before = map(partial(work_out, brief), names[: names.index(design.variant)])
    own = (board_name(design), design.use, design.language)
    return all((board_name(one), one.use, one.language) != own for one in before)


def free_pages(worked: Worked, papers: Iterable[str]) -> tuple[Pack, ...]:
    """Return the free test page for each of the papers that holds a part of the design whole. Its record holds the part that it shows
    and no other: it is given away.

    Raises Refusal for an unknown paper, or one that holds no page.
    """
    design, joined, needs = worked.design, worked.joined, worked.needs
    if design is None or joined is None or needs is None:
        return ()
    found: list[Pack] = []
    for paper in papers:
        inputs = worked.brief.inputs
        pack = compose(design, worked.pieces, joined, needs, paper_for(design, paper), inputs, "test_page")
        shown = {outline.part for outline in pack.promises.outlines}
        if not shown:
            continue
        parts = tuple(part for part in worked.pieces if part.id in shown)
        alone = replace(needs, cut_list=tuple(row for row in needs.cut_list if row.part in shown), yields=())
        found.append(with_attachment(pack, record_of(design, parts, joined, alone, pack, inputs)))
    return tuple(found)


def phone_copies(worked: Worked, packs: Iterable[Pack]) -> tuple[Pack, ...]:
    """Return the phone copy that goes with each of the packs, its steps numbered as there: () for a trial, and without steps."""
    design, joined, needs, inputs = worked.design, worked.joined, worked.needs, worked.brief.inputs
    if design is None or joined is None or needs is None or not design.steps or inputs.sets:
        return ()
    found: list[Pack] = []
    for pack in packs:
        copy = compose(design, worked.pieces, joined, needs, pack.paper, inputs, "phone", pack.acts)
        record = record_of(design, (), joined, replace(needs, cut_list=(), yields=()), copy, inputs)
        found.append(with_attachment(copy, record))
    return tuple(found)


def shop_pages(worked: Worked, packs: Iterable[tuple[Pack, tuple[bytes, ...]]]) -> tuple[Pack, ...]:
    """Return for each pack, given with the pictures (PNG) of its pages, the pages of which a shop shows pictures; () for a trial."""
    design, joined, needs, inputs = worked.design, worked.joined, worked.needs, worked.brief.inputs
    if design is None or joined is None or needs is None or inputs.sets:
        return ()
    found: list[Pack] = []
    for pack, pictures in packs:
        shown = tuple(
            ShownPage(PackImage(f"{PAGE_IMAGE}{page.number:02}", data), page.width, page.height)
            for page, data in zip(pack.pages, pictures, strict=True)
        )
        found.append(compose(design, worked.pieces, joined, needs, pack.paper, inputs, "shop", shown_pages=shown))
    return tuple(found)
