"""Beside every promised length stands its number, and the number is that of the length."""

import re
from collections.abc import Iterator
from dataclasses import replace
from typing import Any

import numpy as np
import shapely

from publisher.basics import Check, Finding, Findings, LengthPromise
from publisher.proof.checks.frame import MOST_SAID, about, judged, page_name
from publisher.proof.measuring import Case, squares_of
from publisher.proof.reading import MM_PER_INCH, TextLine, normal, says

LABEL_ROUNDING = 0.02  # mm that a label without decimals may differ from its length
LABEL_READ = 0.01  # mm by which a length may be read from a file otherwise than it was rounded
NEAR_TICK = 6.0  # mm between a tick and its number
NEAR_LINE = 12.0  # mm between any other line and its label, or more for a long one
NEAR_SHARE = 0.6  # of a long line's length
NUMBER = re.compile(r"(\d+(?:[.,]\d+)?)\s*(mm|cm|in|inch|inches|″|\")(?![A-Za-z])")
WORDS_REACH = 0.2  # mm
IN_MM = {
    "mm": 1.0,
    "cm": 10.0,
    "in": MM_PER_INCH,
    "inch": MM_PER_INCH,
    "inches": MM_PER_INCH,
    "″": MM_PER_INCH,
    '"': MM_PER_INCH,
}


@judged(
    "proof/label",
    "Labels say the length",
    "a true square with a false number misleads as much as a false square; a number is true to half its last decimal, "
    f"or to {LABEL_ROUNDING:g} mm",
    may_be_empty=True,
)
def length_labels(case: Case, check: Check[Case]) -> Findings:
    """Look for each label near its line, and compare what it says with the length drawn."""
    labelled = [promise for promise, _ in case.there(case.promises.lengths) if promise.label]
    drawn = {id(r.promise): r.found for r in case.lengths()}
    found = [finding for promise in labelled for finding in _judge(case, check, promise, drawn.get(id(promise)))]
    for subject in dict.fromkeys(f.subject for f in found):
        here = [f for f in found if f.subject == subject]
        yield from here[:MOST_SAID]
        if len(here) > MOST_SAID:
            message = f"{subject}: {len(here) - MOST_SAID} more labels are missing or wrong"
            yield replace(here[MOST_SAID], message=message)
    return len(labelled)


@judged(
    "proof/words-on-measure",
    "No words across what is measured",
    "a rule is read where a line ends, and words across a ruler, a square or a gauge hide just that; "
    f"they may reach {WORDS_REACH:g} mm over a line",
    may_be_empty=True,
)
def measures_clear(case: Case, check: Check[Case]) -> Findings:
    """Look for visible words that a promised length runs through; the first of each page is named."""
    looked = 0
    for number in sorted({promise.page for promise in case.promises.lengths}):
        promises = [promise for promise in case.promises.lengths if promise.page == number]
        areas = shapely.buffer(case.areas(number), -WORDS_REACH)
        looked += len(promises)
        tracks = shapely.STRtree(shapely.linestrings([(p.start, p.end) for p in promises]))
        across = tracks.query(areas, predicate="intersects").T.tolist()
        if across:
            words, line = case.lines(number)[across[0][0]], promises[across[0][1]]
            x, y = line.start
            what = f": “{words.text[:60]}” lies across a line to be measured ({line.purpose} at {x:.1f}, {y:.1f} mm)"
            count = len({i for i, _ in across})
            yield about(check, page_name(number), what, "set words beside what is measured", float(count), 0.0)
    return looked


def _judge(case: Case, check: Check[Case], promise: LengthPromise, length: float | None) -> Iterator[Finding]:
    """Yield what is wrong with one label; ``length`` (mm) is that of its line as drawn."""
    who = page_name(promise.page)
    off = (
        []
        if promise.purpose == "tick" or length is None
        else [s for s in _stated(promise.label) if abs(s[0] - length) > s[1]]
    )
    if off and length is not None:
        what = f": the line labelled “{promise.label}” is {length:.2f} mm long"
        yield about(check, who, what, "let the label say the length", length, off[0][0])
    track = _track(case, promise)
    lines, wanted = case.lines(promise.page), normal(promise.label)
    having = [i for i, line in enumerate(lines) if says(line.text, wanted)]
    areas = case.areas(promise.page)
    if not having or shapely.distance(areas[having], track).min() > _within(promise):
        close = np.flatnonzero(shapely.distance(areas, track) <= _within(promise)) if len(areas) else ()
        yield _missing(check, promise, [lines[int(i)] for i in close])


def _stated(label: str) -> tuple[tuple[float, float], ...]:
    """Return the lengths that a label states (mm) and what rounding allows each: inches beside millimetres are those of the millimetres
    that are shown."""
    found = []
    for number in NUMBER.finditer(normal(label)):
        digits = number.group(1).replace(",", ".")
        decimals = len(digits.partition(".")[2])
        unit = IN_MM[number.group(2)]
        found.append((float(digits) * unit, 0.5 * 10.0**-decimals * unit if decimals else 0.0, unit))
    shown = max((half for _, half, unit in found if unit == IN_MM["mm"]), default=0.0)
    return tuple(
        (value, max(half + (shown if unit == MM_PER_INCH else 0.0) + LABEL_READ, LABEL_ROUNDING))
        for value, half, unit in found
    )


def _track(case: Case, promise: LengthPromise) -> Any:
    """Return what the label must stand near: the line, or for the side of a square the whole square."""
    line = shapely.LineString((promise.start, promise.end))
    if promise.purpose == "calibration":
        for box in squares_of(case.promises.lengths, promise.page):
            square = shapely.box(*box.sides)
            if shapely.dwithin(square, line, 0.01):
                return square
    return line


def _within(promise: LengthPromise) -> float:
    """Return how far (mm) the label may stand from what it names."""
    if promise.purpose == "tick":
        return NEAR_TICK
    return NEAR_LINE if promise.purpose == "calibration" else max(NEAR_LINE, NEAR_SHARE * promise.length)


def _missing(check: Check[Case], promise: LengthPromise, near: list[TextLine]) -> Finding:
    there = sorted({line.text[:30] for line in near if any(c.isdigit() for c in line.text)})
    instead = f"; near it stands “{'”, “'.join(there[:3])}”" if there and promise.purpose != "tick" else ""
    what = f": “{promise.label}” does not stand beside the line of {promise.length:.2f} mm "
    what += f"at {promise.start[0]:.1f}, {promise.start[1]:.1f} mm{instead}"
    return about(check, page_name(promise.page), what, "print the length beside its line")
