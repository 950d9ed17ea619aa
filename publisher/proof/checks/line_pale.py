"""No stroke is white or nearly so."""

from publisher.basics import Check, Finding, Outcome, Severity
from publisher.proof.measuring import PALEST_LINE, Case


def run(case: Case, check: Check[Case]) -> Outcome:
    """Look at the grey of every visible stroke."""
    found: list[Finding] = []
    looked = 0
    for page in case.file.pages:
        strokes = [p for p in page.pieces if p.grey is not None and p.visible]
        looked += len(strokes)
        pale = [p for p in strokes if p.grey is not None and p.grey > PALEST_LINE]
        if pale:
            x, y = pale[0].points[0].tolist()
            found.append(
                check.found(
                    f"page {page.number}: {len(pale)} stroke{'s are' if len(pale) > 1 else ' is'} too pale to see; "
                    f"one begins at {x:.1f}, {y:.1f} mm with grey {pale[0].grey:.2f} (1 is white)",
                    subject=f"page {page.number}",
                    hint=f"draw it darker than {PALEST_LINE}, or leave it out",
                    value=pale[0].grey,
                    limit=PALEST_LINE,
                )
            )
    return Outcome(looked, tuple(found))


CHECK = Check(
    "proof/line-too-pale",
    "Lines dark enough",
    "a white line is a lost line, or a way to hide another one",
    Severity.ERROR,
    run=run,
    may_be_empty=True,
)
