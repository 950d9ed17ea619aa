"""Inside an outline stands what was promised of the piece, and furniture in its place: nothing else, however thin or pale."""

from publisher.basics import Check, Findings
from publisher.proof.checks.frame import MOST_SAID, about, copy_name, judged, page_name
from publisher.proof.measuring import INSIDE_FROM, OWN_LINE, Case


@judged(
    "proof/unpromised-ink",
    "Nothing else inside outlines",
    "whatever stands inside the line to cut is cut, drawn, glued or read by somebody: every line, area, picture and word there was "
    f"promised of that piece, or is furniture of a known form in its place; lines may be {OWN_LINE:g} mm off, and what "
    f"reaches less than {INSIDE_FROM:g} mm over the outline is not inside",
    may_be_empty=True,
)
def stray_ink(case: Case, check: Check[Case]) -> Findings:
    """Look at everything inside the outlines of each page, at any width, dash and grey."""
    looked = 0
    for number, inside in case.insides().items():
        ink = case.ink(number)
        if ink is None:
            continue
        looked += len(inside.outlines)
        found = list(inside.stray(ink))
        for stray in found[:MOST_SAID]:
            x, y = stray.at
            yield check.found(
                f"{page_name(number)}: {copy_name(stray.outline)}: {stray.what} at {x:.1f}, {y:.1f} mm belongs to nothing that was "
                "promised there",
                subject=stray.outline.part,
                hint="promise it where the piece is worked out, or leave it out",
            )
        if len(found) > MOST_SAID:
            yield about(
                check, page_name(number), f": {len(found) - MOST_SAID} more things like these", "see the findings above"
            )
    return looked
