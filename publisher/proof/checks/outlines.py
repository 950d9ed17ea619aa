"""Every promised outline is drawn in its place at its size, openings included."""

from publisher.basics import Check, Finding, Outcome, OutlinePromise, Severity
from publisher.proof.measuring import OUTLINE_TOLERANCE, REACH, Case, OutlineReading


def run(case: Case, check: Check[Case]) -> Outcome:
    """Judge each outline, both ways."""
    readings = case.outlines()
    return Outcome(len(readings), tuple(_finding(check, r) for r in readings if not r.good))


def name_of(promise: OutlinePromise) -> str:
    """Return how a reader knows this copy."""
    tile = f", tile row {promise.row} column {promise.column}" if promise.row else ""
    return f"part {promise.letter} ({promise.part}), copy {promise.copy}{tile}"


def _finding(check: Check[Case], reading: OutlineReading) -> Finding:
    promise = reading.promise
    what = "its outline" if reading.ring == 0 else f"its opening {reading.ring}"
    x, y = reading.at
    if reading.farthest > OUTLINE_TOLERANCE:
        off = (
            f"{what} is not drawn at {x:.1f}, {y:.1f} mm"
            if reading.farthest >= REACH
            else f"{what} is off by {reading.farthest:.2f} mm at {x:.1f}, {y:.1f} mm"
        )
        message = f"page {promise.page}: {name_of(promise)}: {off}; {reading.missing:.1f} of {reading.length:.1f} mm are not where promised"
        value = reading.farthest
    else:
        message = f"page {promise.page}: {name_of(promise)}: a line drawn like the outline runs up to {reading.beside:.2f} mm beside it"
        value = reading.beside
    return check.found(
        message, subject=promise.part, hint="draw the part as its template says", value=value, limit=OUTLINE_TOLERANCE
    )


CHECK = Check(
    "proof/outline",
    "Outlines as promised",
    "an outline that is shifted, mirrored, lacks a notch or an opening gives a part that does not fit",
    Severity.ERROR,
    run=run,
)
