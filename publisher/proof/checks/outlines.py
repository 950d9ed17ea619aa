"""Outlines are drawn once, in their place, at their size and width, and show as lines in pixels too."""

from publisher.basics import Check, Finding, Findings
from publisher.proof.checks.frame import copy_name, judged, page_name
from publisher.proof.measuring import (
    OUTLINE_TOLERANCE,
    SAME_WIDTH,
    SOLID,
    STROKE_REACH,
    WITNESS_GAP,
    Case,
    OutlineReading,
    RingSight,
)

MOST_TIMES = 1.2  # the length of a ring: more is a second line


@judged(
    "proof/outline",
    "Outlines as promised",
    "an outline that is shifted, mirrored, lacks a notch or an opening gives a part that does not fit; "
    f"it may lie {OUTLINE_TOLERANCE:g} mm off",
)
def outlines_promised(case: Case, check: Check[Case]) -> Findings:
    """Judge each outline, openings included, both ways."""
    for promise in case.promises.outlines:
        if case.page(promise.page) is None:
            message = f"{copy_name(promise)}: {page_name(promise.page)}, which is to show it, is not in the file"
            yield check.found(message, subject=promise.part, hint="take all pages of the pack")
    for reading in case.outlines():
        if not reading.good:
            yield _off(check, reading)
    return len(case.outlines()) + case.strips


def _off(check: Check[Case], reading: OutlineReading) -> Finding:
    ring = "its outline" if reading.ring == 0 else f"its opening {reading.ring}"
    x, y = reading.at
    if reading.farthest > OUTLINE_TOLERANCE:
        off = "is not drawn" if reading.farthest >= STROKE_REACH else f"is off by {reading.farthest:.2f} mm"
        what = f"{ring} {off} at {x:.1f}, {y:.1f} mm; "
        what += f"{reading.missing:.1f} of {reading.length:.1f} mm are not where promised"
        value = reading.farthest
    else:
        what = f"a line drawn like the outline runs up to {reading.beside:.2f} mm beside it"
        value = reading.beside
    return _of_outline(check, reading, what, "draw the part as its template says", value, OUTLINE_TOLERANCE)


def _of_outline(
    check: Check[Case], reading: OutlineReading | RingSight, what: str, hint: str, value: float, limit: float
) -> Finding:
    promise = reading.promise
    message = f"{page_name(promise.page)}: {copy_name(promise)}: {what}"
    return check.found(message, subject=promise.part, hint=hint, value=value, limit=limit)


@judged(
    "proof/outline-twice",
    "Outlines drawn once",
    "two lines over each other hide a difference between two versions of a part, and print thicker: "
    f"more than {MOST_TIMES:g} times a ring's length is a second line",
)
def outlines_twice(case: Case, check: Check[Case]) -> Findings:
    """Compare the drawn length on each ring with the ring's length."""
    for reading in case.outlines():
        if reading.times > MOST_TIMES:
            what = f"the outline is drawn {reading.times:.1f} times over itself"
            yield _of_outline(check, reading, what, "draw it once", reading.times, 1.0)
    return len(case.outlines()) + case.strips


@judged(
    "proof/outline-width",
    "Outlines of the right width",
    "along a line 5 mm wide nobody knows where to cut, and a thin one reads as a line to draw; "
    f"the width is true to {SAME_WIDTH:g} mm",
)
def outline_width(case: Case, check: Check[Case]) -> Findings:
    """Compare the stroke's width of each outline."""
    readings = [r for r in case.outlines() if r.width > 0]
    for reading in readings:
        wanted = reading.promise.width
        if abs(reading.width - wanted) > SAME_WIDTH:
            what = f"its outline is {reading.width:.2f} mm wide; promised are {wanted:.2f} mm"
            yield _of_outline(check, reading, what, "draw it in the width of lines to cut", reading.width, wanted)
    return len(readings) + case.strips


@judged(
    "proof/outline-by-pixels",
    "Outlines seen in pixels",
    "whatever covers, fades or floods a cut line, the buyer sees pixels and no operators: another reader must see the line; "
    f"{WITNESS_GAP:g} mm of it may be light, {SOLID:g} mm may run along a dark area",
)
def outlines_by_pixels(case: Case, check: Check[Case]) -> Findings:
    """Judge the longest light stretch of each outline, and the longest along which an area hides it."""
    sights = case.pixels().rings
    for sight in sights:
        if sight.light > WITNESS_GAP:
            x, y = sight.light_at
            what = f"{sight.light:.1f} mm of the outline cannot be seen, from {x:.1f}, {y:.1f} mm on"
            hint = "let nothing cover or fade the outline, and draw it in black"
            yield _of_outline(check, sight, what, hint, sight.light, WITNESS_GAP)
        if sight.smeared > SOLID:
            x, y = sight.smeared_at
            what = f"along {sight.smeared:.1f} mm the outline lies at or in a dark area, from {x:.1f}, {y:.1f} mm on"
            hint = "leave the paper on both sides of an outline white"
            yield _of_outline(check, sight, what, hint, sight.smeared, SOLID)
    return len(sights) + case.strips
