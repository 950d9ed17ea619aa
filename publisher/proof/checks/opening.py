"""The file opens, says one thing to every reader, and proof can follow all of it."""

from dataclasses import replace

from publisher.basics import Check, Findings, Severity
from publisher.proof.checks.frame import about, judged, page_name
from publisher.proof.measuring import Case


@judged(
    "proof/not-readable",
    "The file opens",
    "a buyer's viewer must open what is published; a file cut short in a transfer often opens in one viewer only",
)
def readable(case: Case, check: Check[Case]) -> Findings:
    """Report why the file cannot be read."""
    file = case.file
    if file.trouble and not file.encrypted:
        yield about(check, file.name, f"cannot be read: {file.trouble}", "make the file again")
    return 1


@judged("proof/encrypted", "No encryption", "restrictions stop buyers from printing, and stop proof from reading")
def encrypted(case: Case, check: Check[Case]) -> Findings:
    """Report encryption, with or without a password."""
    if case.file.encrypted:
        what = "is encrypted, so that nothing in it can be judged"
        yield about(check, case.file.name, what, "save it without a password and without restrictions")
    return 1


@judged("proof/two-minds", "One meaning", "a page that is true in one viewer and false in another cannot be proved")
def two_minds(case: Case, check: Check[Case]) -> Findings:
    """Report a file in which a dictionary says two things about one key."""
    if case.file.two_minds:
        what = "says two things in one place, and viewers differ in which they take"
        yield about(check, case.file.name, what, "write the file again with one program")
    return 1


@judged("proof/not-followed", "All of it was followed", "what proof cannot measure it must not pass in silence")
def followed(case: Case, check: Check[Case]) -> Findings:
    """Name what was painted in a way that this proof does not measure; in a file of others it only stays open."""
    ours = case.promised
    hint = "draw it with plain lines, areas and greys" if ours else "look at the page yourself"
    for page in case.file.pages:
        for what in page.unread:
            finding = about(check, page_name(page.number), f"holds {what}; proof does not measure it", hint)
            yield finding if ours else replace(finding, severity=Severity.WARNING)
    return len(case.file.pages)
