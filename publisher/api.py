"""The public door for programs: one function for what each command does. All else in the package may change without notice.

Comes in: folders, bytes, and values that this door gave. Goes out: frozen records, in mm and degrees. What is wrong with the work
stands in the records as findings; a ``Refusal`` is raised when something cannot be used at all. Never: prints, ends the process,
writes a file but by ``new``, ``place``, ``release``, ``keep_spec`` and the two functions that keep layouts.

Importing it loads no room: each function loads those that it calls.
"""

from __future__ import annotations

from collections.abc import Callable, Generator, Iterable, Iterator
from pathlib import Path
from types import ModuleType
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from publisher.basics import Finding, Promises
    from publisher.batch import BuildOutcome, OwnFault
    from publisher.brief import STARTS, Brief, InputFile, Inputs
    from publisher.design import STANDARD, Design, Fact, JointInfo, Kind, NeedPlan, Size, say
    from publisher.geometry import DRAWING_BYTES, Look, ParameterInfo, Part, ShapeInfo
    from publisher.joints import Joined, limit_of, margin_of, spare_words, spread_ends, takes_words
    from publisher.material import BoardNeeds, Shared, Stored, Yield, gain
    from publisher.pages import Pack, Page, PageCount
    from publisher.pipeline import Built, BuiltPack, Released, WordList, Worked
    from publisher.proof import Measured, Proof
    from publisher.release import Bundle, Left, Offer, Output, PlacedSet
    from publisher.ruler import (
        LONG_RULERS,
        TOOLS,
        UNITS,
        AllowedScale,
        BoardVerdict,
        PackFacts,
        Reading,
        Scale,
        Verdict,
        read_length,
        read_thickness,
        say_range,
    )  # fmt: skip
    from publisher.sweep import Jump, Missed, Saving, Sweep, SweepRow, Told, VariedNeed, VariedSheet
    from publisher.upgrade import Upgraded

STAGES = ("sizes", "parts", "assembly", "layouts", "pages")  # what may be shown, in the order of the work
LAYOUTS = "layouts.json"  # the layouts that are kept beside a spec

__all__ = [
    "DRAWING_BYTES",
    "LAYOUTS",
    "LONG_RULERS",
    "STAGES",
    "STANDARD",
    "STARTS",
    "TOOLS",
    "UNITS",
    "AllowedScale",
    "BoardNeeds",
    "BoardVerdict",
    "Brief",
    "BuildOutcome",
    "Built",
    "BuiltPack",
    "Bundle",
    "Design",
    "Fact",
    "InputFile",
    "Inputs",
    "Joined",
    "JointInfo",
    "Jump",
    "Kind",
    "Left",
    "Look",
    "Measured",
    "Missed",
    "NeedPlan",
    "Output",
    "OwnFault",
    "Pack",
    "PackFacts",
    "Page",
    "PageCount",
    "ParameterInfo",
    "Part",
    "PlacedSet",
    "Proof",
    "Reading",
    "Released",
    "Saving",
    "Scale",
    "ShapeInfo",
    "Shared",
    "Size",
    "Stored",
    "Sweep",
    "SweepRow",
    "Told",
    "Upgraded",
    "VariedNeed",
    "VariedSheet",
    "Verdict",
    "WordList",
    "Worked",
    "Yield",
    "brief_of",
    "build",
    "build_many",
    "compare",
    "compose",
    "designs",
    "discard_trials",
    "fault_of",
    "fresh_schema",
    "gain",
    "is_placed",
    "is_released",
    "joints",
    "keep_layouts",
    "keep_spec",
    "keep_verified",
    "limit_of",
    "margin_of",
    "measure",
    "measure_board",
    "new",
    "openings",
    "outline",
    "pack_facts",
    "picture",
    "place",
    "plot_sweep",
    "promised",
    "prove",
    "read",
    "read_length",
    "read_thickness",
    "release",
    "say",
    "say_range",
    "schema",
    "settle",
    "shapes",
    "shop",
    "show",
    "show_json",
    "spare_words",
    "spread_ends",
    "surfaces",
    "takes_words",
    "upgrade",
    "variants",
    "vary",
    "with_pages",
    "words",
    "work",
    "yield_table",
]


def designs(folder: Path) -> tuple[Path, ...]:
    """Return the design folders that ``folder`` names: itself, or those in it, by name. Raises Refusal when there are none."""
    from publisher.brief import spec_folders

    return spec_folders(folder)


