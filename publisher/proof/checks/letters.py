"""Every letter shown is in its font and has a meaning."""

from publisher.basics import Check, Finding, Outcome, Severity
from publisher.proof.measuring import Case


def run(case: Case, check: Check[Case]) -> Outcome:
    """Look at every shown letter: its glyph must not be the missing-letter box, and /ToUnicode must name it."""
    found: list[Finding] = []
    looked = 0
    for page in case.file.pages:
        looked += len(page.texts)
        for run_ in page.texts:
            if run_.broken:
                found.append(
                    check.found(
                        f"page {page.number}: {run_.broken} letter{'s' * (run_.broken > 1)} of “{run_.text.strip()[:60]}” "
                        f"cannot be read: the font {run_.font} lacks the letter or its meaning",
                        subject=f"page {page.number}",
                        hint="use a font that has the letter, or write the word in another way",
                        value=float(run_.broken),
                        limit=0.0,
                    )
                )
    nameless = {f.name for page in case.file.pages for f in page.fonts if f.shown and not f.meaning}
    found += [
        check.found(
            f"the letters of the font {name} have no meaning in the file", subject=name, hint="write a ToUnicode map"
        )
        for name in sorted(nameless)
    ]
    return Outcome(looked, tuple(found))


CHECK = Check(
    "proof/letter-missing",
    "No missing letters",
    "an empty box instead of a letter spoils a part's name; letters without meaning can be neither searched nor read aloud",
    Severity.ERROR,
    run=run,
    may_be_empty=True,
)
