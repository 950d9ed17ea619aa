"""The only file that knows all rooms: it calls them in order."""

from collections.abc import Callable
from dataclasses import replace
from functools import partial
from pathlib import Path

from publisher.basics import Cure, Finding, Place, Refusal, Severity, errors, record
from publisher.brief import (
    STAGES,
    Brief,
    SchemaParameter,
    SchemaParts,
    SchemaShape,
    Table,
    build_schema,
    picture_words,
    with_words,
)
from publisher.design import (
    CONSTANT_WORDS,
    USUAL_PAPERS,
    Design,
    Fact,
    SheetSize,
    Size,
    asked_variants,
    function_words,
    gaps,
    joint_infos,
    named_sheets,
    text_findings,
    unit_words,
    unsigned,
    variants,
    work_out,
)
from publisher.geometry import Part, ShapeInfo, cut_pieces, make_parts, opening_infos, shape_infos, surface_infos
from publisher.joints import (
    TRIED_WHOLE,
    Joined,
    Member,
    Tried,
    as_glued,
    compare_members,
    draw_parts,
    facts_of,
    put_together,
    suggest,
    try_cures,
    with_promises,
)
from publisher.material import BoardNeeds, ListedDesign, Shared, Stored, lay_out, shop_together, yield_csv
from publisher.pages import (
    Pack,
    PageCount,
    Paper,
    compose,
    count_pages,
    material_words,
    paper_for,
    papers,
    record_of,
    tool_words,
    with_attachment,
)
from publisher.press import render_previews, write_part_svg, write_pdf, write_sheet_svg
from publisher.proof import Proof, prove
from publisher.release import (
    Bundle,
    Offer,
    Output,
    bundle_of,
    name_findings,
    pack_name,
    pack_stem,
    paper_of,
    part_name,
    place_bundle,
    preview_name,
    record_name,
    refuse_trial,
    sheet_name,
    trial_name,
    yield_name,
)

ROOMS = (
    "basics", "brief", "design", "geometry", "joints", "material", "pages", "press", "proof", "release", "ruler",
)  # fmt: skip


@record
class Worked:
    """One variant of one design, as far as it got: a room that found an error is the last one that ran."""

    brief: Brief
    variant: str
    design: Design | None = None
    parts: tuple[Part, ...] = ()
    joined: Joined | None = None
    needs: BoardNeeds | None = None
    findings: tuple[Finding, ...] = ()
    pieces: tuple[Part, ...] = ()  # what is cut from board: the parts, those that are split in their pieces and plates


@record
class BuiltPack:
    """One pack for one paper: the pages, the finished PDF, its record, what proof says of it."""

    pack: Pack
    pdf: Output
    record: Output
    proof: Proof


@record
class Built:
    """One variant, built for all its papers. ``outputs`` are all its files; () when an error stopped it."""

    worked: Worked
    packs: tuple[BuiltPack, ...]
    outputs: tuple[Output, ...]
    findings: tuple[Finding, ...]

    @property
    def good(self) -> bool:
        """Whether no error was found."""
        return not errors(self.findings)

    @property
    def slug(self) -> str:
        """The design's name."""
        return self.worked.brief.slug

    @property
    def variant(self) -> str:
        """The variant's name; '' for the sizes as written."""
        return self.worked.variant

    @property
    def pages(self) -> int:
        """The pages of all its packs."""
        return sum(len(one.pack.pages) for one in self.packs)

    @property
    def sheets(self) -> int:
        """The sheets of board that are bought for it: of each board those of the first size that takes every part."""
        needed = self.worked.needs.yields if self.worked.needs is not None else ()
        return sum({one.board: len(one.sheets) for one in reversed(needed) if one.sheets and not one.left_out}.values())

    @property
    def offer(self) -> Offer:
        """What ``release`` takes. Raises ValueError when the variant could not be built."""
        design, joined, needs = self.worked.design, self.worked.joined, self.worked.needs
        if not self.good or design is None or joined is None or needs is None:
            raise ValueError("what could not be built cannot be offered")
        packs = tuple((one.pack, one.proof) for one in self.packs)
        return Offer(design, needs, packs, self.outputs, joined.boards, self.worked.brief.inputs, joined.facts)


