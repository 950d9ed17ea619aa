"""What the file says of itself: title, language, bookmarks, attached facts."""

from publisher.basics import Check, Findings
from publisher.proof.checks.frame import about, judged
from publisher.proof.measuring import Case
from publisher.proof.reading import normal


@judged("proof/title", "A title", "viewers, and readers who listen, name the file by its title")
def title(case: Case, check: Check[Case]) -> Findings:
    """Look for a title: the promised one where one was promised."""
    file, wanted = case.file, case.promises.title
    if not file.title:
        yield about(check, file.name, "has no title", "set Title in the document information")
    elif wanted and normal(file.title) != normal(wanted):
        what = f"has the title “{file.title}”; promised is “{wanted}”"
        yield about(check, file.name, what, "write the pack's title into the file")
    return 1


@judged("proof/language", "A language", "a voice that reads the page aloud needs to know its language")
def language(case: Case, check: Check[Case]) -> Findings:
    """Look for a language: the promised one where one was promised."""
    file, wanted = case.file, case.promises.language
    if not file.language:
        yield about(check, file.name, "does not name its language", "set Lang in the catalogue")
    elif wanted and file.language.lower() != wanted.lower():
        what = f"says that it is in “{file.language}”; promised is “{wanted}”"
        yield about(check, file.name, what, "write the pack's language into the file")
    return 1


@judged("proof/bookmark", "Bookmarks", "a buyer who needs one part more finds its page by its bookmark")
def bookmarks(case: Case, check: Check[Case]) -> Findings:
    """Look for an outline tree: with the promised entries under their parents, in order, each leading to its page, where any was
    promised."""
    there, wanted = (
        [(normal(b.title), b.page, b.depth + 1) for b in marks]
        for marks in (case.file.bookmarks, case.promises.bookmarks)
    )
    if not there:
        yield about(check, case.file.name, "has no bookmarks", "write one for each kind of page and each part")
    elif wanted and there != wanted:
        at = next(i for i in range(max(len(there), len(wanted))) if there[i : i + 1] != wanted[i : i + 1])
        found, promised = (_bookmark(marks, at) for marks in (there, wanted))
        what = f"has as bookmark {at + 1} {found}; promised is {promised}"
        yield about(check, case.file.name, what, "write the promised bookmarks, in order, each under its parent")
    return max(len(there), len(wanted), 1)


def _bookmark(marks: list[tuple[str, int, int]], at: int) -> str:
    """Return in words which bookmark stands at a place of the tree."""
    return "“{}” for page {}, at level {}".format(*marks[at]) if at < len(marks) else "none"


@judged(
    "proof/attachment",
    "Attached facts as made",
    "a print is judged later by the sizes and limits in the attached record: a changed record gives a wrong verdict",
    may_be_empty=True,
)
def attached(case: Case, check: Check[Case]) -> Findings:
    """Compare names and digests: the attached files are those that were promised, byte for byte, and no others."""
    there, wanted = case.file.attachments, case.promises.attachments
    wrong: list[tuple[str, str]] = []
    for promise in wanted:
        digests = [digest for name, digest in there if name == promise.name]
        if not digests:
            wrong.append((promise.name, "is not attached"))
        elif len(digests) > 1 or digests[0] != promise.sha256:
            wrong.append((promise.name, "is attached, but with another content than promised"))
    unknown = {name for name, _ in there} - {promise.name for promise in wanted}
    wrong += [(name, "is attached, which nobody promised") for name in sorted(unknown)]
    for name, what in wrong:
        hint = "attach the record that was made with the pack"
        yield check.found(f"the file {name} {what}", subject=name, hint=hint)
    return len(there) + len(wanted)
