"""The lines to score, fold, draw and glue along are drawn where they are promised, in the stroke of their kind."""

from publisher.basics import Check, Findings
from publisher.proof.checks.frame import judged, page_name
from publisher.proof.measuring import MARK_TOLERANCE, Case

KINDS = {"score": "to score", "fold": "to fold", "draw": "to draw", "glue": "to glue"}


@judged(
    "proof/mark",
    "Lines to score, fold, draw and glue",
    f"a fold in the wrong place, by more than {MARK_TOLERANCE:g} mm, spoils the part as surely as a wrong cut",
    may_be_empty=True,
)
def marked_lines(case: Case, check: Check[Case]) -> Findings:
    """Judge the marks of each kind on each copy."""
    for reading in case.marks():
        if reading.missing:
            promise = reading.promise
            x, y = reading.at
            yield check.found(
                f"{page_name(promise.page)}: {promise.part}, copy {promise.copy}: "
                f"the lines {KINDS.get(promise.kind, promise.kind)} are missing or elsewhere at "
                f"{reading.missing} of {reading.tried} places, for one at {x:.1f}, {y:.1f} mm",
                subject=promise.part,
                hint="draw them where they are promised, in the width and dashes of their kind",
                value=float(reading.missing),
                limit=0.0,
            )
    return sum(r.tried for r in case.marks())
