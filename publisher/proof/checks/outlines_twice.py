"""No outline is drawn twice."""

from publisher.basics import Check, Outcome, Severity
from publisher.proof.checks.outlines import name_of
from publisher.proof.measuring import Case

MOST = 1.2  # times the length of a ring


def run(case: Case, check: Check[Case]) -> Outcome:
    """Compare the drawn length on each ring with the ring's length."""
    readings = case.outlines()
    found = tuple(
        check.found(
            f"page {r.promise.page}: {name_of(r.promise)}: the outline is drawn {r.times:.1f} times over itself",
            subject=r.promise.part,
            hint="draw it once",
            value=r.times,
            limit=1.0,
        )
        for r in readings
        if r.times > MOST
    )
    return Outcome(len(readings), found)


CHECK = Check(
    "proof/outline-twice",
    "Outlines drawn once",
    "two lines over each other hide a difference between two versions of a part, and print thicker",
    Severity.ERROR,
    run=run,
)
