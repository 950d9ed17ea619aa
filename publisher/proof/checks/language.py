"""The file says which language it is in."""

from publisher.basics import Check, Outcome, Severity
from publisher.proof.measuring import Case


def run(case: Case, check: Check[Case]) -> Outcome:
    """Compare the language."""
    file, wanted = case.file, case.promises.language
    if not file.language:
        return Outcome(
            1,
            (
                check.found(
                    f"{file.name} does not name its language", subject=file.name, hint="set Lang in the catalogue"
                ),
            ),
        )
    if wanted and file.language.lower() != wanted.lower():
        message = f"{file.name} says that it is in “{file.language}”; promised is “{wanted}”"
        return Outcome(1, (check.found(message, subject=file.name, hint="write the pack's language into the file"),))
    return Outcome(1)


CHECK = Check(
    "proof/language",
    "A language",
    "a voice that reads the page aloud needs to know its language",
    Severity.ERROR,
    run=run,
)
