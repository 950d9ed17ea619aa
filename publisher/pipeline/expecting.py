"""What a design promises of files that somebody has: of one PDF by its name, or of a whole folder."""

from collections.abc import Iterable

from publisher.basics import FileKind, FilePromises, PackFiles, Promises, Refusal, errors, record
from publisher.brief import Brief, Table
from publisher.design import variants, work_out
from publisher.pages import Pack
from publisher.pipeline.building import compose_packs, cut_files
from publisher.pipeline.extras import free_pages, phone_copies, shop_pages
from publisher.pipeline.model import Expected, Worked
from publisher.pipeline.promising import file_names, promised_files
from publisher.pipeline.working import work
from publisher.press import render_previews, write_pdf
from publisher.proof import PDF_UNKNOWN
from publisher.release import extra_paper_of, given_name, pack_stem, paper_of, shop_paper_of, shop_pictures

PURPOSES: tuple[FileKind, FileKind] = ("test_page", "phone")


@record
class _Named:
    """The papers of a variant's packs, of its test pages, phone copies and pages for a shop that are among
    some names."""

    papers: tuple[str, ...]
    tests: tuple[str, ...]
    phones: tuple[str, ...]
    shops: tuple[str, ...]

    @property
    def any(self) -> bool:
        """Whether there is one at all."""
        return bool(self.papers or self.tests or self.phones or self.shops)


def expected_by(brief: Brief, names: Iterable[str], rebuild: bool) -> Expected:
    """Return what a design promises of the files of a folder that have these names: those of each variant whose packs are among them, for
    their papers. ``rebuild``: with the files themselves, as they are built today.

    Raises Refusal when the design has errors, for an unknown paper, or when none of the names is one of its packs.
    """
    there = frozenset(names)
    wanted = _variants_of(brief, there)
    if not wanted:
        said = f"the design {brief.slug}, as it is written now, makes none of the packs of this folder"
        raise Refusal(PDF_UNKNOWN.found(said, subject=brief.slug, hint="give the spec of the same design and version"))
    files, promises, built = FilePromises(), dict[str, Promises](), dict[str, bytes]()
    for variant, some in wanted.items():
        worked = work(brief, variant)
        if errors(worked.findings) or worked.design is None:
            raise Refusal(*errors(worked.findings))
        packs, extras = _composed(worked, some)
        stem = pack_stem(worked.design, brief.inputs.sets)
        names_of = tuple(file_names(pack, stem, there) for pack in packs)
        names_of += tuple(PackFiles(given_name(pack, stem), "", shop_pictures(pack)) for pack in extras)
        packs += extras
        files = files.with_others(promised_files(worked, names_of))
        promises |= {one.pdf: pack.promises for one, pack in zip(names_of, packs, strict=True)}
        if rebuild and worked.needs is not None:
            built |= {one.pdf: write_pdf(pack) for one, pack in zip(names_of, packs, strict=True)}
            built |= {one.path: one.data for one in cut_files(variant, worked.pieces, worked.needs)}
    return Expected(files, promises, built)


def _composed(worked: Worked, some: _Named) -> tuple[tuple[Pack, ...], tuple[Pack, ...]]:
    """Return the packs that are wanted, and the files that are given beside them; a trial has none of these."""
    every = tuple(dict.fromkeys((*some.papers, *some.phones, *some.shops)))  # these follow from the pack
    packs = {pack.paper.name: pack for pack in (compose_packs(worked, every)[0] if every else ())}
    tests = () if worked.brief.inputs.sets else free_pages(worked, some.tests)
    phones = phone_copies(worked, (packs[name] for name in some.phones if name in packs))
    shown = ((packs[name], render_previews(write_pdf(packs[name]))) for name in some.shops if name in packs)
    shops = shop_pages(worked, shown)
    return tuple(packs[name] for name in some.papers if name in packs), (*tests, *phones, *shops)


def _variants_of(brief: Brief, names: frozenset[str]) -> dict[str, _Named]:
    """Return what there is of each variant that has packs or test pages among the names."""
    own = tuple(paper.text("name") for paper in brief.fields.row("papers") if isinstance(paper, Table))
    found: dict[str, _Named] = {}
    for variant in ("", *variants(brief)):
        stem = pack_stem(work_out(brief, variant), brief.inputs.sets)
        papers = tuple(paper for name in sorted(names) if (paper := paper_of(name, stem, own)) is not None)
        tests, phones = (
            tuple(paper for name in sorted(names) if (paper := extra_paper_of(name, stem, purpose, own)) is not None)
            for purpose in PURPOSES
        )
        shops = tuple(paper for name in sorted(names) if (paper := shop_paper_of(name, variant, own)) is not None)
        wanted = _Named(papers, tests, phones, shops)
        if wanted.any:
            found[variant] = wanted
    return found


def rebuilt_by(brief: Brief, pdf_name: str) -> tuple[Pack, bytes] | None:
    """Return the pack that a design promises under this PDF file name, and the PDF as it is built today; else as ``promised_by``."""
    pack = promised_by(brief, pdf_name)
    return None if pack is None else (pack, write_pdf(pack))


def promised_by(brief: Brief, pdf_name: str) -> Pack | None:
    """Return the pack that a design promises under this PDF file name; None when it promises no such file.

    Raises Refusal when the design has errors, or for an unknown paper.
    """
    for variant, some in _variants_of(brief, frozenset((pdf_name,))).items():
        worked = work(brief, variant)
        if errors(worked.findings):
            raise Refusal(*errors(worked.findings))
        return next((pack for packs in _composed(worked, some) for pack in packs), None)
    return None
