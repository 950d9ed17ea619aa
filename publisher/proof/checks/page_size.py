"""Every page has its promised size."""

from publisher.basics import Check, Finding, Outcome, Severity
from publisher.proof.measuring import Case

TOLERANCE = 0.01  # mm


def run(case: Case, check: Check[Case]) -> Outcome:
    """Compare width and height as a viewer shows them."""
    found: list[Finding] = []
    looked = 0
    for promise in case.promises.pages:
        page = case.page(promise.page)
        if page is None:
            continue
        looked += 1
        off = max(abs(page.width - promise.width), abs(page.height - promise.height))
        if off > TOLERANCE:
            found.append(
                check.found(
                    f"page {page.number} is {page.width:.2f} × {page.height:.2f} mm; "
                    f"promised is {promise.width:.2f} × {promise.height:.2f} mm",
                    subject=f"page {page.number}",
                    hint="give the page the exact size of its paper",
                    value=off,
                    limit=TOLERANCE,
                )
            )
    return Outcome(looked, tuple(found))


CHECK = Check(
    "proof/page-size",
    "Page size as promised",
    "a page that is not exactly its paper is scaled or shifted by print programs",
    Severity.ERROR,
    run=run,
)
