"""Calibration squares measure what they promise in pixels of a second reader."""

from publisher.basics import Check, Finding, Outcome, Severity
from publisher.proof.measuring import Case

TOLERANCE = 0.1  # mm, about one pixel at 300 dpi


def run(case: Case, check: Check[Case]) -> Outcome:
    """Compare width and height of each square."""
    found: list[Finding] = []
    readings = case.pixels().squares
    for square in readings:
        for value, wanted, way in (
            (square.across, square.box.width, "across"),
            (square.down, square.box.height, "down"),
        ):
            if value is None:
                message = f"page {square.page}: the calibration square's lines are not seen {way}"
                found.append(
                    check.found(message, subject=f"page {square.page}", hint="draw all four sides in one piece")
                )
            elif abs(value - wanted) > TOLERANCE:
                message = f"page {square.page}: the calibration square is {value:.2f} mm {way} by pixels; promised are {wanted:.2f} mm"
                found.append(
                    check.found(
                        message,
                        subject=f"page {square.page}",
                        hint="draw the page without any scaling",
                        value=value,
                        limit=wanted,
                    )
                )
    return Outcome(len(readings), tuple(found))


CHECK = Check(
    "proof/calibration-by-pixels",
    "Calibration squares true in pixels",
    "what one reader computes, another must see: buyers look at pixels",
    Severity.ERROR,
    run=run,
)
