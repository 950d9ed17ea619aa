"""Words are large enough to read."""

from publisher.basics import Check, Finding, Outcome, Severity
from publisher.proof.measuring import Case

LEAST_X_HEIGHT = 1.2  # mm: Regulation (EU) 1169/2011, article 13(2)
ROUNDING = 0.005


def run(case: Case, check: Check[Case]) -> Outcome:
    """Measure the x-height of every run by the glyphs of its font."""
    found: list[Finding] = []
    looked = 0
    for page in case.file.pages:
        small = []
        for run_ in page.texts:
            if not any(c.isalnum() for c in run_.text):
                continue
            looked += 1
            if run_.x_height < LEAST_X_HEIGHT - ROUNDING:
                small.append(run_)
        if small:
            worst = min(small, key=lambda r: r.x_height)
            more = f" and {len(small) - 1} more" if len(small) > 1 else ""
            found.append(
                check.found(
                    f"page {page.number}: “{worst.text.strip()[:60]}”{more} is too small: its letter x is {worst.x_height:.2f} mm high",
                    subject=f"page {page.number}",
                    hint=f"set it so that the letter x is at least {LEAST_X_HEIGHT} mm high",
                    value=worst.x_height,
                    limit=LEAST_X_HEIGHT,
                )
            )
    return Outcome(looked, tuple(found))


CHECK = Check(
    "proof/text-too-small",
    "Readable size",
    "an x-height of 1.2 mm is the least that the law allows on food labels (Regulation (EU) 1169/2011, article 13)",
    Severity.ERROR,
    run=run,
    may_be_empty=True,
)
