"""Lengths that a buyer may measure are those that are promised, by their lines and by the pixels of a second reader."""

from publisher.basics import Box, Check, Finding, Findings
from publisher.proof.checks.frame import MOST_SAID, about, judged, page_name
from publisher.proof.measuring import LENGTH_TOLERANCE, Case, LengthReading

BY_PIXELS = 0.1  # mm, about one pixel at 300 dpi
LINE_LEVEL = 0.01  # mm
EXACT = f"true to {LENGTH_TOLERANCE:g} mm"


@judged(
    "proof/calibration",
    "Calibration squares true",
    f"all that a buyer knows of the print's scale comes from these squares: they are {EXACT}, on both axes",
)
def calibration(case: Case, check: Check[Case]) -> Findings:
    """Judge the sides of all calibration squares."""
    return (yield from _judge(case, check, ("calibration",), "the side of the calibration square"))


@judged(
    "proof/ruler",
    "Rulers and ticks true",
    f"one wrong tick makes a buyer doubt a good print, or trust a bad one: they are {EXACT}",
    may_be_empty=True,
)
def rulers(case: Case, check: Check[Case]) -> Findings:
    """Judge base lines and ticks."""
    return (yield from _judge(case, check, ("ruler", "tick"), "the ruler's line or tick"))


@judged(
    "proof/length",
    "Card, gauge and dimensions true",
    f"a buyer without a ruler judges the print by a bank card, and the board by the gauge: they are {EXACT}",
    may_be_empty=True,
)
def other_lengths(case: Case, check: Check[Case]) -> Findings:
    """Judge all other promised lengths."""
    return (yield from _judge(case, check, ("card", "gauge", "dimension"), "the length"))


def _judge(case: Case, check: Check[Case], purposes: tuple[str, ...], noun: str) -> Findings:
    """Yield the worst findings about lengths of these purposes, a few for each page."""
    readings = [r for r in case.lengths() if r.promise.purpose in purposes]
    for page in dict.fromkeys(r.promise.page for r in readings):
        bad = [r for r in readings if r.promise.page == page and not r.good]
        bad.sort(key=lambda r: -_size(r))
        for reading in bad[:MOST_SAID]:
            yield _finding(check, reading, noun)
        if len(bad) > MOST_SAID:
            more = f": {len(bad) - MOST_SAID} more of its lines are wrong in the same way"
            yield about(check, page_name(page), more, "see the findings above")
    return len(readings)


def _size(reading: LengthReading) -> float:
    return 1e9 if reading.found is None else max(abs(reading.found - reading.promise.length), reading.away)


def _finding(check: Check[Case], reading: LengthReading, noun: str) -> Finding:
    promise, who = reading.promise, page_name(reading.promise.page)
    named = f"{noun} “{promise.label}”" if promise.label else noun
    where = f"from {promise.start[0]:.2f}, {promise.start[1]:.2f} to {promise.end[0]:.2f}, {promise.end[1]:.2f} mm"
    if reading.found is None:
        what = f": {named} {where} is not drawn, or stands elsewhere"
        return about(check, who, what, "draw it where it is promised")
    hint = "draw the page without any scaling"
    if abs(reading.found - promise.length) > LENGTH_TOLERANCE:
        what = f": {named} {where} is {reading.found:.3f} mm long; promised are {promise.length:.3f} mm"
        return about(check, who, what, hint, reading.found, promise.length)
    return about(check, who, f": {named} {where} stands {reading.away:.3f} mm off its place", hint, reading.away, 0.0)


@judged(
    "proof/calibration-by-pixels",
    "Calibration squares true in pixels",
    f"what one reader computes, another must see, to {BY_PIXELS:g} mm: buyers look at pixels",
)
def calibration_by_pixels(case: Case, check: Check[Case]) -> Findings:
    """Compare width and height of each square with its promise."""
    for square in case.pixels().squares:
        who = page_name(square.page)
        for value, wanted, way in (
            (square.across, square.box.width, "across"),
            (square.down, square.box.height, "down"),
        ):
            if value is None:
                what = f": the calibration square's lines are not seen {way}"
                yield about(check, who, what, "draw all four sides in one piece")
            elif abs(value - wanted) > BY_PIXELS:
                what = f": the calibration square is {value:.2f} mm {way} by pixels; promised are {wanted:.2f} mm"
                yield about(check, who, what, "draw the page without any scaling", value, wanted)
    return len(case.pixels().squares)


@judged(
    "proof/readers-disagree",
    "Two readers agree",
    f"when a walk through the drawing and a picture of it differ by more than {BY_PIXELS:g} mm, one of them misreads "
    "the file, and some viewer will too",
    may_be_empty=True,
)
def readers_agree(case: Case, check: Check[Case]) -> Findings:
    """Compare each square by pixels with the same square by its lines."""
    looked = 0
    for square in case.pixels().squares:
        for value, level, way in ((square.across, True, "across"), (square.down, False, "down")):
            lines = _by_lines(case, square.page, square.box, level)
            if value is None or lines is None:
                continue
            looked += 1
            if abs(value - lines) > BY_PIXELS:
                what = f": the calibration square is {lines:.2f} mm {way} by its lines and {value:.2f} mm by pixels: "
                what += "the two readers disagree"
                hint = "look for something that viewers treat in different ways, and take it out"
                yield about(check, page_name(square.page), what, hint, value, lines)
    return looked


def _by_lines(case: Case, page: int, box: Box, level: bool) -> float | None:
    """Return the mean length of the box's two sides that run this way, as the vector road found them."""
    near = box.grown(LINE_LEVEL)
    sides = [
        r.found
        for r in case.lengths()
        if r.promise.page == page
        and r.promise.purpose == "calibration"
        and r.found is not None
        and (abs(r.promise.start[1] - r.promise.end[1]) < LINE_LEVEL) == level
        and near.left <= min(r.promise.start[0], r.promise.end[0]) <= near.right
        and near.bottom <= min(r.promise.start[1], r.promise.end[1]) <= near.top
    ]
    return sum(sides) / len(sides) if sides else None
