"""Nothing is laid over the pages: no notes, stamps, form fields, no frames round links."""

from publisher.basics import Check, Outcome, Severity
from publisher.proof.measuring import Case


def run(case: Case, check: Check[Case]) -> Outcome:
    """Report annotations that print."""
    found = tuple(
        check.found(
            f"page {page.number} carries {what}",
            subject=f"page {page.number}",
            hint="take it out, or set the link's border to 0",
        )
        for page in case.file.pages
        for what in page.annotations
    )
    return Outcome(len(case.file.pages), found)


CHECK = Check(
    "proof/note-over-page",
    "Nothing laid over the page",
    "notes and frames print in some programs and not in others, and can cover an outline",
    Severity.ERROR,
    run=run,
)
