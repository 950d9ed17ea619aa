"""Promised words stand on their pages, in their places: letters, counts, names."""

import shapely

from publisher.basics import Check, Finding, Outcome, Severity, TextPromise
from publisher.proof.measuring import Case
from publisher.proof.reading import normal, says

SLACK = 0.5  # mm


def run(case: Case, check: Check[Case]) -> Outcome:
    """Look for each text among the visible lines of its page."""
    promises = [p for p in case.promises.texts if case.page(p.page) is not None and normal(p.text)]
    return Outcome(len(promises), tuple(f for p in promises if (f := _judge(case, check, p)) is not None))


def _judge(case: Case, check: Check[Case], promise: TextPromise) -> Finding | None:
    lines, wanted = case.lines(promise.page), normal(promise.text)
    having = [i for i, line in enumerate(lines) if says(line.text, wanted)]
    if not having and promise.near is None and says(" ".join(line.text for line in lines), wanted):
        return None
    if not having:
        message = f"page {promise.page}: “{promise.text}” is not on the page"
        return check.found(message, subject=f"page {promise.page}", hint="print it, in dark letters and on top")
    if promise.near is None:
        return None
    away = float(shapely.distance(case.areas(promise.page)[having], shapely.Point(promise.near)).min())
    if away <= promise.within + SLACK:
        return None
    x, y = promise.near
    message = (
        f"page {promise.page}: “{promise.text}” stands {away:.1f} mm away from {x:.1f}, {y:.1f} mm, where it belongs"
    )
    return check.found(
        message, subject=f"page {promise.page}", hint="print it at its part", value=away, limit=promise.within
    )


CHECK = Check(
    "proof/words",
    "Letters and counts as promised",
    "a wrong letter or count sends the buyer to cut the wrong part, or too few",
    Severity.ERROR,
    run=run,
)
