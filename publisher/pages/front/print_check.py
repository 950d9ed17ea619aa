"""The print-check page: is the print true to scale, and is the board as thick as the design takes it to be?"""

from collections.abc import Callable
from dataclasses import replace

from publisher.basics import Box, Refusal, remembered_lately
from publisher.basics.units import inches
from publisher.pages.front.board_gauges import board, gauged_boards
from publisher.pages.front.check_pieces import glued, how, limits, scrap, square, wrong
from publisher.pages.front.check_squares import SQUARE_SIDE, CheckForm, check_column, forms_of, square_box
from publisher.pages.front.coupon import board_name
from publisher.pages.sheet import (
    CODE,
    FOOTER,
    MILLIMETRES,
    PAPER_TOO_SMALL,
    QUIET_MM,
    SIXTEENTHS,
    Body,
    Context,
    Frame,
    Numbers,
    PageDraft,
    base_line,
    graduation,
    make_frame,
)
from publisher.pages.type import GUTTER, LEAST, SPACE, Setter

TASK = "Check your printer and your board"
CHECK_PAGE = 2  # it always is: the cover is one page
TITLE = f"Page {CHECK_PAGE}: print and measure it first"
TRIED_TITLE = "Free test page: measure it first"
CHECK_ACROSS, CHECK_UP = 180.0, 240.0
BASE = 6.1  # of the upright ruler's line, from the printable limit: its numbers keep clear of the mark at that side
UNDER_TABLE = 2.0  # to the words that belong to it
CHECK_WIDE = 168.0  # what the usual arrangement needs

CheckBlock = Callable[
    [Context, Box, int, CheckForm], tuple[Body, float]
]  # draws under the top of the box; returns the height used
READ: tuple[CheckBlock, ...] = (square, how, board, limits, scrap, wrong, glued)  # in this order, whatever their places


def print_check_drafts(context: Context) -> tuple[PageDraft, ...]:
    """Return the print-check page; on a paper too small for its usual arrangement, as many pages as it takes.

    Raises Refusal when the paper cannot hold a square of 100 mm.
    """
    frame, column = check_column(context.paper)
    if column.width < SQUARE_SIDE or column.height < SQUARE_SIDE:
        raise Refusal(
            PAPER_TOO_SMALL.found(
                f"paper {context.paper.name} leaves {column.width:.1f} × {column.height:.1f} mm beside its rulers; "
                f"the print-check page needs a square of {SQUARE_SIDE:g} mm",
                subject=context.paper.name,
                hint=_missing(column),
            )
        )
    form, roomy = _form_of(context)
    if roomy:
        return (_on_one_page(context, _with_code(frame, column, form), column, form),)
    return _flowed(context, _with_code(frame, column, form), column, form)


@remembered_lately
def _form_of(context: Context) -> tuple[CheckForm, bool]:
    """Return how the page is drawn, and whether one page holds its usual arrangement."""
    _, column = check_column(context.paper)
    forms = forms_of(context)
    wide = column.width >= CHECK_WIDE
    holds = (f for f in forms if wide and _arranged(context, column, 0, f)[1] >= column.bottom)
    form = next(holds, None)
    return (CheckForm(False), False) if form is None else (form, True)


def has_two_squares(context: Context) -> bool:
    """Tell whether the page has a square of 4 in round the one of 100 mm."""
    return _form_of(context)[0].inch


def gauges_on(context: Context) -> tuple[str, ...]:
    """Return the names of the boards that have a gauge on the page."""
    return tuple(map(board_name, gauged_boards(context, _form_of(context)[0])))


def _with_code(frame: Frame, column: Box, form: CheckForm) -> Frame:
    """Return the frame with the page code in the lower right corner of the square."""
    square_at = square_box(column, form)
    corner = (square_at.right - QUIET_MM - 2.5, square_at.bottom + QUIET_MM + 2.5)
    return replace(frame, code=Box(corner[0] - CODE, corner[1], corner[0], corner[1] + CODE))


def _on_one_page(context: Context, frame: Frame, column: Box, form: CheckForm) -> PageDraft:
    def body(numbers: Numbers) -> Body:
        rulers = _rulers(context.type, frame, numbers.page)
        return rulers + _arranged(context, column, numbers.page, form)[0]

    return _draft(context, 1, frame, body)


