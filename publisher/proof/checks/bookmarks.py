"""The file has bookmarks."""

from publisher.basics import Check, Outcome, Severity
from publisher.proof.measuring import Case


def run(case: Case, check: Check[Case]) -> Outcome:
    """Look for the first level of the outline."""
    file = case.file
    if file.bookmarks:
        return Outcome(file.bookmarks)
    message = f"{file.name} has no bookmarks"
    return Outcome(1, (check.found(message, subject=file.name, hint="write one for each kind of page and each part"),))


CHECK = Check(
    "proof/bookmark",
    "Bookmarks",
    "a buyer who needs one part more finds its page by its bookmark",
    Severity.ERROR,
    run=run,
)
