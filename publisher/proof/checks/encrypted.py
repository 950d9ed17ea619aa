"""The file is not encrypted."""

from publisher.basics import Check, Outcome, Severity
from publisher.proof.measuring import Case


def run(case: Case, check: Check[Case]) -> Outcome:
    """Report encryption, with or without a password."""
    if not case.file.encrypted:
        return Outcome(1)
    message = f"{case.file.name} is encrypted, so that nothing in it can be judged"
    return Outcome(
        1, (check.found(message, subject=case.file.name, hint="save it without a password and without restrictions"),)
    )


CHECK = Check(
    "proof/encrypted",
    "No encryption",
    "restrictions stop buyers from printing, and stop proof from reading",
    Severity.ERROR,
    run=run,
)
