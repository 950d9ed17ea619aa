"""The lines to score, fold, draw and glue along are drawn where they are promised, in the stroke of their kind."""

from publisher.basics import Check, Finding, Outcome, Severity
from publisher.proof.measuring import Case

WORDS = {"score": "to score", "fold": "to fold", "draw": "to draw", "glue": "to glue"}


def run(case: Case, check: Check[Case]) -> Outcome:
    """Judge the marks of each kind on each copy."""
    found: list[Finding] = []
    readings = case.marks()
    for reading in readings:
        if reading.missing:
            promise = reading.promise
            kind = WORDS.get(promise.kind, promise.kind)
            x, y = reading.at
            found.append(
                check.found(
                    f"page {promise.page}: {promise.part}, copy {promise.copy}: the lines {kind} are missing or elsewhere at "
                    f"{reading.missing} of {reading.tried} places, for one at {x:.1f}, {y:.1f} mm",
                    subject=promise.part,
                    hint="draw them where they are promised, in the width and dashes of their kind",
                    value=float(reading.missing),
                    limit=0.0,
                )
            )
    return Outcome(sum(r.tried for r in readings), tuple(found))


CHECK = Check(
    "proof/mark",
    "Lines to score, fold, draw and glue",
    "a fold in the wrong place spoils the part as surely as a wrong cut",
    Severity.ERROR,
    run=run,
    may_be_empty=True,
)
