"""All fonts are in the file."""

from publisher.basics import Check, Outcome, Severity
from publisher.proof.measuring import Case


def run(case: Case, check: Check[Case]) -> Outcome:
    """Look at every font that pages and forms name."""
    fonts = {(f.name, f.kind): f for page in case.file.pages for f in page.fonts}
    found = tuple(
        check.found(
            f"the font {font.name} is not in the file: every viewer puts another one in its place",
            subject=font.name,
            hint="embed the font, or take it out of the page's resources if it is not used",
        )
        for font in fonts.values()
        if not font.embedded
    )
    return Outcome(len(fonts), found)


CHECK = Check(
    "proof/font-not-embedded",
    "All fonts embedded",
    "a substitute has other widths and may lack letters, so that words run over lines and numbers go missing",
    Severity.ERROR,
    run=run,
    may_be_empty=True,
)
