"""No page is turned by its Rotate entry."""

from publisher.basics import Check, Outcome, Severity
from publisher.proof.measuring import Case


def run(case: Case, check: Check[Case]) -> Outcome:
    """Look at each page's Rotate."""
    found = tuple(
        check.found(
            f"page {page.number} is turned by {page.rotate}° after it was drawn",
            subject=f"page {page.number}",
            hint="draw it the way it is to be read, and leave Rotate out",
            value=float(page.rotate),
            limit=0.0,
        )
        for page in case.file.pages
        if page.rotate
    )
    return Outcome(len(case.file.pages), found)


CHECK = Check(
    "proof/page-rotated",
    "No turned pages",
    "print programs that turn pages themselves choose another paper direction and scale to fit it",
    Severity.ERROR,
    run=run,
)
