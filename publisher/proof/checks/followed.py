"""Proof could follow all that the pages paint with."""

from publisher.basics import Check, Outcome, Severity
from publisher.proof.case import Case


def run(case: Case, check: Check[Case]) -> Outcome:
    """Name what was painted in a way that this proof does not measure."""
    found = tuple(
        check.found(
            f"page {page.number} holds {what}; proof does not measure it",
            subject=f"page {page.number}",
            hint="look at the page yourself",
        )
        for page in case.file.pages
        for what in page.unread
    )
    return Outcome(len(case.file.pages), found)


CHECK = Check(
    "proof/not-followed",
    "All of it was followed",
    "what proof cannot measure it must not pass in silence",
    Severity.WARNING,
    run=run,
)
