"""The file asks nothing of print programs that would cut, repeat or leave out pages."""

from publisher.basics import Check, Outcome, Severity
from publisher.proof.measuring import Case


def run(case: Case, check: Check[Case]) -> Outcome:
    """Report viewer preferences about print area, copies and page ranges."""
    name = case.file.name
    found = tuple(
        check.found(f"{name} {wish}", subject=name, hint="take it out of the viewer preferences")
        for wish in case.file.wishes
    )
    return Outcome(1, found)


CHECK = Check(
    "proof/print-wish",
    "No other wishes about printing",
    "a print area cuts or enlarges pages behind the buyer's back, and five copies of a pack are four too many",
    Severity.ERROR,
    run=run,
)
