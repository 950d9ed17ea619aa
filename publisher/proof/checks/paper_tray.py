"""The file asks for the paper of its own size."""

from publisher.basics import Check, Outcome, Severity
from publisher.proof.measuring import Case


def run(case: Case, check: Check[Case]) -> Outcome:
    """Look at PickTrayByPDFSize of the viewer preferences."""
    if case.file.pick_tray:
        return Outcome(1)
    message = f"{case.file.name} does not ask for the paper tray that fits its page size"
    return Outcome(1, (check.found(message, subject=case.file.name, hint="set PickTrayByPDFSize to true"),))


CHECK = Check(
    "proof/paper-tray",
    "Paper tray by page size",
    "a printer with two papers otherwise takes the one that was used last",
    Severity.ERROR,
    run=run,
)
