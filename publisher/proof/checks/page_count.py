"""The file has as many pages as promised."""

from publisher.basics import Check, Outcome, Severity
from publisher.proof.measuring import Case


def run(case: Case, check: Check[Case]) -> Outcome:
    """Count pages."""
    found, wanted = len(case.file.pages), len(case.promises.pages)
    if found == wanted:
        return Outcome(found)
    message = f"{case.file.name} has {found} page{'s' * (found != 1)}; promised are {wanted}"
    return Outcome(
        found,
        (
            check.found(
                message, subject=case.file.name, hint="make the file again", value=float(found), limit=float(wanted)
            ),
        ),
    )


CHECK = Check(
    "proof/page-count",
    "All pages there",
    "a missing page is a missing part; a page too many moves all page numbers of the print plan",
    Severity.ERROR,
    run=run,
)
