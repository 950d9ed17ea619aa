"""No link leads out of the file."""

from publisher.basics import Check, Outcome, Severity
from publisher.proof.measuring import Case


def run(case: Case, check: Check[Case]) -> Outcome:
    """Report links to addresses."""
    found = tuple(
        check.found(
            f"page {page.number}: a link {target}",
            subject=f"page {page.number}",
            hint="take the link out, or print the address as words",
        )
        for page in case.file.pages
        for target in page.links
    )
    return Outcome(len(case.file.pages), found)


CHECK = Check(
    "proof/link-out",
    "No links out",
    "an address that dies, or that the designer did not write, must not stand in a published pack",
    Severity.ERROR,
    run=run,
)
