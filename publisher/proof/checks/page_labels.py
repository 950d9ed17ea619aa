"""Every page carries the label that is promised, in the file's own list of labels."""

from publisher.basics import Check, Finding, Outcome, Severity
from publisher.proof.measuring import Case


def run(case: Case, check: Check[Case]) -> Outcome:
    """Compare the labels of pages."""
    file = case.file
    wanted = [p for p in case.promises.pages if p.label and case.page(p.page) is not None]
    if wanted and not file.labels:
        message = f"{file.name} has no page labels"
        return Outcome(len(wanted), (check.found(message, subject=file.name, hint="write the labels into the file"),))
    found: list[Finding] = []
    for promise in wanted:
        label = file.labels[promise.page - 1]
        if label != promise.label:
            found.append(
                check.found(
                    f"page {promise.page} is labelled “{label}”; promised is “{promise.label}”",
                    subject=f"page {promise.page}",
                    hint="label pages as print programs count them",
                )
            )
    return Outcome(len(wanted), tuple(found))


CHECK = Check(
    "proof/page-label",
    "Pages labelled",
    "viewers show the labels in their list of pages; with others than those printed a buyer prints the wrong page",
    Severity.ERROR,
    run=run,
    may_be_empty=True,
)
