"""The only file that knows all rooms: it calls them in order and puts the finished files in place."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from hashlib import sha256
from pathlib import Path

from publisher.basics import Finding, Place, Refusal, Rule, Severity, errors
from publisher.brief import Brief
from publisher.design import Design, Fact, SheetSize, Size, text_findings, variants, work_out
from publisher.geometry import Part, cut_pieces, make_parts
from publisher.joints import Joined, draw_parts, facts_of, put_together, suggest
from publisher.material import BoardNeeds, Stored, lay_out, yield_csv
from publisher.pages import Pack, Paper, compose, facts_document, paper_for, with_attachment
from publisher.press import render_previews, write_part_svg, write_pdf, write_sheet_svg
from publisher.proof import Proof, prove
from publisher.release import Bundle, Offer, listing_of, listing_text, make_bundle, proof_record

ROOMS = (
    "basics", "brief", "design", "geometry", "joints", "material", "pages", "press", "proof", "release", "ruler",
)  # fmt: skip

BASE = "standard"  # the name of the folder for the sizes as written, where a variant's name would stand

UNKNOWN_VARIANT = Rule(
    "pipeline/unknown-variant",
    "A variant that is asked for is in the spec",
    "Building something else than what was asked for would be a silent guess.",
    Severity.ERROR,
)
VARIANT_NAME = Rule(
    "pipeline/variant-name-taken",
    "No variant is called as the sizes as written are",
    "Its cut files and pictures would take the place of the standard ones.",
    Severity.ERROR,
)
NO_SPEC = Rule(
    "pipeline/no-spec",
    "There is something to build",
    "A folder without a design would end in an empty success.",
    Severity.ERROR,
)
RULES: tuple[Rule, ...] = (UNKNOWN_VARIANT, VARIANT_NAME, NO_SPEC)


@dataclass(frozen=True, slots=True)
class Worked:
    """One variant of one design, as far as it got: a room that found an error is the last one that ran."""

    brief: Brief
    design: Design | None
    parts: tuple[Part, ...]
    joined: Joined | None
    needs: BoardNeeds | None
    findings: tuple[Finding, ...]
    pieces: tuple[Part, ...] = ()  # what is cut from board: the parts, those that are split in their pieces and plates


@dataclass(frozen=True, slots=True)
class Output:
    """A finished file: its path below the design's output folder, and its bytes."""

    path: str
    data: bytes


@dataclass(frozen=True, slots=True)
class BuiltPack:
    """One pack for one paper: the pages, the finished PDF, what proof says of it."""

    pack: Pack
    pdf: Output
    proof: Proof


@dataclass(frozen=True, slots=True)
class Built:
    """One variant, built for all its papers. ``outputs`` are all its files, the facts last; () when an error stopped it."""

    slug: str
    variant: str
    worked: Worked
    packs: tuple[BuiltPack, ...]
    outputs: tuple[Output, ...]
    findings: tuple[Finding, ...]

    @property
    def good(self) -> bool:
        """Whether no error was found."""
        return not errors(self.findings)


def spec_folders(folder: Path) -> tuple[Path, ...]:
    """Return the spec folders that ``folder`` names: itself, or those in it, by name. Raises Refusal when there are none."""
    if (folder / "spec.yaml").exists():
        return (folder,)
    found = tuple(sorted(p.parent for p in folder.glob("*/spec.yaml"))) if folder.is_dir() else ()
    if not found:
        what = "holds no spec.yaml, and no folder in it does" if folder.is_dir() else "is not a folder"
        raise Refusal(
            NO_SPEC.found(
                f"{folder} {what}", subject=str(folder), hint="give a design's folder, or a folder of such folders"
            )
        )
    return found


def wanted_variants(brief: Brief, asked: tuple[str, ...]) -> tuple[str, ...]:
    """Return the variants to build: those asked for, or all, the sizes as written ('') first. Raises Refusal for unknown ones."""
    known = ("", *variants(brief))
    for name in asked:
        if name not in known and name != BASE:
            words, offered = f"{brief.slug} has no variant called “{name}”", ", ".join((BASE, *known[1:]))
            raise Refusal(UNKNOWN_VARIANT.found(words, subject=brief.slug, hint=f"it has: {offered}"))
    return tuple("" if name == BASE else name for name in asked) or known


