"""A variant with other values of its sizes: as far as its parts, its facts, all that is found in it, or its pages."""

from publisher.basics import Finding, errors
from publisher.brief import Brief
from publisher.design import USUAL_PAPERS, Design, Fact, Size, work_out
from publisher.geometry import Part, cut_pieces, make_parts, settle_letters
from publisher.joints import Joined, Tried, as_glued, facts_of, put_together, with_promises, without_idle_steps
from publisher.material import BoardNeeds, lay_out
from publisher.pages import PageCount, count_pages, paper_for
from publisher.pipeline.model import Made


def try_out(brief: Brief, variant: str, size: Size) -> tuple[Design, tuple[Fact, ...]] | None:
    """Return a variant and its facts with the value that ``size`` brings; None when it cannot be built so."""
    design = work_out(brief, variant, (size,))
    if errors(design.findings):
        return None
    parts, found = make_parts(design)
    return None if errors(found) else (design, facts_of(design, parts))


def make_at(brief: Brief, variant: str, sizes: tuple[Size, ...] = ()) -> Made:
    """Return a variant's parts with the values that ``sizes`` bring; ``findings`` has an error where they cannot be made so."""
    design = work_out(brief, variant, sizes)
    found = design.findings
    if errors(found):
        return Made(findings=found)
    settled, parts, pieces, part_findings = parts_made(design)
    return Made(settled, parts, pieces, (*found, *part_findings))


def parts_made(design: Design) -> tuple[Design, tuple[Part, ...], tuple[Part, ...], tuple[Finding, ...]]:
    """Return a design with what its parts settle (letters of edges, steps that have something to do), its parts, the pieces that are cut
    of them, and what was found."""
    parts, part_findings = make_parts(design)
    design, parts = settle_letters(design, parts)
    parts = as_glued(design, parts)
    design = without_idle_steps(design, parts)
    pieces, piece_findings = cut_pieces(design, parts)
    return design, parts, pieces, (*part_findings, *piece_findings)


def try_whole(made: Made, brief: Brief) -> Tried:
    """Return all that is found in a variant that was made otherwise than it stands: facts first, the boards' layouts only when nothing
    before them is wrong."""
    if made.design is None or errors(made.findings):
        return Tried(made.findings)
    found = (*made.findings, *put_together(made.design, made.parts, drawn=False).findings)
    if errors(found):
        return Tried(found)
    needs = lay_out(made.design, made.pieces, trial=True, versions=brief.inputs.versions)
    return Tried((*found, *needs.findings), sheets_of(needs))


def sheets_of(needs: BoardNeeds) -> tuple[tuple[str, int], ...]:
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
    return tuple(count_pages(design, made.pieces, joined, paper_for(design, name)) for name in papers_of(design))


def papers_of(design: Design, wanted: tuple[str, ...] = ()) -> tuple[str, ...]:
    """Return the papers that are wanted, else those of the spec."""
    return wanted or tuple(wish.name for wish in design.papers) or USUAL_PAPERS
