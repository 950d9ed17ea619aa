"""What a design promises of files that somebody has: of one PDF by its name, or of a whole folder."""

from collections.abc import Iterable

from publisher.basics import FilePromises, Promises, Refusal, errors
from publisher.brief import Brief, Table
from publisher.design import variants, work_out
from publisher.pages import Pack
from publisher.pipeline.building import compose_packs, cut_files
from publisher.pipeline.model import Expected
from publisher.pipeline.promising import file_names, promised_files
from publisher.pipeline.working import work
from publisher.press import write_pdf
from publisher.proof import PDF_UNKNOWN
from publisher.release import pack_stem, paper_of


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
    for variant, papers in wanted.items():
        worked = work(brief, variant)
        if errors(worked.findings) or worked.design is None:
            raise Refusal(*errors(worked.findings))
        packs, _ = compose_packs(worked, papers)
        stem = pack_stem(worked.design, brief.inputs.sets)
        names_of = tuple(file_names(pack, stem, there) for pack in packs)
        files = files.with_others(promised_files(worked, names_of))
        promises |= {one.pdf: pack.promises for one, pack in zip(names_of, packs, strict=True)}
        if rebuild and worked.needs is not None:
            built |= {one.pdf: write_pdf(pack) for one, pack in zip(names_of, packs, strict=True)}
            built |= {one.path: one.data for one in cut_files(variant, worked.pieces, worked.needs)}
    return Expected(files, promises, built)


def _variants_of(brief: Brief, names: frozenset[str]) -> dict[str, tuple[str, ...]]:
    """Return the papers of each variant that has packs among the names."""
    own = tuple(paper.text("name") for paper in brief.fields.row("papers") if isinstance(paper, Table))
    found: dict[str, tuple[str, ...]] = {}
    for variant in ("", *variants(brief)):
        stem = pack_stem(work_out(brief, variant), brief.inputs.sets)
        papers = tuple(paper for name in sorted(names) if (paper := paper_of(name, stem, own)) is not None)
        if papers:
            found[variant] = papers
    return found


def rebuilt_by(brief: Brief, pdf_name: str) -> tuple[Pack, bytes] | None:
    """Return the pack that a design promises under this PDF file name, and the PDF as it is built today; else as ``promised_by``."""
    pack = promised_by(brief, pdf_name)
    return None if pack is None else (pack, write_pdf(pack))


def promised_by(brief: Brief, pdf_name: str) -> Pack | None:
    """Return the pack that a design promises under this PDF file name; None when it promises no such file.

    Raises Refusal when the design has errors, or for an unknown paper.
    """
    for variant, papers in _variants_of(brief, frozenset((pdf_name,))).items():
        worked = work(brief, variant)
        if errors(worked.findings):
            raise Refusal(*errors(worked.findings))
        (pack,), _ = compose_packs(worked, papers)
        return pack
    return None
