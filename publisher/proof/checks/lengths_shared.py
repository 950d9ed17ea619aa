"""What the checks of promised lengths share: one finding for each page and kind, with the worst of them."""

from publisher.basics import Check, Finding, Outcome
from publisher.proof.measuring import LENGTH_TOLERANCE, Case, LengthReading

FEW = 3


def judge(case: Case, check: Check[Case], purposes: tuple[str, ...], noun: str) -> Outcome:
    """Return the findings about lengths of these purposes, at most a few for each page."""
    readings = [r for r in case.lengths() if r.promise.purpose in purposes]
    found: list[Finding] = []
    for page in dict.fromkeys(r.promise.page for r in readings):
        bad = [r for r in readings if r.promise.page == page and not r.good]
        bad.sort(key=lambda r: -_size(r))
        found += [_finding(check, r, noun) for r in bad[:FEW]]
        if len(bad) > FEW:
            more = f"page {page}: {len(bad) - FEW} more of its lines are wrong in the same way"
            found.append(check.found(more, subject=f"page {page}", hint="see the findings above"))
    return Outcome(len(readings), tuple(found))


def _size(reading: LengthReading) -> float:
    return 1e9 if reading.found is None else max(abs(reading.found - reading.promise.length), reading.away)


def _finding(check: Check[Case], reading: LengthReading, noun: str) -> Finding:
    promise = reading.promise
    named = f"{noun} “{promise.label}”" if promise.label else noun
    where = f"from {promise.start[0]:.2f}, {promise.start[1]:.2f} to {promise.end[0]:.2f}, {promise.end[1]:.2f} mm"
    if reading.found is None:
        message = f"page {promise.page}: {named} {where} is not drawn, or stands elsewhere"
        return check.found(message, subject=f"page {promise.page}", hint="draw it where it is promised")
    off = abs(reading.found - promise.length)
    if off > LENGTH_TOLERANCE:
        message = (
            f"page {promise.page}: {named} {where} is {reading.found:.3f} mm long; promised are {promise.length:.3f} mm"
        )
        value, limit = reading.found, promise.length
    else:
        message = f"page {promise.page}: {named} {where} stands {reading.away:.3f} mm off its place"
        value, limit = reading.away, 0.0
    return check.found(
        message, subject=f"page {promise.page}", hint="draw the page without any scaling", value=value, limit=limit
    )
