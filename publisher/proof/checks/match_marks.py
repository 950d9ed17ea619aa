"""Match marks stand on both pages of every seam, with their labels, in their places."""

from publisher.basics import Check, Finding, Outcome, Severity
from publisher.proof.measuring import SHIFTED, Case


def run(case: Case, check: Check[Case]) -> Outcome:
    """Look for every promised mark, and compare the distances between marks on the two pages."""
    readings = case.seams()
    found: list[Finding] = []
    for reading in readings:
        name = f"match mark {reading.seam.label} of part {reading.seam.part}"
        if reading.found is None:
            found.append(
                check.found(
                    f"page {reading.page}: {name} is missing",
                    subject=reading.seam.part,
                    hint="draw the mark on both pages of the seam",
                )
            )
        elif not reading.label:
            found.append(
                check.found(
                    f"page {reading.page}: {name} lacks its label",
                    subject=reading.seam.part,
                    hint="print the label beside the mark",
                )
            )
        elif reading.away > SHIFTED:
            found.append(
                check.found(
                    f"page {reading.page}: {name} stands {reading.away:.2f} mm off its place",
                    subject=reading.seam.part,
                    hint="draw the mark at the same point of the part on both pages",
                    value=reading.away,
                    limit=SHIFTED,
                )
            )
    return Outcome(len(readings), tuple(found))


CHECK = Check(
    "proof/match-mark",
    "Match marks in place",
    "tiles are taped together by these marks and by nothing else",
    Severity.ERROR,
    run=run,
    may_be_empty=True,
)
