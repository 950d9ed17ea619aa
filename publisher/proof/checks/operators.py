"""No page holds more lines than a home printer digests."""

from publisher.basics import Check, Outcome, Severity
from publisher.proof.measuring import Case

MOST = 4000


def run(case: Case, check: Check[Case]) -> Outcome:
    """Count path operators, those in forms included."""
    found = tuple(
        check.found(
            f"page {page.number} has {page.operators} path operators",
            subject=f"page {page.number}",
            hint=f"draw less texture, or share it out over more pages; at most {MOST}",
            value=float(page.operators),
            limit=float(MOST),
        )
        for page in case.file.pages
        if page.operators > MOST
    )
    return Outcome(len(case.file.pages), found)


CHECK = Check(
    "proof/too-many-lines",
    "Pages a printer digests",
    "old printers with little memory stop in the middle of a page with tens of thousands of lines",
    Severity.ERROR,
    run=run,
)
