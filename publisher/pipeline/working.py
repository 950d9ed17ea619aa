"""One variant worked out: a brief through the rooms up to ``material``."""

from collections.abc import Callable
from dataclasses import replace

from publisher.basics import Cure, errors
from publisher.brief import Brief, with_words
from publisher.design import Fact, SheetSize, Size, gaps, text_findings, work_out
from publisher.joints import (
    TRIED_WHOLE,
    Tried,
    draw_parts,
    put_together,
    suggest,
    try_cures,
    with_promises,
)
from publisher.material import Stored, lay_out
from publisher.pipeline.model import Worked
from publisher.pipeline.trying import make_at, parts_made, sheets_of, try_out, try_whole
from publisher.release import name_findings


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
    design, parts, pieces, part_findings = parts_made(design)
    found += part_findings
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

    now = Tried(needs.findings, sheets_of(needs))
    joined = suggest(design, joined, facts_at, whole, most, now)
    joined = with_promises(design, pieces, replace(joined, drawings=(*joined.drawings, *draw_parts(made))))
    found += (*joined.findings, *needs.findings, *text_findings(design, joined.facts))
    found += name_findings(brief, design, pieces, needs)
    now = replace(now, findings=tuple(found))
    said = try_cures(now, written, None if most is None else most - len(spent))
    return Worked(brief, variant, design, parts, joined, needs, said, pieces)
