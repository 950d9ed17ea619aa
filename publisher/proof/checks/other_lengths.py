"""Card outline, board gauge and dimensions measure what they promise."""

from publisher.basics import Check, Outcome, Severity
from publisher.proof.checks.lengths_shared import judge
from publisher.proof.measuring import Case


def run(case: Case, check: Check[Case]) -> Outcome:
    """Judge all other promised lengths."""
    return judge(case, check, ("card", "gauge", "dimension"), "the length")


CHECK = Check(
    "proof/length",
    "Card, gauge and dimensions true",
    "a buyer without a ruler judges the print by a bank card, and the board by the gauge",
    Severity.ERROR,
    run=run,
    may_be_empty=True,
)
