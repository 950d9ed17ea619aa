"""The file asks for single-sided print."""

from publisher.basics import Check, Outcome, Severity
from publisher.proof.measuring import Case


def run(case: Case, check: Check[Case]) -> Outcome:
    """Look at Duplex of the viewer preferences."""
    if case.file.duplex == "Simplex":
        return Outcome(1)
    said = f"asks for {case.file.duplex}" if case.file.duplex else "does not ask for single-sided print"
    return Outcome(1, (check.found(f"{case.file.name} {said}", subject=case.file.name, hint="set Duplex to Simplex"),))


CHECK = Check(
    "proof/duplex",
    "Single-sided",
    "templates on the back of templates cannot both be cut out",
    Severity.ERROR,
    run=run,
)
