"""Tiles: their match marks stand in place, and put together by them they give the whole outline."""

from publisher.basics import Check, Findings
from publisher.proof.checks.frame import judged, page_name
from publisher.proof.measuring import SHIFTED, STROKE_REACH, TAPED_TOLERANCE, Case


@judged(
    "proof/match-mark",
    "Match marks in place",
    f"tiles are taped together by these marks and by nothing else; each stands within {SHIFTED:g} mm of its place",
    may_be_empty=True,
)
def match_marks(case: Case, check: Check[Case]) -> Findings:
    """Look for every promised mark with its label on both pages of its seam."""
    for reading in case.seams():
        part = reading.seam.part
        name = f"{page_name(reading.page)}: match mark {reading.seam.label} of part {part}"
        if reading.found is None:
            yield check.found(f"{name} is missing", subject=part, hint="draw the mark on both pages of the seam")
        elif not reading.label:
            yield check.found(f"{name} lacks its label", subject=part, hint="print the label beside the mark")
        elif reading.away > SHIFTED:
            yield check.found(
                f"{name} stands {reading.away:.2f} mm off its place",
                subject=part,
                hint="draw the mark at the same point of the part on both pages",
                value=reading.away,
                limit=SHIFTED,
            )
    return len(case.seams())


@judged(
    "proof/tiles",
    "Tiles make the whole",
    "a tile that is shifted, missing or repeated is noticed by a buyer only when the foam is cut; "
    f"marks of two pages may disagree by {SHIFTED:g} mm, the whole outline may lie {TAPED_TOLERANCE:g} mm off",
    may_be_empty=True,
)
def tiles_together(case: Case, check: Check[Case]) -> Findings:
    """Judge every tiled part, its pages put together by their printed marks."""
    for reading in case.tiles():
        part, name = reading.part, f"part {reading.part}, copy {reading.copy}"
        if reading.untied:
            yield check.found(
                f"{name}: no match mark ties page {', '.join(map(str, reading.untied))} to the other tiles",
                subject=part,
                hint="draw the same labelled marks on neighbouring pages",
            )
        if reading.disagree > SHIFTED:
            yield check.found(
                f"{name}: the match marks of neighbouring pages disagree by {reading.disagree:.2f} mm",
                subject=part,
                hint="draw the marks at the same points of the part",
                value=reading.disagree,
                limit=SHIFTED,
            )
        if reading.farthest > TAPED_TOLERANCE:
            off = "lacks a stretch" if reading.farthest >= STROKE_REACH else f"is off by {reading.farthest:.2f} mm"
            yield check.found(
                f"{name}: with its pages put together by the match marks the outline {off}; "
                f"{reading.missing:.1f} mm are not where promised",
                subject=part,
                hint="draw every tile of the part",
                value=reading.farthest,
                limit=TAPED_TOLERANCE,
            )
        for page in reading.repeated:
            yield check.found(f"{name}: page {page} repeats one of its tiles", subject=part, hint="draw each tile once")
    return len(case.tiles())
