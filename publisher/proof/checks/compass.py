"""Strips that draw round parts: pin and pencil stand as far apart as the finished part's radius."""

from math import dist

from publisher.basics import Check, CompassPromise, Findings
from publisher.proof.checks.frame import about, judged, page_name
from publisher.proof.measuring import LENGTH_TOLERANCE, Case, circles, crossed


@judged(
    "proof/compass",
    "Compass strips true",
    "a round part is drawn by its strip and by nothing else: from the cross for the pin to each circle for the pencil it is as far as "
    f"the radius, true to {LENGTH_TOLERANCE:g} mm, and the outer radius is half of the finished part's width",
    may_be_empty=True,
)
def compass_strips(case: Case, check: Check[Case]) -> Findings:
    """Look for the cross and the circles of each strip, and hold the radii against the drawing and the part."""
    for promise in case.promises.compasses:
        if fault := _fault(case, promise):
            who = f"{page_name(promise.page)}: compass strip of part {promise.letter} ({promise.part})"
            yield about(check, who, fault, "draw cross and circle at the radius of the finished part")
    return len(case.promises.compasses)


def _fault(case: Case, promise: CompassPromise) -> str:
    """Return in words what is wrong with a strip; empty when nothing."""
    ink = case.ink(promise.page)
    if ink is None:
        return ": its page is missing"
    row = next((row for row in case.promises.rows if row.part == promise.part), None)
    if row is not None and abs(promise.radii[0] - row.width / 2) > LENGTH_TOLERANCE:
        return f": its radius is {promise.radii[0]:.2f} mm; the part is {row.width:.2f} mm wide"
    if not crossed(ink, promise.pin, promise.hole):
        return ": the cross for the pin is missing"
    middles = [middle for middle, _ in circles(ink, promise.hole)]
    for pencil, radius in zip(promise.pencils, promise.radii, strict=True):
        found = min((dist(promise.pin, m) for m in middles if dist(m, pencil) < 1.0), default=None)
        if found is None:
            return ": a circle for the pencil is missing"
        if abs(found - radius) > LENGTH_TOLERANCE:
            return f": pin and pencil stand {found:.2f} mm apart; promised are {radius:.2f} mm"
    return ""
