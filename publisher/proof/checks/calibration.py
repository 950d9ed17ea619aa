"""Calibration squares measure what they promise, on both axes."""

from publisher.basics import Check, Outcome, Severity
from publisher.proof.checks.lengths_shared import judge
from publisher.proof.measuring import Case


def run(case: Case, check: Check[Case]) -> Outcome:
    """Judge the sides of all calibration squares."""
    return judge(case, check, ("calibration",), "the side of the calibration square")


CHECK = Check(
    "proof/calibration",
    "Calibration squares true",
    "all that a buyer knows of the print's scale comes from these squares",
    Severity.ERROR,
    run=run,
)
