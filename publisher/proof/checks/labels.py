"""Beside every promised length stands its number, and the number is that of the length."""

import re
from dataclasses import replace
from typing import Any

import numpy as np
import shapely

from publisher.basics import Check, Finding, LengthPromise, Outcome, Severity
from publisher.proof.measuring import Case, squares_of
from publisher.proof.reading import MM_PER_INCH, TextLine, normal, says

NUMBER = re.compile(r"(\d+(?:[.,]\d+)?)\s*(mm|cm|in|inch|inches|″|\")(?![A-Za-z])")
IN_MM = {
    "mm": 1.0,
    "cm": 10.0,
    "in": MM_PER_INCH,
    "inch": MM_PER_INCH,
    "inches": MM_PER_INCH,
    "″": MM_PER_INCH,
    '"': MM_PER_INCH,
}


def run(case: Case, check: Check[Case]) -> Outcome:
    """Look for each label near its line, and compare what it says with the length drawn."""
    found: list[Finding] = []
    drawn = {id(r.promise): r.found for r in case.lengths()}
    labelled = [p for p in case.promises.lengths if p.label and case.page(p.page) is not None]
    for promise in labelled:
        stated = _stated(promise.label)
        length = drawn.get(id(promise))
        if stated and promise.purpose != "tick" and length is not None and abs(stated[0] - length) > stated[1]:
            message = f"page {promise.page}: the line labelled “{promise.label}” is {length:.2f} mm long"
            found.append(
                check.found(
                    message,
                    subject=f"page {promise.page}",
                    hint="let the label say the length",
                    value=length,
                    limit=stated[0],
                )
            )
        track = _track(case, promise)
        lines, wanted = case.lines(promise.page), normal(promise.label)
        having = [i for i, line in enumerate(lines) if says(line.text, wanted)]
        areas = case.areas(promise.page)
        if not having or shapely.distance(areas[having], track).min() > _within(promise):
            close = np.flatnonzero(shapely.distance(areas, track) <= _within(promise)) if len(areas) else ()
            found.append(_missing(check, promise, [lines[int(i)] for i in close]))
    return Outcome(len(labelled), _few(found))


def _track(case: Case, promise: LengthPromise) -> Any:
    """Return what the label must stand near: the line, or for the side of a square the whole square."""
    line = shapely.LineString((promise.start, promise.end))
    if promise.purpose == "calibration":
        for box in squares_of(case.promises.lengths, promise.page):
            square = shapely.box(box.left, box.bottom, box.right, box.top)
            if shapely.dwithin(square, line, 0.01):
                return square
    return line


def _within(promise: LengthPromise) -> float:
    return (
        6.0
        if promise.purpose == "tick"
        else 12.0
        if promise.purpose == "calibration"
        else max(12.0, 0.6 * promise.length)
    )


def _missing(check: Check[Case], promise: LengthPromise, near: list[TextLine]) -> Finding:
    there = sorted({line.text[:30] for line in near if any(c.isdigit() for c in line.text)})
    instead = f"; near it stands “{'”, “'.join(there[:3])}”" if there and promise.purpose != "tick" else ""
    return check.found(
        f"page {promise.page}: “{promise.label}” does not stand beside the line of {promise.length:.2f} mm "
        f"at {promise.start[0]:.1f}, {promise.start[1]:.1f} mm{instead}",
        subject=f"page {promise.page}",
        hint="print the length beside its line",
    )


def _few(found: list[Finding]) -> tuple[Finding, ...]:
    kept: list[Finding] = []
    for subject in dict.fromkeys(f.subject for f in found):
        here = [f for f in found if f.subject == subject]
        kept += here[:3]
        if len(here) > 3:
            kept.append(replace(here[3], message=f"{subject}: {len(here) - 3} more labels are missing or wrong"))
    return tuple(kept)


def _stated(label: str) -> tuple[float, float] | None:
    """Return the length that a label states (mm) and what rounding allows; None when it names no unit."""
    found = NUMBER.search(normal(label))
    if not found:
        return None
    digits = found.group(1).replace(",", ".")
    decimals = len(digits.partition(".")[2])
    unit = IN_MM[found.group(2)]
    return float(digits) * unit, max(0.5 * 10.0**-decimals * unit if decimals else 0.0, 0.02)


CHECK = Check(
    "proof/label",
    "Labels say the length",
    "a true square with a false number misleads as much as a false square",
    Severity.ERROR,
    run=run,
    may_be_empty=True,
)
