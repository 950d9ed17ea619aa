"""Both readers measure the same."""

from publisher.basics import Box, Check, Finding, Outcome, Severity
from publisher.proof.measuring import Case

TOLERANCE = 0.1  # mm


def run(case: Case, check: Check[Case]) -> Outcome:
    """Compare each square by pixels with the same square by its lines."""
    found: list[Finding] = []
    looked = 0
    for square in case.pixels().squares:
        for value, level, way in ((square.across, True, "across"), (square.down, False, "down")):
            lines = _by_lines(case, square.page, square.box, level)
            if value is None or lines is None:
                continue
            looked += 1
            if abs(value - lines) > TOLERANCE:
                found.append(
                    check.found(
                        f"page {square.page}: the calibration square is {lines:.2f} mm {way} by its lines and {value:.2f} mm by pixels: "
                        "the two readers disagree",
                        subject=f"page {square.page}",
                        hint="look for something that viewers treat in different ways, and take it out",
                        value=value,
                        limit=lines,
                    )
                )
    return Outcome(looked, tuple(found))


def _by_lines(case: Case, page: int, box: Box, level: bool) -> float | None:
    """Return the mean length of the box's two sides that run this way, as the vector road found them."""
    sides = [
        r.found
        for r in case.lengths()
        if r.promise.page == page
        and r.promise.purpose == "calibration"
        and r.found is not None
        and (abs(r.promise.start[1] - r.promise.end[1]) < 0.01) == level
        and box.left - 0.01 <= min(r.promise.start[0], r.promise.end[0]) <= box.right + 0.01
        and box.bottom - 0.01 <= min(r.promise.start[1], r.promise.end[1]) <= box.top + 0.01
    ]
    return sum(sides) / len(sides) if sides else None


CHECK = Check(
    "proof/readers-disagree",
    "Two readers agree",
    "when a walk through the drawing and a picture of it differ, one of them misreads the file, and some viewer will too",
    Severity.ERROR,
    run=run,
    may_be_empty=True,
)