def work(
    brief: Brief,
    variant: str = "",
    effort: str = "quick",
    sheets: tuple[SheetSize, ...] | None = None,
    settled: Callable[[str, Stored], None] | None = None,
) -> Worked:
    """Run a brief through the rooms up to ``material``; stop between rooms at the first that finds an error.

    ``effort``, ``sheets``, ``settled`` go to ``material``: how long to look, other sheets, who is told of verified layouts.
    """
    found = [*brief.findings, *_variant_names(brief)]
    if errors(found):
        return Worked(brief, None, (), None, None, tuple(found))
    design = work_out(brief, variant)
    found += design.findings
    if errors(found):
        return Worked(brief, design, (), None, None, tuple(found))
    parts, part_findings = make_parts(design)
    pieces, piece_findings = cut_pieces(design, parts)
    found += (*part_findings, *piece_findings)
    if errors(found):
        return Worked(brief, design, parts, None, None, tuple(found))

    def facts_at(size: Size) -> tuple[Fact, ...] | None:
        tried = try_out(brief, variant, size)
        return tried[1] if tried else None

    joined = suggest(design, put_together(design, parts), facts_at)
    made = tuple(piece for piece in pieces if piece.whole or piece.folded)
    joined = replace(joined, drawings=(*joined.drawings, *draw_parts(made)))
    needs = lay_out(design, pieces, effort, sheets, settled)
    found += (*joined.findings, *needs.findings, *text_findings(design, joined.facts))
    return Worked(brief, design, parts, joined, needs, tuple(found), pieces)


def _variant_names(brief: Brief) -> tuple[Finding, ...]:
    return tuple(
        VARIANT_NAME.found(
            f"a variant is called “{entry.key}”, which is what the sizes as written are called",
            subject=entry.key,
            hint="give the variant another name",
            place=entry.place,
        )
        for entry in brief.fields.table("variants").entries
        if entry.key == BASE
    )


def try_out(brief: Brief, variant: str, size: Size) -> tuple[Design, tuple[Fact, ...]] | None:
    """Return a variant and its facts with the value that ``size`` brings; None when it cannot be built so."""
    design = work_out(brief, variant, (size,))
    if errors(design.findings):
        return None
    parts, found = make_parts(design)
    return None if errors(found) else (design, facts_of(design, parts))


def compose_packs(worked: Worked, papers: tuple[str, ...] = ()) -> tuple[tuple[Pack, ...], tuple[Finding, ...]]:
    """Return a pack for each paper (those of the inputs when none is given, else those of the spec), and what ``pages`` found."""
    design, joined, needs = worked.design, worked.joined, worked.needs
    if design is None or joined is None or needs is None:
        return (), ()
    chosen = papers or worked.brief.inputs.papers or tuple(wish.name for wish in design.papers) or ("a4", "letter")
    sheets: list[Paper] = [paper_for(design, name) for name in chosen]
    inputs = worked.brief.inputs
    packs = tuple(compose(design, worked.pieces, joined, needs, paper, inputs) for paper in sheets)
    document = facts_document(design, worked.pieces, joined, needs, packs)
    found = tuple(f for pack in packs for f in pack.findings)
    return tuple(with_attachment(pack, document) for pack in packs), found


def file_stem(pack: Pack) -> str:
    """Return ``<slug>-<version>[-<variant>]-<paper>``."""
    middle = f"-{pack.variant}" if pack.variant else ""
    return f"{pack.slug}-{pack.version}{middle}-{pack.paper.name}"


