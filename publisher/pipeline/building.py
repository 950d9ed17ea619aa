"""One variant built: packs for its papers, written and proved, and a design's variants as one release."""

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

from publisher.basics import FilePromises, Finding, PackFiles, Place, Severity, errors
from publisher.brief import Brief
from publisher.design import asked_variants, unsigned
from publisher.geometry import Part
from publisher.material import BoardNeeds, yield_csv
from publisher.pages import Pack, compose, paper_for, record_of, with_attachment
from publisher.pipeline.extras import free_pages, free_papers, phone_copies, shop_pages
from publisher.pipeline.model import Built, BuiltExtra, BuiltPack, Released, Worked
from publisher.pipeline.promising import file_names, promised_files
from publisher.pipeline.trying import papers_of
from publisher.pipeline.working import work
from publisher.press import render_previews, write_part_svg, write_pdf, write_sheet_svg
from publisher.proof import judge_files, prove
from publisher.release import (
    Bundle,
    Output,
    bundle_of,
    given_name,
    pack_name,
    pack_stem,
    part_name,
    place_bundle,
    preview_name,
    record_name,
    refuse_trial,
    sheet_name,
    shop_pictures,
    yield_name,
)

SHOP_DPI = 256  # dots per inch of the pictures for a shop: their long side, 200 mm, has 2016


def compose_packs(worked: Worked, wanted: tuple[str, ...] = ()) -> tuple[tuple[Pack, ...], tuple[Finding, ...]]:
    """Return a pack for each paper, and what ``pages`` found: those wanted, else those of the inputs, else those of the spec.

    A pack carries the record of itself only: it has the same bytes whatever other papers are composed with it. Raises
    Refusal for an unknown paper.
    """
    design, joined, needs = worked.design, worked.joined, worked.needs
    if design is None or joined is None or needs is None:
        return (), ()
    chosen = papers_of(design, wanted or worked.brief.inputs.papers)
    packs: list[Pack] = []
    for paper in [paper_for(design, name) for name in chosen]:
        pack = compose(design, worked.pieces, joined, needs, paper, worked.brief.inputs)
        record = record_of(design, worked.pieces, joined, needs, pack, worked.brief.inputs)
        packs.append(with_attachment(pack, record))
    return tuple(packs), tuple(f for pack in packs for f in pack.findings)


def with_pages(worked: Worked) -> Worked:
    """Return what was worked out with all that is found on its pages too, planned for each paper as ``build`` does; nothing is written.

    Raises Refusal for an unknown paper.
    """
    if errors(worked.findings):
        return worked
    _, found = compose_packs(worked)
    return replace(worked, findings=tuple(dict.fromkeys((*worked.findings, *found))))


def build(brief: Brief, variant: str = "", previews: bool = True, offered: bool = False) -> Built:
    """Call the rooms in order, from a brief to one variant's proved files for all papers of the inputs. Nothing is written.

    ``offered``: what is given beside the packs too, as every release has it.

    A pure function of the brief's inputs: the same files in any process. Raises Refusal for an unknown paper.
    """
    worked = work(brief, variant)
    needs = worked.needs
    if errors(worked.findings) or needs is None:
        return Built(worked, (), (), worked.findings)
    packs, page_findings = compose_packs(worked)
    extras = (*free_pages(worked, free_papers(worked)), *phone_copies(worked, packs)) if offered else ()
    found = list(dict.fromkeys((*worked.findings, *page_findings, *(f for pack in extras for f in pack.findings))))
    if errors(found):
        return Built(worked, (), (), tuple(found))
    assert worked.design is not None  # as there are packs
    stem = pack_stem(worked.design, brief.inputs.sets)
    built = tuple(_written(pack, stem) for pack in packs)
    thumbs = tuple(render_previews(one.pdf.data) for one in built) if previews or offered else ()
    if offered:
        extras += shop_pages(worked, zip(packs, thumbs, strict=True))
    given = tuple(_given(pack, stem) for pack in extras)
    proved = [(one.pdf, one.proof) for one in built] + [(one.pdf, one.proof) for one in given]
    found += [replace(f, place=f.place or Place(pdf.path)) for pdf, proof in proved for f in proof.findings]
    if errors(found):
        return Built(worked, built, (), tuple(found), extras=given)
    files = [file for one in built for file in (one.pdf, one.record)] + [one.pdf for one in given]
    pictures = [p for one, dots in zip(built, thumbs, strict=True) for p in _previews(one, dots)] if previews else []
    pictures += [picture for one in given for picture in _for_a_shop(one)]
    outputs = (*files, *cut_files(variant, worked.pieces, needs), *pictures)
    data = {one.path: one.data for one in outputs}
    names = tuple(file_names(one.pack, stem, frozenset(data)) for one in built)
    promises = promised_files(
        worked, (*names, *(PackFiles(one.pdf.path, "", shop_pictures(one.pack)) for one in given))
    )
    beside = judge_files(
        data, replace(promises, packs=()), {}
    )  # whatever papers are built with it, the same is said of it
    with_packs = judge_files(data, FilePromises(promises.packs), {pdf.path: proof for pdf, proof in proved})
    found += [replace(f, place=Place(f.subject)) for f in (*beside.findings, *with_packs.findings)]
    if errors(found):
        return Built(worked, built, (), tuple(found), beside, given)
    return Built(worked, built, outputs, tuple(found), beside, given)


