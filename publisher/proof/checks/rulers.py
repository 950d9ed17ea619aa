"""Rulers and all their ticks are true."""

from publisher.basics import Check, Outcome, Severity
from publisher.proof.checks.lengths_shared import judge
from publisher.proof.measuring import Case


def run(case: Case, check: Check[Case]) -> Outcome:
    """Judge base lines and ticks."""
    return judge(case, check, ("ruler", "tick"), "the ruler's line or tick")


CHECK = Check(
    "proof/ruler",
    "Rulers and ticks true",
    "one wrong tick makes a buyer doubt a good print, or trust a bad one",
    Severity.ERROR,
    run=run,
    may_be_empty=True,
)
