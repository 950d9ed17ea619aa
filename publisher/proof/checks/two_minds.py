"""Every reader sees the same file: no dictionary says two things about one key."""

from publisher.basics import Check, Outcome, Severity
from publisher.proof.measuring import Case


def run(case: Case, check: Check[Case]) -> Outcome:
    """Report a file of two minds."""
    if not case.file.two_minds:
        return Outcome(1)
    message = f"{case.file.name} says two things in one place, and viewers differ in which they take"
    return Outcome(1, (check.found(message, subject=case.file.name, hint="write the file again with one program"),))


CHECK = Check(
    "proof/two-minds",
    "One meaning",
    "a page that is true in one viewer and false in another cannot be proved",
    Severity.ERROR,
    run=run,
)
