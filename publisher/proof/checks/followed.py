"""Proof could follow all that the pages paint with."""

from dataclasses import replace

from publisher.basics import Check, Outcome, Severity
from publisher.proof.measuring import Case


def run(case: Case, check: Check[Case]) -> Outcome:
    """Name what was painted in a way that this proof does not measure."""
    found = tuple(
        check.found(
            f"page {page.number} holds {what}; proof does not measure it",
            subject=f"page {page.number}",
            hint="look at the page yourself" if not case.promised else "draw it with plain lines, areas and greys",
        )
        for page in case.file.pages
        for what in page.unread
    )
    if not case.promised:  # in a file of others it says no more than that something stays open
        found = tuple(replace(f, severity=Severity.WARNING) for f in found)
    return Outcome(len(case.file.pages), found)


CHECK = Check(
    "proof/not-followed",
    "All of it was followed",
    "what proof cannot measure it must not pass in silence",
    Severity.ERROR,
    run=run,
)