def read(folder: Path, sets: tuple[tuple[str, str], ...] = (), papers: tuple[str, ...] = ()) -> Brief:
    """Read a design's folder, once: all that a build needs is then in ``Brief.inputs``, which any process can build from.

    ``sets``: sizes with values as a designer writes them, (("board", "3/16 in"),), over those of the spec and its variants.
    ``papers``: names in small letters; () for those of the spec. Raises Refusal when there is no spec that can be read.
    """
    from publisher.brief import read_brief

    return read_brief(folder, sets, papers)


def brief_of(inputs: Inputs) -> Brief:
    """Return the brief of inputs that were read before, here or in another process. No file is opened."""
    from publisher.brief import brief_of

    return brief_of(inputs)


def variants(brief: Brief, asked: tuple[str, ...] = ()) -> tuple[str, ...]:
    """Return the variants that are asked for, or all, the sizes as written ('') first. Raises Refusal for an unknown one."""
    from publisher.design import asked_variants

    return asked_variants(brief, asked)


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


def vary(
    brief: Brief,
    variant: str,
    ranges: tuple[str, ...],
    values: int | None = None,
    workers: int = 1,
    told: Told | None = None,
) -> Sweep:
    """Try one size or two over their ranges ("reach = 80 mm to 120 mm"): what needs leave to spare, what sheets, templates and boards
    do at each value, where that jumps, and the best value. Nothing is stored.

    ``values``: how many of each range; 41 of one, 9 each of two when not given. ``workers``: processes that share the work; with
    more than one, a program of its own starts it under ``if __name__ == "__main__"``. ``told`` hears how much of the work is done, of
    how much. A KeyboardInterrupt ends it: what is finished is returned. Raises Refusal for ranges that cannot be used.
    """
    from publisher import sweep

    return sweep.vary(brief, variant, ranges, values, workers, told)


def plot_sweep(sweep: Sweep, png: bool = False) -> bytes:
    """Return a plot of a sweep of one size, in black on white, as SVG or PNG. Raises ValueError for two sizes, or fewer than two rows."""
    from publisher.press import write_plot_png, write_plot_svg
    from publisher.sweep import plot_of

    return (write_plot_png if png else write_plot_svg)(plot_of(sweep))


def compare(works: tuple[Worked, ...]) -> tuple[Finding, ...]:
    """Return what does not meet among the designs that say at which sizes they meet others, on every board of theirs."""
    from publisher.pipeline import compare_family

    return compare_family(works)


def compose(worked: Worked) -> tuple[tuple[Pack, ...], tuple[Finding, ...]]:
    """Return the pages of a pack for each paper of the inputs, and what was found on them; () when a room before found an error.

    Raises Refusal for an unknown paper.
    """
    from publisher.pipeline import compose_packs

    return compose_packs(worked)


def with_pages(worked: Worked) -> Worked:
    """Return what was worked out with all that is found on its pages too, as ``build`` finds it, for each paper of the inputs.

    Raises Refusal for an unknown paper.
    """
    from publisher import pipeline

    return pipeline.with_pages(worked)


def build(brief: Brief, variant: str = "", previews: bool = True) -> Built:
    """Build one variant for all papers of the inputs, in memory, and prove every PDF: a pure function of the inputs.

    Raises Refusal for an unknown paper.
    """
    from publisher import pipeline

    return pipeline.build(brief, variant, previews)


def build_many(wanted: Iterable[tuple[Brief, str]], workers: int = 1) -> Generator[BuildOutcome, None, None]:
    """Build many, (brief, variant), and yield the outcome of each in their order: what stops one does not stop the others.

    ``workers``: processes that share the work; with more than one, a program of its own starts it under ``if __name__ ==
    "__main__"``. To be closed (``contextlib.closing``) by whoever leaves it early: that ends its processes.
    """
    from publisher import batch

    return batch.build_many(wanted, workers)


def fault_of(error: Exception) -> OwnFault:
    """Return what is said of an error of this program, and where it was."""
    from publisher.batch import fault_of

    return fault_of(error)


def place(builds: Built | tuple[Built, ...], packs: Path) -> PlacedSet:
    """Put the files of one design's good builds into ``packs/<slug>``, as one set with one list, all or none, however the run ends.

    Packs of other variants and papers stay when they were made of the same files by the same program; else they are removed:
    ``removed`` says which and why. What was built with other sizes goes into a folder of its own and replaces nothing.
    Raises Refusal, with nothing changed, when something cannot be written; ValueError when a build has errors.
    """
    from publisher.release import place_packs

    return place_packs(_offers(builds), packs)


def is_placed(builds: Built | tuple[Built, ...], packs: Path) -> bool:
    """Look whether all files of good builds stand in ``packs``. Raises Refusal as ``settle`` does."""
    from publisher.release import is_placed

    return is_placed(_offers(builds), packs)


