"""The file opens and its pages can be walked."""

from publisher.basics import Check, Outcome, Severity
from publisher.proof.measuring import Case


def run(case: Case, check: Check[Case]) -> Outcome:
    """Report why the file cannot be read."""
    file = case.file
    if file.trouble and not file.encrypted:
        return Outcome(
            1,
            (
                check.found(
                    f"{file.name} cannot be read: {file.trouble}", subject=file.name, hint="make the file again"
                ),
            ),
        )
    return Outcome(1)


CHECK = Check(
    "proof/not-readable",
    "The file opens",
    "a buyer's viewer must open what is published; a file cut short in a transfer often opens in one viewer only",
    Severity.ERROR,
    run=run,
)
