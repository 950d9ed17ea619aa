"""No page changes the size of its unit."""

from publisher.basics import Check, Outcome, Severity
from publisher.proof.measuring import Case


def run(case: Case, check: Check[Case]) -> Outcome:
    """Look at each page's UserUnit."""
    found = tuple(
        check.found(
            f"page {page.number} sets its unit to {page.user_unit:g} times 1/72 inch, which some viewers follow and others do not",
            subject=f"page {page.number}",
            hint="leave UserUnit out",
            value=page.user_unit,
            limit=1.0,
        )
        for page in case.file.pages
        if page.user_unit != 1.0
    )
    return Outcome(len(case.file.pages), found)


CHECK = Check(
    "proof/user-unit",
    "Units of 1/72 inch",
    "viewers that ignore UserUnit print at another size than those that follow it",
    Severity.ERROR,
    run=run,
)