def settle(folder: Path) -> None:
    """Finish, or take back, what a run that was killed left unfinished in a folder of packs or releases; elsewhere do nothing.

    Raises Refusal when it cannot be done, or when that run is alive and does not end.
    """
    try:
        left = any(folder.glob(".publisher-*"))
    except OSError:  # a name that no disk can hold: nothing can be left there
        return
    if left:
        from publisher.release import settle

        settle(folder)


def discard_trials(slug: str, packs: Path) -> tuple[PlacedSet, ...]:
    """Remove what was built of a design with other sizes: of each trial the files that its list names and that are as they were made.

    Raises Refusal, with nothing changed in that trial, when something cannot be removed.
    """
    from publisher.release import discard_trials

    return discard_trials(slug, packs)


def _offers(builds: Built | tuple[Built, ...]) -> tuple[Offer, ...]:
    return tuple(built.offer for built in (builds if isinstance(builds, tuple) else (builds,)))


def promised(brief: Brief, pdf_name: str) -> Promises | None:
    """Return what a design promises of the file of this name; None when it promises no such file.

    Raises Refusal when the design has errors, or for an unknown paper.
    """
    from publisher.pipeline import promised_by

    pack = promised_by(brief, pdf_name)
    return None if pack is None else pack.promises


def prove(pdf: bytes, name: str, promises: Promises | None = None) -> Proof:
    """Read a finished PDF as a stranger would and judge it; without promises its print scale cannot be judged."""
    from publisher import proof

    return proof.prove(pdf, promises, name)


def pack_facts(pdf: bytes, name: str) -> PackFacts:
    """Return the facts that a pack carries. Raises Refusal when there are none that can be read."""
    from publisher.ruler import read_pack_facts

    return read_pack_facts(pdf, name)


def measure(
    across: float | str,
    down: float | str,
    unit: str = "mm",
    true_mm: float | tuple[float, float] = 100.0,
    tool: str = "ruler",
    facts: PackFacts | None = None,
) -> Verdict:
    """Judge a printed sheet from two readings of lines that should be ``true_mm`` long (across and down where they differ, as those
    of the long rulers: ``PackFacts.rulers``, or ``LONG_RULERS``).

    Readings are numbers in ``unit`` (mm, cm, in), or what somebody wrote: "3 15/16 in", "97,3". ``tool`` is one of ``TOOLS``;
    ``facts`` of the pack that was printed say what it allows. Raises Refusal for a reading that no such line can give.
    """
    from publisher.ruler import LONG_RULERS, judge, take_readings

    lines = true_mm if isinstance(true_mm, tuple) else (true_mm, true_mm)
    readings = take_readings(across, down, unit, lines, tool)
    if facts is None:
        return judge(*readings, rulers=LONG_RULERS)
    return judge(*readings, facts.meetings, facts.budget, facts.rulers)


def measure_board(
    thickness: float,
    facts: PackFacts,
    others: tuple[PackFacts, ...] = (),
    print_scales: tuple[float, ...] = (1.0,),
    board: str = "",
) -> BoardVerdict:
    """Judge a board of this measured ``thickness`` (mm) by what a pack takes: which joint fails, by how much, and which of the
    ``others``, packs of the same design with other sizes, takes it.

    ``print_scales`` of the sheet, 1 = true size. ``board`` names it where the pack is cut from several. Raises Refusal when it is
    not clear which board is meant.
    """
    from publisher.ruler import judge_board

    return judge_board(thickness, facts, others, print_scales, board)


def release(brief: Brief, releases: Path, told: Callable[[Bundle], None] | None = None) -> Released:
    """Build all variants and papers, and put the version in place below ``releases`` at once, unless one has an error.

    ``told`` hears of the bundle before it is put in place. Raises Refusal when the version was released before with other
    content, when the copy there is damaged, when it cannot be written, or for a trial: a brief that sets sizes.
    """
    from publisher import pipeline

    return pipeline.release(brief, releases, told)


def is_released(bundle: Bundle, releases: Path) -> bool:
    """Look whether a bundle stands below ``releases``, whole. Raises Refusal as ``settle`` does."""
    from publisher.release import is_released

    return is_released(bundle, releases)


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


def outline(svg: bytes, name: str, wanted: str = "") -> Look:
    """Return what the tool sees in a drawing, or in one outline of it (id, .class, layer:NAME, stroke:STYLE).

    Raises Refusal, with the drawing's line, when it cannot be used.
    """
    from publisher.geometry import look_at

    return look_at(svg, name, wanted)


def picture(look: Look) -> bytes:
    """Return a picture (PNG) of what is seen in a drawing, with the names of outlines, and lines that do not close."""
    from publisher.press import draw_outlines

    outlines = [(f"{seen.id} “{seen.label}”" if seen.label else seen.id, seen.rings) for seen in look.outlines]
    open_lines = [(f"{line.id}, open", line.points) for line in look.open_lines]
    return draw_outlines(look.width, look.height, look.filled, outlines, open_lines)


