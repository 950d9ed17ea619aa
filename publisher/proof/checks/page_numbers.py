"""Every page says which of how many it is."""

import re

from publisher.basics import Check, Outcome, Severity
from publisher.proof.measuring import Case


def run(case: Case, check: Check[Case]) -> Outcome:
    """Look for “n … m” on page n of m."""
    total = len(case.promises.pages)
    missing = []
    pages = [p.page for p in case.promises.pages if case.page(p.page) is not None]
    for number in pages:
        pattern = re.compile(rf"(?<![\d.,]){number}(?![\d.,]?\d)[^\d]{{1,16}}(?<![\d.,]){total}(?![\d.,]?\d)")
        if not any(pattern.search(line.text) for line in case.lines(number)):
            missing.append(
                check.found(
                    f"page {number} does not say that it is page {number} of {total}",
                    subject=f"page {number}",
                    hint="print “page n of m” on every page, counted as print programs count",
                )
            )
    return Outcome(len(pages), tuple(missing))


CHECK = Check(
    "proof/page-number",
    "Pages numbered",
    "a buyer prints single pages by the number in the print dialogue, and must find that number on the page",
    Severity.ERROR,
    run=run,
)