def _missing(column: Box) -> str:
    """Say what room the square lacks, and the two ways to give it."""
    lacks = [
        f"{short:.1f} mm ({inches(short):.2f} in) more {way}"
        for short, way in ((SQUARE_SIDE - column.width, "across"), (SQUARE_SIDE - column.height, "upwards"))
        if short > 0
    ]
    return f"it needs {' and '.join(lacks)}: use smaller margins, if the printer can print there, or a larger paper"


def _draft(context: Context, number: int, frame: Frame, body: Callable[[Numbers], Body]) -> PageDraft:
    key = "print_check" if number == 1 else f"print_check:{number}"
    first, task = (TITLE, TASK) if context.purpose == "pack" else (TRIED_TITLE, "")
    return PageDraft("print_check", key, first if number == 1 else "Print check", frame, body, task)


def _arranged(context: Context, column: Box, page: int, form: CheckForm) -> tuple[Body, float]:
    """Draw the usual arrangement: square and gauge, words and coupon side by side, under both what a reading means. Return it
    with the height (mm on the page) at which it ends."""
    at = square_box(column, form)
    middle = at.right + at.left - column.left
    sides = (
        (Box(column.left, column.bottom, middle, column.top), (square, board, limits)),
        (Box(middle + GUTTER, column.bottom, column.right, column.top), (how, scrap)),
    )
    bodies: dict[CheckBlock, Body] = {}
    foot = column.top
    for side, pieces in sides:
        y = side.top
        for piece in pieces:
            bodies[piece], high = piece(context, replace(side, top=y), page, form)
            y -= high + (SPACE if piece is board else GUTTER) if high else 0.0  # the limits are read with the gauge
        foot = min(foot, y + SPACE)
    for piece in (wrong, glued):
        bodies[piece], high = piece(context, replace(column, top=foot), page, form)
        foot -= high + (UNDER_TABLE if piece is wrong else 0.0)
    return sum((bodies[piece] for piece in READ if piece in bodies), Body()), foot


def _flowed(context: Context, frame: Frame, column: Box, form: CheckForm) -> tuple[PageDraft, ...]:
    """Put the pieces under each other, on as many pages as they need."""
    plain = make_frame(context.paper, False, 0.0, code=True)
    over_code = replace(plain.text, bottom=max(box.top for box in plain.blocked))
    pages: list[list[tuple[CheckBlock, Box]]] = [[]]
    box = column
    for piece in READ:
        high = piece(context, box, 0, form)[1]
        if not high:
            continue
        if pages[-1] and box.height < high:
            pages.append([])
            box = over_code
            high = piece(context, box, 0, form)[1]
        pages[-1].append((piece, box))
        box = replace(box, top=box.top - high - (UNDER_TABLE if piece is wrong else GUTTER))

    def body(number: int) -> Callable[[Numbers], Body]:
        def draw(numbers: Numbers) -> Body:
            whole = _rulers(context.type, frame, numbers.page) if number == 1 else Body()
            for piece, where in pages[number - 1]:
                whole += piece(context, where, numbers.page, form)[0]
            return whole

        return draw

    return tuple(_draft(context, n, frame if n == 1 else plain, body(n)) for n in range(1, len(pages) + 1))


def _rulers(setter: Setter, frame: Frame, page: int) -> Body:
    """Draw one ruler along the bottom and one up the left side: millimetres on one side of each line, inches on the other."""
    limit = frame.limit
    across = _whole_centimetres(min(CHECK_ACROSS, limit.right - 2.05 - frame.text.left))
    up = _whole_centimetres(min(CHECK_UP, limit.height - 12.0))
    start = (frame.text.left, frame.live.bottom + 6.5)
    foot = (limit.left + BASE, limit.bottom + min((limit.height - up) / 2, FOOTER + 6.5))
    body = Body()
    for at, length, upright in ((start, across, False), (foot, up, True)):
        body += base_line(page, at, length, upright, f"{length:g}")
        body += graduation(setter, page, at, length, MILLIMETRES, upright, 1)
        body += graduation(setter, page, at, length, SIXTEENTHS, upright, -1)
    least = LEAST.tagged("artifact")
    cap = setter.cap(least)
    units = (
        *setter.line("mm", least, start[0] + 2.6, start[1] + 3.8),
        *setter.line("in", least, start[0] + 2.6, start[1] - 3.8 - cap),
        *setter.line("mm", least, foot[0] + 3.8, foot[1] + 6.0),
        *setter.line("in", least, foot[0] - 3.0, foot[1] + 6.0, align="right"),
    )
    return body + Body(units)


def _whole_centimetres(length: float) -> float:
    return float(int(length / 10 + 1e-9) * 10)
