"""The file has a title: the promised one where one was promised."""

from publisher.basics import Check, Outcome, Severity
from publisher.proof.measuring import Case
from publisher.proof.reading import normal


def run(case: Case, check: Check[Case]) -> Outcome:
    """Compare the title."""
    file, wanted = case.file, case.promises.title
    if not file.title:
        return Outcome(
            1,
            (
                check.found(
                    f"{file.name} has no title", subject=file.name, hint="set Title in the document information"
                ),
            ),
        )
    if wanted and normal(file.title) != normal(wanted):
        message = f"{file.name} has the title “{file.title}”; promised is “{wanted}”"
        return Outcome(1, (check.found(message, subject=file.name, hint="write the pack's title into the file"),))
    return Outcome(1)


CHECK = Check(
    "proof/title",
    "A title",
    "viewers, and readers who listen, name the file by its title",
    Severity.ERROR,
    run=run,
)
