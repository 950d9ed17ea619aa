"""Strips that draw round parts: pin and pencil stand as far apart as the finished part's radius."""

from math import dist

from publisher.basics import Check, CompassPromise, Findings
from publisher.proof.checks.frame import MOST_SAID, about, judged, page_name
from publisher.proof.measuring import LENGTH_TOLERANCE, OWN_LINE, Case, StripInk, circles, crossed, quartered


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
            yield about(check, _who(promise), fault, "draw cross and circle at the radius of the finished part")
    return len(case.promises.compasses)


@judged(
    "proof/strip-ink",
    "Nothing else on compass strips",
    "a strip is glued to card and worked with: it bears its part's letter, name and count, and how it is used; every line, area, picture "
    f"and word on it is promised, or is one of a strip's own; lines may be {OWN_LINE:g} mm off",
    may_be_empty=True,
)
def strip_ink(case: Case, check: Check[Case]) -> Findings:
    """Look at everything inside the sides of each strip, at any width, dash and grey."""
    rows = {row.part: row for row in case.promises.rows}
    for promise in case.promises.compasses:
        page, ink = case.page(promise.page), case.ink(promise.page)
        if page is None or ink is None:
            continue
        here = (one for one in case.promises.lengths if one.page == promise.page and one.start == promise.pin)
        marked = any(one.part == promise.part and quartered(one, promise.radii[0]) for one in case.promises.prints)
        labels, lines = (one.label for one in here), case.lines(promise.page)
        strip = StripInk(promise, rows.get(promise.part), labels, case.take_down, quarters=marked)
        if words := strip.lacks(lines):
            yield about(
                check, _who(promise), f": “{words}” does not stand on it", "print on a strip what it draws, and how"
            )
        for what, (x, y) in list(strip.stray(page, ink, lines))[:MOST_SAID]:
            said = f": {what} at {x:.1f}, {y:.1f} mm belongs to nothing that was promised there"
            yield about(check, _who(promise), said, "promise it with the strip, or leave it out")
    return len(case.promises.compasses)


def _who(promise: CompassPromise) -> str:
    return f"{page_name(promise.page)}: compass strip of part {promise.letter} ({promise.part})"


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
