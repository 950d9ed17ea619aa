"""No pixel of the margins is inked, as the second reader draws the page."""

from publisher.basics import Check, Finding, Outcome, Severity
from publisher.proof.measuring import Case


def run(case: Case, check: Check[Case]) -> Outcome:
    """Look at the margins of every page at low resolution."""
    readings = case.pixels()
    found: list[Finding] = []
    if readings.trouble:
        found.append(
            check.found(
                f"the second reader gives up: {readings.trouble}", subject=case.file.name, hint="make the file again"
            )
        )
    for margin in readings.margins:
        if margin.pixels:
            x, y = margin.at
            found.append(
                check.found(
                    f"page {margin.page}: there is ink outside the printable limit, for one at {x:.1f}, {y:.1f} mm",
                    subject=f"page {margin.page}",
                    hint="keep everything inside the limit that the corner marks show",
                    value=float(margin.pixels),
                    limit=0.0,
                )
            )
    return Outcome(len(readings.margins), tuple(found))


CHECK = Check(
    "proof/ink-in-margin-by-pixels",
    "Margins stay white",
    "the same as the ink check by a second reader, which also sees letters' true shapes, patterns and notes",
    Severity.ERROR,
    run=run,
)
