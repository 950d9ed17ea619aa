"""Tiles put together by their printed marks give the whole outline."""

from publisher.basics import Check, Finding, Outcome, Severity
from publisher.proof.measuring import OUTLINE_TOLERANCE, REACH, SHIFTED, Case, TilesReading


def run(case: Case, check: Check[Case]) -> Outcome:
    """Judge every tiled part."""
    readings = case.tiles()
    return Outcome(len(readings), tuple(f for r in readings for f in _findings(check, r)))


def _findings(check: Check[Case], reading: TilesReading) -> list[Finding]:
    name = f"part {reading.part}, copy {reading.copy}"
    found: list[Finding] = []
    if reading.untied:
        pages = ", ".join(map(str, reading.untied))
        message = f"{name}: no match mark ties page {pages} to the other tiles"
        found.append(
            check.found(message, subject=reading.part, hint="draw the same labelled marks on neighbouring pages")
        )
    if reading.disagree > SHIFTED:
        message = f"{name}: the match marks of neighbouring pages disagree by {reading.disagree:.2f} mm"
        found.append(
            check.found(
                message,
                subject=reading.part,
                hint="draw the marks at the same points of the part",
                value=reading.disagree,
                limit=SHIFTED,
            )
        )
    if reading.farthest > OUTLINE_TOLERANCE:
        off = "lacks a stretch" if reading.farthest >= REACH else f"is off by {reading.farthest:.2f} mm"
        message = f"{name}: with its pages put together by the match marks the outline {off}; "
        message += f"{reading.missing:.1f} mm are not where promised"
        found.append(
            check.found(
                message,
                subject=reading.part,
                hint="draw every tile of the part",
                value=reading.farthest,
                limit=OUTLINE_TOLERANCE,
            )
        )
    found += [
        check.found(f"{name}: page {page} repeats one of its tiles", subject=reading.part, hint="draw each tile once")
        for page in reading.repeated
    ]
    return found


CHECK = Check(
    "proof/tiles",
    "Tiles make the whole",
    "a tile that is shifted, missing or repeated is noticed by a buyer only when the foam is cut",
    Severity.ERROR,
    run=run,
    may_be_empty=True,
)