def build_variant(brief: Brief, variant: str, previews: bool = True) -> Built:
    """Build one variant for all papers of the inputs in memory and prove every PDF. Nothing is written here."""
    worked = work(brief, variant)
    if errors(worked.findings):
        return Built(brief.slug, variant, worked, (), (), worked.findings)
    packs, page_findings = compose_packs(worked)
    found = list(dict.fromkeys((*worked.findings, *page_findings)))
    if errors(found):
        return Built(brief.slug, variant, worked, (), (), tuple(found))
    built: list[BuiltPack] = []
    outputs: list[Output] = []
    folder = variant or BASE
    for pack in packs:
        pdf = Output(f"{file_stem(pack)}.pdf", write_pdf(pack))
        proof = prove(pdf.data, pack.promises, pdf.path)
        found += [replace(f, place=f.place or Place(pdf.path)) for f in proof.findings]
        built.append(BuiltPack(pack, pdf, proof))
        if previews and not errors(found):
            for number, png in enumerate(render_previews(pdf.data), 1):
                outputs.append(Output(f"previews/{folder}-{pack.paper.name}/page-{number:02}.png", png))
    if errors(found):
        return Built(brief.slug, variant, worked, tuple(built), (), tuple(found))
    outputs = [*(b.pdf for b in built), *_cut_files(worked, folder), *outputs, _facts(packs, variant)]
    return Built(brief.slug, variant, worked, tuple(built), tuple(outputs), tuple(found))


def _cut_files(worked: Worked, folder: str) -> list[Output]:
    out = [Output(f"cut-files/{folder}/part-{p.letter.lower()}-{p.id}.svg", write_part_svg(p)) for p in worked.pieces]
    for need in worked.needs.yields if worked.needs else ():
        size = f"{round(need.sheet.width, 1):g}x{round(need.sheet.height, 1):g}mm"
        for number, layout in enumerate(need.sheets, 1):
            name = f"cut-files/{folder}/sheet-{need.board}-{size}-{number}.svg"
            out.append(Output(name, write_sheet_svg(layout, worked.pieces)))
    if worked.needs and worked.needs.yields:
        table = yield_csv(worked.needs, worked.pieces)
        out.append(Output(f"cut-files/{folder}/cut-yield.csv", table.encode("utf-8")))
    return out


def _facts(packs: tuple[Pack, ...], variant: str) -> Output:
    document = next(a.data for a in packs[0].attachments if a.name == "facts.json")
    return Output(f"facts-{variant}.json" if variant else "facts.json", document)


def promises_of(brief: Brief, pdf_name: str) -> Worked | Pack | None:
    """Return the pack that a design promises under this PDF file name.

    None when it promises no such file; the work as far as it got when the design has errors. Raises Refusal for an unknown paper.
    """
    for variant in ("", *variants(brief)):
        stem = "-".join(text for text in (brief.slug, brief.fields.text("version"), variant) if text) + "-"
        paper = pdf_name.removeprefix(stem).removesuffix(".pdf")
        if not pdf_name.startswith(stem) or "-" in paper or pdf_name == paper:
            continue
        worked = work(brief, variant)
        design, joined, needs = worked.design, worked.joined, worked.needs
        if errors(worked.findings) or design is None or joined is None or needs is None:
            return worked
        return _promised(worked, paper_for(design, paper))
    return None


def _promised(worked: Worked, paper: Paper) -> Pack | None:
    """Return the pack of one paper with the records that its file may carry: built with all papers of the spec, or alone."""
    (alone, *_), _ = compose_packs(worked, (paper.name,))
    together, _ = compose_packs(worked, tuple(wish.name for wish in worked.design.papers) if worked.design else ())
    pack = next((p for p in together if p.paper.name == paper.name), alone)
    record = next(a.data for a in alone.attachments)
    promise = next(a for a in pack.promises.attachments)
    also = replace(promise, or_else=(sha256(record).hexdigest(),))
    return replace(pack, promises=replace(pack.promises, attachments=(also,)))


def without(built: Built, finding: Finding) -> Built:
    """Return the result with nothing to write and one more finding: the files could not be put in place."""
    return replace(built, outputs=(), findings=(*built.findings, finding))


def bundle_of(builds: tuple[Built, ...]) -> Bundle:
    """Return the release of one design: the files of all its variants, proof record and listing text. All must be good."""
    first = builds[0].packs[0].pack
    offers = tuple(
        Offer(design, needs, tuple((one.pack, one.proof) for one in built.packs))
        for built in builds
        if (design := built.worked.design) is not None and (needs := built.worked.needs) is not None
    )
    files = [(output.path, output.data) for built in builds for output in built.outputs]
    files.append(("proof.json", proof_record(offers)))
    files.append(("LISTING.md", listing_text(listing_of(offers)).encode("utf-8")))
    return make_bundle(first.slug, first.version, tuple(files))
