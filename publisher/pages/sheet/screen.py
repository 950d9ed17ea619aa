"""Pages for a screen in a hand: their size, and what stands on every one of them. Nothing on them is at true size, nothing is printed."""

from publisher.basics import Box, FurniturePromise, Layer, TextPromise, polyline
from publisher.pages.model import Drawn, Paper, Stroke
from publisher.pages.sheet.draft import Body, Numbers
from publisher.pages.sheet.frame import Frame
from publisher.pages.type import RULE, SCREEN_SMALL, STRONG_RULE, Setter, tidy

NOT_TO_PRINT = "Not for printing"
SCREEN_WIDE, SCREEN_TALL = 90.0, 160.0  # mm: 9 to 16, as phones are upright
SCREEN_EDGE = 3.0  # mm round all that shows
SCREEN_TOP, SCREEN_FOOT = 9.0, 8.0  # mm inside that, of title and page number
SCREEN_AROUND = 0.3  # mm by which their boxes reach beyond the column
SCREEN_BESIDE = 2.0  # mm from the edge to words


def phone_frame(paper: Paper, height: float = SCREEN_TALL) -> Frame:
    """Return the frame of a screen beside the pack for a paper; taller than others where what stands together takes more: a phone
    scrolls."""
    limit = Box(SCREEN_EDGE, SCREEN_EDGE, SCREEN_WIDE - SCREEN_EDGE, height - SCREEN_EDGE)
    live = Box(limit.left, limit.bottom + SCREEN_FOOT, limit.right, limit.top - SCREEN_TOP)
    text = Box(
        live.left + SCREEN_BESIDE, live.bottom + SCREEN_BESIDE, live.right - SCREEN_BESIDE, live.top - SCREEN_BESIDE
    )
    return Frame(paper, False, SCREEN_WIDE, height, limit, live, text, None, None, ())


def room(paper: Paper) -> float:
    """Return the height (mm) of what stands on a screen."""
    return phone_frame(paper).text.height


def screen_furniture(setter: Setter, frame: Frame, title: str, numbers: Numbers) -> Body:
    """Draw a page's title over a rule, and that it is not for printing, with its number."""
    left, right, number = frame.text.left, frame.text.right, numbers.page
    page = f"page {number} of {numbers.total}"
    plain = SCREEN_SMALL.tagged("artifact")
    head, foot = frame.live.top + 1.0, frame.live.bottom - 1.0
    drawn: list[Drawn] = [
        *setter.line(tidy(title), SCREEN_SMALL.bold().tagged("h1"), left, head + 2.0),
        Stroke(STRONG_RULE, (polyline(((left, head), (right, head))),), Layer.PAGE, tag="artifact"),
        Stroke(RULE, (polyline(((left, foot), (right, foot))),), Layer.PAGE, tag="artifact"),
        *setter.line(NOT_TO_PRINT, plain.bold(), left, frame.limit.bottom + 2.2),
        *setter.line(page, plain, right, frame.limit.bottom + 2.2, align="right"),
    ]
    over = Box(left - SCREEN_AROUND, head - SCREEN_AROUND, right + SCREEN_AROUND, frame.limit.top)
    under = Box(left - SCREEN_AROUND, frame.limit.bottom, right + SCREEN_AROUND, foot + SCREEN_AROUND)
    boxes = (FurniturePromise(number, "header", over), FurniturePromise(number, "footer", under))
    return Body(tuple(drawn), texts=tuple(TextPromise(number, said) for said in (NOT_TO_PRINT, page)), furniture=boxes)