@record
class Released:
    """One design, released: ``bundle`` stands at ``folder``; None when a variant had an error. ``new``: not released before.

    ``others``: files that lie in the folder and are none of the release."""

    builds: tuple[Built, ...]
    bundle: Bundle | None = None
    folder: Path | None = None
    new: bool = False
    others: tuple[str, ...] = ()


def work(
    brief: Brief,
    variant: str = "",
    effort: str = "quick",
    sheets: tuple[SheetSize, ...] | None = None,
    settled: Callable[[str, Stored], None] | None = None,
    advise: bool = False,
) -> Worked:
    """Run a brief through the rooms up to ``material``; stop between rooms at the first that finds an error.

    ``effort``, ``sheets``, ``settled`` go to ``material``: how long to look, other sheets, who is told of verified layouts.
    ``advise``: every value that a hint names is tried with the whole design, and not only a few.
    """
    found = list(brief.findings)
    if errors(found):
        return Worked(brief, variant, findings=tuple(found))
    design = work_out(brief, variant)
    found += (*design.findings, *gaps(design, brief.fields))
    if errors(found):
        return Worked(brief, variant, design, findings=tuple(found))
    parts, part_findings = make_parts(design)
    parts = as_glued(design, parts)
    pieces, piece_findings = cut_pieces(design, parts)
    found += (*part_findings, *piece_findings)
    if errors(found):
        return Worked(brief, variant, design, parts, findings=tuple(found))

    def facts_at(size: Size) -> tuple[Fact, ...] | None:
        tried = try_out(brief, variant, size)
        return tried[1] if tried else None

    joined = put_together(design, parts)
    made = tuple(piece for piece in pieces if piece.whole or piece.folded)
    needs = lay_out(
        design, pieces, effort, sheets, settled, trial=bool(brief.inputs.sets), versions=brief.inputs.versions
    )
    most = None if advise else TRIED_WHOLE
    spent: list[Size] = []

    def whole(size: Size) -> Tried:
        spent.append(size)
        return try_whole(make_at(brief, variant, (size,)), brief)

    def written(cure: Cure) -> Tried | None:
        there = with_words(brief, cure)
        return None if there is None else try_whole(make_at(there, variant), brief)

    now = Tried(needs.findings, _sheets(needs))
    joined = suggest(design, joined, facts_at, whole, most, now)
    joined = with_promises(design, pieces, replace(joined, drawings=(*joined.drawings, *draw_parts(made))))
    found += (*joined.findings, *needs.findings, *text_findings(design, joined.facts))
    found += name_findings(brief, design, pieces, needs)
    now = replace(now, findings=tuple(found))
    said = try_cures(now, written, None if most is None else most - len(spent))
    return Worked(brief, variant, design, parts, joined, needs, said, pieces)


def try_out(brief: Brief, variant: str, size: Size) -> tuple[Design, tuple[Fact, ...]] | None:
    """Return a variant and its facts with the value that ``size`` brings; None when it cannot be built so."""
    design = work_out(brief, variant, (size,))
    if errors(design.findings):
        return None
    parts, found = make_parts(design)
    return None if errors(found) else (design, facts_of(design, parts))


@record
class Made:
    """One variant with other values of some sizes, as far as its parts: ``pieces`` are what is cut. What stopped it is in the findings."""

    design: Design | None = None
    parts: tuple[Part, ...] = ()
    pieces: tuple[Part, ...] = ()
    findings: tuple[Finding, ...] = ()


def make_at(brief: Brief, variant: str, sizes: tuple[Size, ...] = ()) -> Made:
    """Return a variant's parts with the values that ``sizes`` bring; ``findings`` has an error where they cannot be made so."""
    design = work_out(brief, variant, sizes)
    found = design.findings
    if errors(found):
        return Made(findings=found)
    parts, part_findings = make_parts(design)
    parts = as_glued(design, parts)
    pieces, piece_findings = cut_pieces(design, parts)
    return Made(design, parts, pieces, (*found, *part_findings, *piece_findings))


def try_whole(made: Made, brief: Brief) -> Tried:
    """Return all that is found in a variant that was made otherwise than it stands: facts first, the boards' layouts only when nothing
    before them is wrong."""
    if made.design is None or errors(made.findings):
        return Tried(made.findings)
    found = (*made.findings, *put_together(made.design, made.parts, drawn=False).findings)
    if errors(found):
        return Tried(found)
    needs = lay_out(made.design, made.pieces, trial=True, versions=brief.inputs.versions)
    return Tried((*found, *needs.findings), _sheets(needs))


