"""The squares of the print-check page: 100 mm, and round it 4 in where rulers show inches; what they must measure, in words."""

from math import ceil, floor, gcd

from publisher.basics import Box, Layer, LengthPromise, polyline, record
from publisher.basics.units import INCH_MM
from publisher.pages.front.coupon import tried_boards
from publisher.pages.front.scale_range import ScaleRange
from publisher.pages.model import Paper, Stroke
from publisher.pages.sheet import Body, Context, Frame, make_frame
from publisher.pages.type import GAUGE

SQUARE_SIDE = 100.0  # mm
INCH_SIDE = 4.0  # in
ROUND = (INCH_SIDE * INCH_MM - SQUARE_SIDE) / 2.0  # mm between the two squares
COLUMN_MOST = 186.0  # mm on any paper: lines that are longer are lost on the way back
STRIP = 15.2  # along the left side, for the upright ruler
RULER = 12.0  # height of the ruler along the bottom
FRACTIONS = (32, 64)  # of an inch: what marks show, and half of that


@record
class CheckForm:
    """How the page is drawn: with a square of 4 ``inch`` round the other; its steps in ``small`` type; with a gauge for each board, or for
    the first alone."""

    inch: bool
    small: bool = False
    gauges: bool = True


def check_column(paper: Paper) -> tuple[Frame, Box]:
    """Return the frame of the print-check page, and the column of it that stands between its rulers. Raises Refusal for a paper
    that holds no page."""
    frame = make_frame(paper, False, 0.0, strip=STRIP)
    text = frame.text
    return frame, Box(text.left, text.bottom + RULER, min(text.right, text.left + COLUMN_MOST), text.top)


def forms_of(context: Context) -> tuple[CheckForm, ...]:
    """Return the forms that the page may have, the better first: with the square of 4 in where inches come first, and there is room; in
    small type rather than without it, or than on two pages. Each of several boards has its gauge, as far as that leaves room."""
    _, column = check_column(context.paper)
    inch = context.paper.first == "in" and min(column.width, column.height) >= INCH_SIDE * INCH_MM
    every = (True, False) if len(tried_boards(context)) > 1 else (True,)
    squares = (True, False) if inch else (False,)
    return tuple(CheckForm(two, small, gauges) for two in squares for gauges in every for small in (False, True))


def square_box(column: Box, form: CheckForm) -> Box:
    """Return where the square of 100 mm stands in the upper left corner of a column."""
    off = ROUND if form.inch else 0.0
    left, top = column.left + off, column.top - off
    return Box(left, top - SQUARE_SIDE, left + SQUARE_SIDE, top)


def two_squares(column: Box, page: int, form: CheckForm) -> tuple[Body, str]:
    """Draw the squares; return them with the words that name them: ``100 mm (3.94 in)``, ``4 in outside, 100 mm inside``."""
    box = square_box(column, form)
    if not form.inch:
        return _square(box, f"{SQUARE_SIDE:g} mm", page), f"{SQUARE_SIDE:g} mm ({SQUARE_SIDE / INCH_MM:.2f} in)"
    inner, outer = f"{SQUARE_SIDE:g} mm", f"{INCH_SIDE:g} in"
    body = _square(box, inner, page) + _square(box.grown(ROUND), outer, page, beside=True)
    return body, f"{outer} outside, {inner} inside"


def _square(box: Box, said: str, page: int, beside: bool = False) -> Body:
    corners = box.corners()
    lengths = tuple(
        LengthPromise(
            page,
            corners[a],
            corners[b],
            box.width,
            "dimension" if beside else "calibration",
            said if a in {0, 3} else "",
        )
        for a, b in ((0, 1), (1, 2), (2, 3), (3, 0))
    )
    return Body((Stroke(GAUGE, (polyline(corners, True),), Layer.PAGE),), lengths=lengths)


def inch_readings(allowed: ScaleRange) -> tuple[str, ...]:
    """Return what the square of 4 in measures, on a rule of so fine marks as tell it, where that of 100 mm measures what each row of the
    table of readings says: true; from 98, from 95, and under 95 mm; too large; true one way. Where the design allows less than any mark
    shows, no reading of it is true."""
    parts = _fraction(allowed) or FRACTIONS[0]
    from_98, from_95 = (ceil(INCH_SIDE * share * parts) for share in (0.98, 0.95))  # the first marks that are no less
    return (
        f"{INCH_SIDE:g} in" if inch_square_words(allowed) else "measure the inner",
        f"{_marked(from_98, parts)} to {_marked(int(INCH_SIDE) * parts - 1, parts)} in",
        f"{_marked(from_95, parts)} to {_marked(from_98 - 1, parts)} in",
        f"under {_marked(from_95, parts)} in",
        f"{_marked(int(INCH_SIDE) * parts + 1, parts)} in or more",
        "true one way only",
    )


def _marked(marks: int, parts: int) -> str:
    """Return so many marks of a rule, of ``parts`` to the inch, as they are read: ``3 15/16``."""
    whole, left = divmod(marks, parts)
    shared = gcd(left, parts)
    return f"{whole} {left // shared}/{parts // shared}"


def inch_square_words(allowed: ScaleRange) -> str:
    """Return what the square of 4 in must measure, as rulers of there show it: ``4 in, less than 1/64 in more or less``; '' where the
    design allows less than any mark shows."""
    fraction = _fraction(allowed)
    return f"{INCH_SIDE:g} in, less than 1/{fraction} in more or less" if fraction else ""


def _fraction(allowed: ScaleRange) -> int:
    """Return the parts of an inch that a reading of 4 in may not be off; 0 where no mark shows as little."""
    room = INCH_SIDE * min(1.0 - allowed.least, allowed.most - 1.0)
    return next((parts for parts in FRACTIONS if floor(room * parts + 1e-9)), 0)