def _written(pack: Pack, stem: str) -> BuiltPack:
    """Write a pack as PDF, and prove it."""
    pdf = Output(pack_name(stem, pack.paper.name), write_pdf(pack))
    record = Output(record_name(stem, pack.paper.name), pack.attachments[0].data)
    return BuiltPack(pack, pdf, record, prove(pdf.data, pack.promises, pdf.path))


def _given(pack: Pack, stem: str) -> BuiltExtra:
    """Write a file that is given beside the packs, and prove it."""
    pdf = Output(given_name(pack, stem), write_pdf(pack))
    return BuiltExtra(pack, pdf, prove(pdf.data, pack.promises, pdf.path))


def _previews(one: BuiltPack, pictures: tuple[bytes, ...]) -> list[Output]:
    pack = one.pack
    return [Output(preview_name(pack.variant, pack.paper.name, n), png) for n, png in enumerate(pictures, 1)]


def _for_a_shop(one: BuiltExtra) -> list[Output]:
    """Return the pictures of the pages that a shop shows; none of any other file."""
    names = shop_pictures(one.pack)
    if not names:
        return []
    pictures = render_previews(one.pdf.data, SHOP_DPI)
    return [Output(name, png) for name, png in zip(names, pictures, strict=True)]


def cut_files(variant: str, pieces: tuple[Part, ...], needs: BoardNeeds) -> list[Output]:
    """Return the cut files of a variant, each part and each sheet, and the table of what the sheets give."""
    out = [Output(part_name(variant, p.letter, p.id), write_part_svg(p)) for p in pieces]
    for need in needs.yields:
        out += (
            Output(sheet_name(variant, need.board, need.sheet, number), write_sheet_svg(layout, pieces))
            for number, layout in enumerate(need.sheets, 1)
        )
    if needs.yields:
        out.append(Output(yield_name(variant), yield_csv(needs, pieces).encode("utf-8")))
    return out


def release(brief: Brief, releases: Path, told: Callable[[Bundle], None] | None = None) -> Released:
    """Build all variants of a design and put them below ``releases`` as one version, unless one has an error, or nobody signs it.

    ``told`` hears of the bundle before it is put in place. Raises Refusal when the version was released before with other
    content, when the copy there is damaged, when it cannot be written, or when the brief sets other sizes than its spec.
    """
    refuse_trial(brief.slug, brief.inputs.sets)
    if missing := tuple(replace(found, severity=Severity.ERROR) for found in unsigned(brief.fields, releasing=True)):
        return Released((Built(Worked(brief, ""), (), (), (*brief.findings, *missing)),))
    builds = tuple(build(brief, variant, offered=True) for variant in asked_variants(brief))
    if not all(built.good for built in builds):
        return Released(builds)
    bundle = bundle_of(tuple(built.offer for built in builds))
    if told is not None:
        told(bundle)
    placed = place_bundle(bundle, releases)
    return Released(builds, bundle, placed.folder, placed.new, placed.others)