def _sheets(needs: BoardNeeds) -> tuple[tuple[str, int], ...]:
    """Return how many of each sheet the whole list takes; () where a part fits one of them not."""
    if any(one.left_out for one in needs.yields):
        return ()
    several = len({one.board for one in needs.yields}) > 1
    return tuple(
        (f"{one.board} {one.sheet.label}" if several else one.sheet.label, len(one.sheets)) for one in needs.yields
    )


def join_made(design: Design, made: Made) -> Joined:
    """Put parts together for figures alone: all but the drawings."""
    return with_promises(design, made.pieces, put_together(design, made.parts, drawn=False))


def count_papers(design: Design, made: Made, joined: Joined) -> tuple[PageCount, ...]:
    """Return how many template and tile pages parts take on each paper of the spec.

    Raises Refusal for an unknown paper or one that holds no page.
    """
    return tuple(count_pages(design, made.pieces, joined, paper_for(design, name)) for name in _papers(design))


def _papers(design: Design, wanted: tuple[str, ...] = ()) -> tuple[str, ...]:
    """Return the papers that are wanted, else those of the spec."""
    return wanted or tuple(wish.name for wish in design.papers) or USUAL_PAPERS


def compose_packs(worked: Worked, wanted: tuple[str, ...] = ()) -> tuple[tuple[Pack, ...], tuple[Finding, ...]]:
    """Return a pack for each paper, and what ``pages`` found: those wanted, else those of the inputs, else those of the spec.

    A pack carries the record of itself only: it has the same bytes whatever other papers are composed with it. Raises
    Refusal for an unknown paper.
    """
    design, joined, needs = worked.design, worked.joined, worked.needs
    if design is None or joined is None or needs is None:
        return (), ()
    chosen = _papers(design, wanted or worked.brief.inputs.papers)
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


def build(brief: Brief, variant: str = "", previews: bool = True) -> Built:
    """Call the rooms in order, from a brief to one variant's proved files for all papers of the inputs. Nothing is written.

    A pure function of the brief's inputs: the same files in any process. Raises Refusal for an unknown paper.
    """
    worked = work(brief, variant)
    needs = worked.needs
    if errors(worked.findings) or needs is None:
        return Built(worked, (), (), worked.findings)
    packs, page_findings = compose_packs(worked)
    found = list(dict.fromkeys((*worked.findings, *page_findings)))
    if errors(found):
        return Built(worked, (), (), tuple(found))
    trial = trial_name([worked.design] if worked.design else [], brief.inputs.sets)
    built = tuple(_written(pack, trial) for pack in packs)
    found += [replace(f, place=f.place or Place(one.pdf.path)) for one in built for f in one.proof.findings]
    if errors(found):
        return Built(worked, built, (), tuple(found))
    files = [file for one in built for file in (one.pdf, one.record)]
    pictures = [picture for one in built for picture in _previews(one, variant)] if previews else []
    outputs = (*files, *_cut_files(variant, worked.pieces, needs), *pictures)
    return Built(worked, built, outputs, tuple(found))


def _written(pack: Pack, trial: str) -> BuiltPack:
    """Write a pack as PDF, and prove it."""
    stem = pack_stem(pack.slug, pack.version, pack.variant, trial)
    pdf = Output(pack_name(stem, pack.paper.name), write_pdf(pack))
    record = Output(record_name(stem, pack.paper.name), pack.attachments[0].data)
    return BuiltPack(pack, pdf, record, prove(pdf.data, pack.promises, pdf.path))


def _previews(one: BuiltPack, variant: str) -> list[Output]:
    pictures = enumerate(render_previews(one.pdf.data), 1)
    return [Output(preview_name(variant, one.pack.paper.name, number), png) for number, png in pictures]


def _cut_files(variant: str, pieces: tuple[Part, ...], needs: BoardNeeds) -> list[Output]:
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
    builds = tuple(build(brief, variant) for variant in asked_variants(brief))
    if not all(built.good for built in builds):
        return Released(builds)
    bundle = bundle_of(tuple(built.offer for built in builds))
    if told is not None:
        told(bundle)
    placed = place_bundle(bundle, releases)
    return Released(builds, bundle, placed.folder, placed.new, placed.others)


