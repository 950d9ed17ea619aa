"""No dark area or picture lies in a part."""

from publisher.basics import Check, Outcome, Severity
from publisher.proof.checks.outlines import name_of
from publisher.proof.measuring import AREA, Case


def run(case: Case, check: Check[Case]) -> Outcome:
    """Add up what dark areas cover of each part."""
    looked, found = 0, []
    for number, parts in case.parts().items():
        page = case.page(number)
        if page is None:
            continue
        looked += len(parts.promises)
        for dark in parts.dark_areas(page):
            if dark.area > AREA:
                x, y = dark.at
                found.append(
                    check.found(
                        f"page {number}: {name_of(dark.promise)}: {dark.area:.0f} mm² of it lie under a dark area or a picture, "
                        f"about {x:.1f}, {y:.1f} mm",
                        subject=dark.promise.part,
                        hint="leave the inside of parts to lines and words",
                        value=dark.area,
                        limit=AREA,
                    )
                )
    return Outcome(looked, tuple(found))


CHECK = Check(
    "proof/dark-area",
    "No dark areas in parts",
    "on black nobody sees the line to cut, and ink enough for it warps the paper",
    Severity.ERROR,
    run=run,
)
