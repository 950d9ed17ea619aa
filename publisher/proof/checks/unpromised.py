"""In and around a part no line looks like a line to cut, except its outline."""

from publisher.basics import Check, Finding, Outcome, Severity
from publisher.proof.checks.outlines import name_of
from publisher.proof.measuring import OUTLINE_TOLERANCE, Case


def run(case: Case, check: Check[Case]) -> Outcome:
    """Hold every heavy stroke of the pages with outlines against the outlines."""
    found: list[Finding] = []
    looked = 0
    for number, parts in case.parts().items():
        ink = case.ink(number)
        if ink is None:
            continue
        looked += len(ink.width)
        for stray in parts.stray_lines(ink, number):
            x, y = stray.at
            if stray.away <= OUTLINE_TOLERANCE:
                what = f"a line {stray.width:.2f} mm wide runs along the outline, which is to be {stray.near.width:.2f} mm wide"
            else:
                what = f"a line {stray.width:.2f} mm wide, which reads as a line to cut, is no part of the outline"
            found.append(
                check.found(
                    f"page {number}: {name_of(stray.near)}: {what}; it passes {x:.1f}, {y:.1f} mm",
                    subject=stray.near.part,
                    hint="take the line out, or draw it thinner if it is not to be cut",
                    value=stray.away,
                    limit=OUTLINE_TOLERANCE,
                )
            )
    return Outcome(looked, tuple(found))


CHECK = Check(
    "proof/line-unpromised",
    "No other lines to cut",
    "a slit, a second outline or a stray square is cut out as faithfully as the part itself",
    Severity.ERROR,
    run=run,
)
