"""Every promised outline is dark in pixels all along, and shows as a line: the paper beside it is light."""

from publisher.basics import Check, Finding, Outcome, Severity
from publisher.proof.checks.outlines import name_of
from publisher.proof.measuring import GAP, SOLID, Case


def run(case: Case, check: Check[Case]) -> Outcome:
    """Judge the longest light stretch of each outline, and the longest along which an area hides it."""
    found: list[Finding] = []
    sights = case.pixels().rings
    for sight in sights:
        who = f"page {sight.promise.page}: {name_of(sight.promise)}"
        if sight.light > GAP:
            x, y = sight.light_at
            found.append(
                check.found(
                    f"{who}: {sight.light:.1f} mm of the outline cannot be seen, from {x:.1f}, {y:.1f} mm on",
                    subject=sight.promise.part,
                    hint="let nothing cover or fade the outline, and draw it in black",
                    value=sight.light,
                    limit=GAP,
                )
            )
        if sight.smeared > SOLID:
            x, y = sight.smeared_at
            found.append(
                check.found(
                    f"{who}: along {sight.smeared:.1f} mm the outline lies at or in a dark area, from {x:.1f}, {y:.1f} mm on",
                    subject=sight.promise.part,
                    hint="leave the paper on both sides of an outline white",
                    value=sight.smeared,
                    limit=SOLID,
                )
            )
    return Outcome(len(sights), tuple(found))


CHECK = Check(
    "proof/outline-by-pixels",
    "Outlines seen in pixels",
    "whatever covers, fades or floods a cut line, the buyer sees pixels and no operators: another reader must see the line",
    Severity.ERROR,
    run=run,
)
