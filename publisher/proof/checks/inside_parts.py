"""In and around a part nothing misleads the knife: no other heavy line, no dark area."""

from publisher.basics import Check, Findings
from publisher.proof.checks.frame import copy_name, judged, page_name
from publisher.proof.measuring import AREA, OUTLINE_TOLERANCE, Case


@judged(
    "proof/line-unpromised",
    "No other lines to cut",
    "a slit, a second outline or a stray square is cut out as faithfully as the part itself",
)
def other_lines(case: Case, check: Check[Case]) -> Findings:
    """Hold every heavy stroke of the pages with outlines against the outlines."""
    looked = 0
    for number, parts in case.parts().items():
        ink = case.ink(number)
        if ink is None:
            continue
        looked += len(ink.width)
        for stray in parts.stray_lines(ink, number):
            x, y = stray.at
            what = f"a line {stray.width:.2f} mm wide"
            if stray.away <= OUTLINE_TOLERANCE:
                what += f" runs along the outline, which is to be {stray.near.width:.2f} mm wide"
            else:
                what += ", which reads as a line to cut, is no part of the outline"
            yield check.found(
                f"{page_name(number)}: {copy_name(stray.near)}: {what}; it passes {x:.1f}, {y:.1f} mm",
                subject=stray.near.part,
                hint="take the line out, or draw it thinner if it is not to be cut",
                value=stray.away,
                limit=OUTLINE_TOLERANCE,
            )
    return looked


@judged(
    "proof/dark-area",
    "No dark areas in parts",
    "on black nobody sees the line to cut, and ink enough for it warps the paper; "
    f"one part may carry {AREA:g} mm² of them, such as arrow heads",
)
def dark_areas(case: Case, check: Check[Case]) -> Findings:
    """Add up what dark areas and pictures cover of each part."""
    looked = 0
    for number, parts in case.parts().items():
        page = case.page(number)
        if page is None:
            continue
        looked += len(parts.promises)
        for dark in parts.dark_areas(page):
            if dark.area > AREA:
                x, y = dark.at
                yield check.found(
                    f"{page_name(number)}: {copy_name(dark.promise)}: {dark.area:.0f} mm² of it lie under a dark area "
                    f"or a picture, about {x:.1f}, {y:.1f} mm",
                    subject=dark.promise.part,
                    hint="leave the inside of parts to lines and words",
                    value=dark.area,
                    limit=AREA,
                )
    return looked
