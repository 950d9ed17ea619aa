"""The file does nothing but show pages."""

from publisher.basics import Check, Outcome, Severity
from publisher.proof.measuring import Case


def run(case: Case, check: Check[Case]) -> Outcome:
    """Report scripts, programs, forms and everything else that a file can do."""
    file = case.file
    found = [check.found(f"{file.name} {what}", subject=file.name, hint="take it out") for what in file.actions]
    found += [
        check.found(f"page {page.number} {what}", subject=f"page {page.number}", hint="take it out")
        for page in file.pages
        for what in page.actions
    ]
    return Outcome(1 + len(file.pages), tuple(found))


CHECK = Check(
    "proof/action",
    "No scripts, no programs",
    "mail filters stop files with scripts, and buyers rightly fear them",
    Severity.ERROR,
    run=run,
)
