"""Pictures have enough pixels for the size at which they are placed."""

from publisher.basics import Check, Finding, Outcome, Severity
from publisher.proof.measuring import Case
from publisher.proof.reading import MM_PER_INCH

LEAST = 150.0  # dots per inch
ROUNDING = 0.5


def run(case: Case, check: Check[Case]) -> Outcome:
    """Divide pixels by inches, both ways, for every placed picture."""
    found: list[Finding] = []
    looked = 0
    for page in case.file.pages:
        for image in page.images:
            looked += 1
            if image.across <= 0 or image.down <= 0:
                continue
            dots = min(image.pixels_across / image.across, image.pixels_down / image.down) * MM_PER_INCH
            if dots < LEAST - ROUNDING:
                found.append(
                    check.found(
                        f"page {page.number}: a picture of {image.pixels_across} × {image.pixels_down} pixels is placed at "
                        f"{image.across:.1f} × {image.down:.1f} mm: {dots:.0f} dots per inch",
                        subject=f"page {page.number}",
                        hint=f"use a picture with more pixels, or place it smaller; {LEAST:.0f} dots per inch are the least",
                        value=dots,
                        limit=LEAST,
                    )
                )
    return Outcome(looked, tuple(found))


CHECK = Check(
    "proof/picture-too-coarse",
    "Pictures fine enough",
    "below 150 dots per inch a builder can no longer see in a photograph how parts meet",
    Severity.ERROR,
    run=run,
    may_be_empty=True,
)
