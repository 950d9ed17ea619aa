"""Outlines are drawn as wide as promised."""

from publisher.basics import Check, Outcome, Severity
from publisher.proof.checks.outlines import name_of
from publisher.proof.measuring import SAME_WIDTH, Case


def run(case: Case, check: Check[Case]) -> Outcome:
    """Compare the stroke's width of each outline."""
    readings = [r for r in case.outlines() if r.width > 0]
    found = tuple(
        check.found(
            f"page {r.promise.page}: {name_of(r.promise)}: its outline is {r.width:.2f} mm wide; promised are {r.promise.width:.2f} mm",
            subject=r.promise.part,
            hint="draw it in the width of lines to cut",
            value=r.width,
            limit=r.promise.width,
        )
        for r in readings
        if abs(r.width - r.promise.width) > SAME_WIDTH
    )
    return Outcome(len(readings), found)


CHECK = Check(
    "proof/outline-width",
    "Outlines of the right width",
    "along a line 5 mm wide nobody knows where to cut, and a thin one reads as a line to draw",
    Severity.ERROR,
    run=run,
)
