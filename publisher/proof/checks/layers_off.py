"""No layer with content is off when the file is opened or printed."""

from publisher.basics import Check, Outcome, Severity
from publisher.proof.measuring import Case


def run(case: Case, check: Check[Case]) -> Outcome:
    """Name the layers that hide something."""
    found = tuple(
        check.found(
            f"page {page.number}: the layer “{name}” is off, and what lies on it does not print",
            subject=f"page {page.number}",
            hint="let every layer be on by default, on screen and in print",
        )
        for page in case.file.pages
        for name in page.hidden_layers
    )
    return Outcome(len(case.file.pages), found)


CHECK = Check(
    "proof/layer-off",
    "All layers on",
    "a buyer prints what the file shows when it is opened and never looks for the list of layers",
    Severity.ERROR,
    run=run,
)