def promised_by(brief: Brief, pdf_name: str) -> Pack | None:
    """Return the pack that a design promises under this PDF file name; None when it promises no such file.

    Raises Refusal when the design has errors, or for an unknown paper.
    """
    own = tuple(paper.text("name") for paper in brief.fields.row("papers") if isinstance(paper, Table))
    for variant in ("", *variants(brief)):
        trial = trial_name([work_out(brief, variant)], brief.inputs.sets) if brief.inputs.sets else ""
        paper = paper_of(pdf_name, pack_stem(brief.slug, brief.fields.text("version"), variant, trial), own)
        if paper is None:
            continue
        worked = work(brief, variant)
        if errors(worked.findings):
            raise Refusal(*errors(worked.findings))
        (pack,), _ = compose_packs(worked, (paper,))
        return pack
    return None


def shop(works: tuple[Worked, ...], effort: str = "quick") -> tuple[Shared, ...]:
    """Lay out together what several designs, or variants, cut from the same board. Those that could not be laid out are left out."""
    listed = (
        ListedDesign(f"{one.brief.slug} {one.variant}".strip(), one.design, one.pieces, one.needs)
        for one in works
        if one.design is not None and one.needs is not None
    )
    return shop_together(tuple(listed), effort)


def compare_family(works: tuple[Worked, ...]) -> tuple[Finding, ...]:
    """Return what does not meet among the designs that say at which sizes they meet others."""
    return compare_members(
        tuple(
            Member(one.design, one.joined.facts, partial(try_out, one.brief, one.variant))
            for one in works
            if one.design is not None and one.joined is not None and one.design.meets
        )
    )


def fresh_schema() -> str:
    """Return the schema's text, made anew from the registered shapes, openings, surfaces, tools, materials and papers."""
    return build_schema(
        SchemaParts(
            shapes=tuple(map(_schema_shape, shape_infos())),
            openings=tuple(map(_schema_shape, opening_infos())),
            tools=tuple((t.key, t.name) for t in tool_words()),
            materials=tuple((m.key, m.name) for m in material_words()),
            papers=tuple((p.name, p.title) for p in papers()),
            surfaces=tuple(map(_schema_shape, surface_infos())),
        )
    )


@record
class WordList:
    """Words of one kind with their meanings; ``used``: where they stand in a spec."""

    name: str
    used: str
    words: tuple[tuple[str, str], ...]


def word_lists() -> tuple[WordList, ...]:
    """Return every word that has a meaning in a spec, as it is registered."""
    shapes = shape_infos()
    return (
        WordList("functions", "in expressions, such as height: sqrt(run^2 + rise^2)", function_words()),
        WordList("constants", "in expressions", CONSTANT_WORDS),
        WordList("units", "behind a number, such as 3/16 in", unit_words()),
        WordList(
            "shapes", "shape: of a part; sizes: publisher shapes NAME", tuple((i.name, i.meaning) for i in shapes)
        ),
        WordList(
            "origins", "where a shape has its origin, for at: and for turns", tuple((i.name, i.origin) for i in shapes)
        ),
        WordList("openings", "kind: under openings: of a part", tuple((i.name, i.meaning) for i in opening_infos())),
        WordList("surfaces", "pattern: under surface: of a part", tuple((i.name, i.meaning) for i in surface_infos())),
        WordList("joints", "joint: of a join", tuple((i.name, i.meaning) for i in joint_infos())),
        WordList("tools", "tools:, and uses: of a step", tuple((t.key, t.name) for t in tool_words())),
        WordList(
            "materials", "name: under materials:, and uses: of a step", tuple((m.key, m.name) for m in material_words())
        ),
        WordList("stages", "stage: of a step, in the usual order", STAGES),
        WordList("pictures", "picture: of a step, and cover:", picture_words()),
        WordList("papers", "papers:, and --paper", tuple((p.name, _paper(p)) for p in papers())),
        WordList("sheets", "sheets: of a board, and --sheet, beside sizes such as 20 x 30 in", named_sheets()),
    )


def _paper(paper: Paper) -> str:
    return f"{paper.title}, {paper.width:g} x {paper.height:g} mm"


def _schema_shape(info: ShapeInfo) -> SchemaShape:
    parameters = tuple(
        SchemaParameter(p.name, p.kind, p.meaning, p.default is None, p.choices) for p in info.parameters
    )
    return SchemaShape(info.name, info.meaning, parameters, info.openings, info.layered)
