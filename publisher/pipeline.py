"""The only file that knows all rooms: it calls them in order and puts the finished files in place."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from pathlib import Path

from publisher.basics import Finding, Place, Refusal, Rule, Severity, errors
from publisher.brief import Brief, read_brief
from publisher.design import Design, Fact, SheetSize, text_findings, variants, work_out
from publisher.geometry import Part, make_parts
from publisher.joints import Joined, facts_of, put_together, suggest
from publisher.material import BoardNeeds, Stored, lay_out, yield_csv
from publisher.pages import Pack, Paper, cautions_for, compose, facts_document, paper_for, thing, with_attachment
from publisher.press import render_previews, write_part_svg, write_pdf, write_sheet_svg
from publisher.proof import Proof, prove
from publisher.release import Bundle, Listing, SheetsToBuy, listing_text, make_bundle

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
NO_SPEC = Rule(
    "pipeline/no-spec",
    "There is something to build",
    "A folder without a design would end in an empty success.",
    Severity.ERROR,
)


@dataclass(frozen=True, slots=True)
class Worked:
    """One variant of one design, as far as it got: a room that found an error is the last one that ran."""

    brief: Brief
    design: Design | None
    parts: tuple[Part, ...]
    joined: Joined | None
    needs: BoardNeeds | None
    findings: tuple[Finding, ...]


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
            offered = ", ".join((BASE, *known[1:]))
            raise Refusal(
                UNKNOWN_VARIANT.found(
                    f"{brief.slug} has no variant called “{name}”", subject=brief.slug, hint=f"it has: {offered}"
                )
            )
    return tuple("" if name == BASE else name for name in asked) or known


def work(
    brief: Brief,
    variant: str = "",
    sets: tuple[tuple[str, str], ...] = (),
    effort: str = "quick",
    sheets: tuple[SheetSize, ...] | None = None,
    settled: Callable[[str, Stored], None] | None = None,
) -> Worked:
    """Run a brief through the rooms up to ``material``; stop between rooms at the first that finds an error.

    ``effort``, ``sheets`` and ``settled`` go to ``material``: how long to look, other sheets than those on sale, who is told
    of each verified layout.
    """
    found = list(brief.findings)
    if errors(found):
        return Worked(brief, None, (), None, None, tuple(found))
    design = work_out(brief, variant, sets)
    found += design.findings
    if errors(found):
        return Worked(brief, design, (), None, None, tuple(found))
    parts, part_findings = make_parts(design)
    found += part_findings
    if errors(found):
        return Worked(brief, design, parts, None, None, tuple(found))

    def facts_at(name: str, text: str) -> tuple[Fact, ...] | None:
        tried = try_out(brief, variant, sets, (name, text))
        return tried[1] if tried else None

    joined = suggest(design, put_together(design, parts), facts_at)
    needs = lay_out(design, parts, effort, sheets, settled)
    found += (*joined.findings, *needs.findings, *text_findings(design, joined.facts))
    return Worked(brief, design, parts, joined, needs, tuple(found))


def try_out(
    brief: Brief, variant: str, sets: tuple[tuple[str, str], ...], size: tuple[str, str]
) -> tuple[Design, tuple[Fact, ...]] | None:
    """Return a variant and its facts with one more size set; None when it cannot be built so."""
    design = work_out(brief, variant, (*(pair for pair in sets if pair[0] != size[0]), size))
    if errors(design.findings):
        return None
    parts, found = make_parts(design)
    return None if errors(found) else (design, facts_of(design, parts))


def compose_packs(worked: Worked, papers: tuple[str, ...]) -> tuple[tuple[Pack, ...], tuple[Finding, ...]]:
    """Return a pack for each paper (those of the spec when none is given), and what ``pages`` found."""
    design, joined, needs = worked.design, worked.joined, worked.needs
    if design is None or joined is None or needs is None:
        return (), ()
    chosen = papers or tuple(wish.name for wish in design.papers) or ("a4", "letter")
    sheets: list[Paper] = [paper_for(design, name) for name in chosen]
    packs = tuple(compose(design, worked.parts, joined, needs, paper) for paper in sheets)
    document = facts_document(design, worked.parts, joined, needs, packs)
    found = tuple(f for pack in packs for f in pack.findings)
    return tuple(with_attachment(pack, document) for pack in packs), found


def file_stem(pack: Pack) -> str:
    """Return ``<slug>-<version>[-<variant>]-<paper>``."""
    middle = f"-{pack.variant}" if pack.variant else ""
    return f"{pack.slug}-{pack.version}{middle}-{pack.paper.name}"


def build_variant(
    brief: Brief,
    variant: str,
    papers: tuple[str, ...] = (),
    sets: tuple[tuple[str, str], ...] = (),
    previews: bool = True,
) -> Built:
    """Build one variant for all papers in memory and prove every PDF. Nothing is written here."""
    worked = work(brief, variant, sets)
    if errors(worked.findings):
        return Built(brief.slug, variant, worked, (), (), worked.findings)
    packs, page_findings = compose_packs(worked, papers)
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
    out = [Output(f"cut-files/{folder}/part-{p.letter.lower()}-{p.id}.svg", write_part_svg(p)) for p in worked.parts]
    for need in worked.needs.yields if worked.needs else ():
        size = f"{need.sheet.width:.0f}x{need.sheet.height:.0f}mm"
        for number, layout in enumerate(need.sheets, 1):
            name = f"cut-files/{folder}/sheet-{need.board}-{size}-{number}.svg"
            out.append(Output(name, write_sheet_svg(layout, worked.parts)))
    if worked.needs and worked.needs.yields:
        table = yield_csv(worked.needs, worked.parts)
        out.append(Output(f"cut-files/{folder}/cut-yield.csv", table.encode("utf-8")))
    return out


def _facts(packs: tuple[Pack, ...], variant: str) -> Output:
    document = next(a.data for a in packs[0].attachments if a.name == "facts.json")
    return Output(f"facts-{variant}.json" if variant else "facts.json", document)


def read(folder: Path) -> Brief:
    """Read a spec folder (the door of the first room, for commands that need no more)."""
    return read_brief(folder)


def promises_of(folder: Path, pdf_name: str, sets: tuple[tuple[str, str], ...] = ()) -> Pack | None:
    """Return the pack that a spec folder promises under this PDF file name, or None when it promises no such file."""
    brief = read(folder)
    for variant in ("", *variants(brief)):
        worked = work(brief, variant, sets)
        if worked.design is None or errors(worked.findings):
            continue
        for pack in compose_packs(worked, ())[0]:
            if f"{file_stem(pack)}.pdf" == pdf_name:
                return pack
    return None


def without(built: Built, finding: Finding) -> Built:
    """Return the result with nothing to write and one more finding: the files could not be put in place."""
    return replace(built, outputs=(), findings=(*built.findings, finding))


def bundle_of(builds: tuple[Built, ...]) -> Bundle:
    """Return the release of one design: the files of all its variants, proof records and the listing text. All must be good."""
    first = builds[0].packs[0].pack
    files = [(output.path, output.data) for built in builds for output in built.outputs]
    files.append(("LISTING.md", listing_text(_listing(builds)).encode("utf-8")))
    return make_bundle(first.slug, first.version, tuple(files))


def _listing(builds: tuple[Built, ...]) -> Listing:
    first = builds[0].packs[0].pack
    designs = [built.worked.design for built in builds if built.worked.design is not None]
    keys = (*designs[0].tools, *(m.name for m in designs[0].materials if m.name))
    return Listing(
        title=designs[0].title,
        version=first.version,
        designer=first.designer,
        licence=first.licence,
        summary=first.summary,
        pages=tuple(
            (design.variant_title, one.pack.paper.title, len(one.pack.pages))
            for built, design in zip(builds, designs, strict=True)
            for one in built.packs
        ),
        boards=tuple(dict.fromkeys((b.id, b.thickness) for design in designs for b in design.boards)),
        sheets=tuple(
            SheetsToBuy(design.variant_title, need.board, need.sheet.label, len(need.sheets))
            for built, design in zip(builds, designs, strict=True)
            for need in (built.worked.needs.yields if built.worked.needs else ())
            if need.sheets
        ),
        tools=tuple(found.name for key in designs[0].tools if (found := thing(key))),
        materials=tuple(found.name for m in designs[0].materials if (found := thing(m.name))),
        cautions=tuple(f"{c.title}: {c.text}" for c in cautions_for(keys)),
    )
