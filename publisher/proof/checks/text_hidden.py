"""No words are hidden."""

from publisher.basics import Check, Finding, Outcome, Severity
from publisher.proof.measuring import Case


def run(case: Case, check: Check[Case]) -> Outcome:
    """Look at every run of letters: painted, dark enough, and nothing over it."""
    found: list[Finding] = []
    looked = 0
    for page in case.file.pages:
        hidden = case.hidden(page.number)
        looked += len(hidden)
        for run_, why in zip(page.texts, hidden, strict=True):
            if why:
                found.append(
                    check.found(
                        f"page {page.number}: “{run_.text.strip()[:60]}” {why}",
                        subject=f"page {page.number}",
                        hint="take the words out, or bring them to the front in a dark colour",
                    )
                )
    return Outcome(looked, tuple(found))


CHECK = Check(
    "proof/text-hidden",
    "No hidden words",
    "words that the file holds but the print does not show are missed by the buyer and found by every other check",
    Severity.ERROR,
    run=run,
    may_be_empty=True,
)
