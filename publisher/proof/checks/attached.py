"""The attached files are those that were promised, byte for byte, and no others."""

from publisher.basics import Check, Finding, Outcome, Severity
from publisher.proof.measuring import Case


def run(case: Case, check: Check[Case]) -> Outcome:
    """Compare names and digests."""
    there, wanted = case.file.attachments, case.promises.attachments
    found: list[Finding] = []
    for promise in wanted:
        digests = [digest for name, digest in there if name == promise.name]
        if not digests:
            found.append(_finding(check, promise.name, "is not attached"))
        elif len(digests) > 1 or digests[0] not in (promise.sha256, *promise.or_else):
            found.append(_finding(check, promise.name, "is attached, but with another content than promised"))
    known = {promise.name for promise in wanted}
    for name in sorted({name for name, _ in there} - known):
        found.append(_finding(check, name, "is attached, which nobody promised"))
    return Outcome(len(there) + len(wanted), tuple(found))


def _finding(check: Check[Case], name: str, what: str) -> Finding:
    return check.found(f"the file {name} {what}", subject=name, hint="attach the record that was made with the pack")


CHECK = Check(
    "proof/attachment",
    "Attached facts as made",
    "a print is judged later by the sizes and limits in the attached record: a changed record gives a wrong verdict",
    Severity.ERROR,
    run=run,
    may_be_empty=True,
)
