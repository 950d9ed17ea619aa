"""Every page has one size: MediaBox at the origin, no box that differs from it."""

from publisher.basics import Box, Check, Finding, Outcome, Severity
from publisher.proof.measuring import Case

SAME = 0.005  # mm


def run(case: Case, check: Check[Case]) -> Outcome:
    """Compare each page's boxes."""
    found: list[Finding] = []
    for page in case.file.pages:
        media, crop = page.media, page.crop
        if media.width < 1 or media.height < 1:
            found.append(
                check.found(f"page {page.number} has no size", subject=f"page {page.number}", hint="give it a MediaBox")
            )
        elif max(abs(media.left), abs(media.bottom)) > SAME:
            found.append(
                check.found(
                    f"page {page.number} does not start at its origin: its lower left corner is at {media.left:.2f}, {media.bottom:.2f} mm",
                    subject=f"page {page.number}",
                    hint="let the MediaBox begin at 0 0",
                    value=max(abs(media.left), abs(media.bottom)),
                    limit=0.0,
                )
            )
        for name, box in page.other_boxes:
            off = max(abs(a - b) for a, b in zip(_sides(media), _sides(box), strict=True))
            if off > SAME:
                found.append(
                    check.found(
                        f"page {page.number} names a {name} of {box.width:.2f} × {box.height:.2f} mm "
                        f"in a page of {media.width:.2f} × {media.height:.2f} mm, by which some programs scale or cut the print",
                        subject=f"page {page.number}",
                        hint=f"leave the {name} out",
                        value=off,
                        limit=0.0,
                    )
                )
        off = max(abs(a - b) for a, b in zip(_sides(media), _sides(crop), strict=True))
        if off > SAME:
            found.append(
                check.found(
                    f"page {page.number} is cropped: viewers show {crop.width:.2f} × {crop.height:.2f} mm "
                    f"of {media.width:.2f} × {media.height:.2f} mm, "
                    "and print programs enlarge or shift such pages",
                    subject=f"page {page.number}",
                    hint="leave the CropBox out",
                    value=off,
                    limit=0.0,
                )
            )
    return Outcome(len(case.file.pages), tuple(found))


def _sides(box: Box) -> tuple[float, float, float, float]:
    return (box.left, box.bottom, box.right, box.top)


CHECK = Check(
    "proof/page-box",
    "One page size, from the origin",
    "print programs centre and scale by the CropBox; one that differs from the MediaBox shifts or enlarges the print",
    Severity.ERROR,
    run=run,
)