def shapes() -> tuple[ShapeInfo, ...]:
    """Return the shapes that a part may have, with their parameters and named edges."""
    from publisher.geometry import shape_infos

    return shape_infos()


def openings() -> tuple[ShapeInfo, ...]:
    """Return the openings that a part may have."""
    from publisher.geometry import opening_infos

    return opening_infos()


def surfaces() -> tuple[ShapeInfo, ...]:
    """Return the patterns that may be drawn on a part."""
    from publisher.geometry import surface_infos

    return surface_infos()


def words() -> tuple[WordList, ...]:
    """Return every word that has a meaning in a spec, by kind: functions, tools, stages, papers and so on."""
    from publisher.pipeline import word_lists

    return word_lists()


def joints() -> tuple[JointInfo, ...]:
    """Return the ways in which edges of panels meet."""
    from publisher.design import joint_infos

    return joint_infos()


def schema() -> str:
    """Return the JSON Schema (2020-12) of spec.yaml."""
    from publisher.brief import schema_text

    return schema_text()


def fresh_schema() -> str:
    """Return the schema made anew from all that is registered, for those who change the package."""
    from publisher import pipeline

    return pipeline.fresh_schema()


def yield_table(worked: Worked) -> str:
    """Return what the sheets give as CSV; '' when the design could not be laid out."""
    from publisher.material import yield_csv

    return "" if worked.needs is None else yield_csv(worked.needs, worked.pieces)


def shop(works: tuple[Worked, ...], effort: str = "quick") -> tuple[Shared, ...]:
    """Lay out on one shopping list what several works cut from the same board: one entry for each board and sheet size that two of
    them or more are cut from, with the sheets that it saves."""
    from publisher import pipeline

    return pipeline.shop(works, effort)


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


def new(folder: Path, like: str = "stair", designer: str = "") -> tuple[Path, ...]:
    """Write a new design into ``folder``, whose name becomes the design's, and return the paths of its files, the spec first.

    ``like``: one of ``STARTS``; ``designer``: who signs it, '' for nobody yet. Raises Refusal when the name is none for a design, or
    the designer's none for a spec, when one of the files is there, or when they cannot be written; ValueError for another ``like``.
    """
    from publisher.brief import STARTS, begin
    from publisher.release import held, place

    if like not in STARTS:
        raise ValueError(f"no design begins like “{like}”")
    home, files = begin(folder, like, designer)
    with held(home):
        begin(folder, like, designer)  # another run may have begun it before this one held the folder
        place(home, files)
    return tuple(folder / Path(name).name for name, _ in files)


def upgrade(folder: Path) -> Upgraded:
    """Rewrite a design's spec in the format that is read today, in memory: comments stay, and the parts are the same.

    ``findings`` say what must be done by hand before it may be written (errors), and what to look at (warnings). Raises Refusal
    when there is no spec that can be read.
    """
    from publisher import upgrade

    return upgrade.upgrade(folder)


def keep_spec(upgraded: Upgraded) -> Path:
    """Write a rewritten spec in the place of the former one, at once, and return its path.

    Raises Refusal when it cannot be written; ValueError when it is not complete.
    """
    from publisher.release import put_in_place

    if not upgraded.complete:
        raise ValueError("what is not rewritten whole is not written")
    (path,) = put_in_place(upgraded.folder, [("spec.yaml", upgraded.after.encode("utf-8"))])
    return path


def _kept(brief: Brief) -> bytes | None:
    store = brief.file(LAYOUTS)
    return store.data if store else None


def _put(brief: Brief, document: bytes) -> None:
    from publisher.release import put_in_place

    put_in_place(Path(brief.inputs.folder), [(LAYOUTS, document)])


def _rooms() -> Iterator[ModuleType]:
    """Load the rooms one by one, those that need least first: ``measure`` needs no geometry."""
    from publisher import ruler

    yield ruler
    from publisher import brief

    yield brief
    from publisher import design

    yield design
    from publisher import geometry

    yield geometry
    from publisher import batch, joints, material, pages, pipeline, proof, release, sweep, upgrade

    yield from (joints, material, pages, pipeline, batch, proof, release, sweep, upgrade)


if not TYPE_CHECKING:

    def __getattr__(name: str) -> Any:
        """Give a type or a helper of a room when it is asked for; only then are the rooms loaded, up to the one that has it."""
        if name in __all__:
            for room in _rooms():
                if name in vars(room):
                    return vars(room)[name]
        raise AttributeError(f"the door has nothing called {name}")
