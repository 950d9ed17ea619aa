"""No stroke is thinner than printers can draw reliably."""

from publisher.basics import Check, Finding, Outcome, Severity
from publisher.proof.measuring import Case

LEAST = 0.18  # mm: the thinnest line of the ISO 128-2 series that home printers draw without gaps
ROUNDING = 0.001


def run(case: Case, check: Check[Case]) -> Outcome:
    """Look at the width of every stroke; width 0 means as thin as the device can."""
    found: list[Finding] = []
    looked = 0
    for page in case.file.pages:
        strokes = [p for p in page.pieces if p.grey is not None and p.visible]
        looked += len(strokes)
        thin = [p for p in strokes if p.width < LEAST - ROUNDING]
        if thin:
            worst = min(thin, key=lambda p: p.width)
            x, y = worst.points[0].tolist()
            found.append(
                check.found(
                    f"page {page.number}: {len(thin)} stroke{'s are' if len(thin) > 1 else ' is'} too thin; "
                    f"the one at {x:.1f}, {y:.1f} mm is {worst.width:.3f} mm wide",
                    subject=f"page {page.number}",
                    hint=f"draw lines at least {LEAST} mm wide",
                    value=worst.width,
                    limit=LEAST,
                )
            )
    return Outcome(looked, tuple(found))


CHECK = Check(
    "proof/line-too-thin",
    "Lines wide enough",
    "a hairline is one device dot wide: plain on a screen, gone in print",
    Severity.ERROR,
    run=run,
    may_be_empty=True,
)
