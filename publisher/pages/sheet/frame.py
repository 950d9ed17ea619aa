"""The frame of a page: paper, printable limit, header and footer, and the corner kept for calibration square and page code."""

from typing import Literal

from publisher.basics import Box, Refusal, Rule, Severity, record
from publisher.pages.model import Paper
from publisher.pages.type import INSET, SPACE

Corner = Literal["lower_left", "lower_right", "upper_left", "upper_right"]

HEADER = 11.0  # from the printable limit down to the header's rule
FOOTER = 8.0
PAGE_SQUARE = 50.0  # calibration square
LEAST_SQUARE = 30.0  # where the parts leave no room
CODE = 14.5  # 29 modules of 0.5 mm (ISO/IEC 18004, version 3)
QUIET_MM = 2.0  # four modules kept free all round
SQUARE_CLEAR = 2.0  # between the square and anything else
INK = 0.5  # half of the widest line, and a little

PAPER_TOO_SMALL = Rule(
    "pages/paper-too-small",
    "The paper holds no page",
    "header, footer and a calibration square must fit inside the printable limit",
    Severity.ERROR,
)


@record
class Frame:
    """Where things go on a page (mm). ``paper`` is upright; ``width`` × ``height`` is this page, turned when ``landscape``.

    ``limit``: all ink lies inside it, corner marks stand in its corners. ``live``: between header and footer, where parts may be
    drawn right up to its sides. ``text``: the column for words, aligned with the header's. ``calibration``: the square itself
    (None on pages that carry none); ``code``: the box of the page code's modules, quiet zone not included.
    ``blocked``: what a body must keep clear of, all of it inside ``live``.
    """

    paper: Paper
    landscape: bool
    width: float
    height: float
    limit: Box
    live: Box
    text: Box
    calibration: Box | None
    code: Box | None
    blocked: tuple[Box, ...]


def make_frame(
    paper: Paper,
    landscape: bool,
    calibration: float,
    corner: Corner = "lower_right",
    *,
    code: bool = False,
    strip: float = 0.0,
) -> Frame:
    """Return the frame of a page.

    ``calibration``: side of the calibration square, 50 or, where the parts leave no room, at least 30; 0 for none. The page
    code stands inside the square, so that one corner holds both. ``code`` True without a square keeps a corner for the code alone.
    ``strip``: width in mm kept free along the left side, from corner mark to corner mark, for something as long as the page.

    The paper's margins are those of the upright page: the larger of bottom and top holds at both short edges and the larger of
    left and right along both long sides, whichever way the page is drawn, since the way it goes into a printer is not known.
    Raises Refusal when the paper is too small for that.
    """
    left, bottom, right, top = paper.margins
    width, height = (paper.height, paper.width) if landscape else (paper.width, paper.height)
    at_sides, at_ends = max(left, right), max(bottom, top)
    if landscape:
        at_sides, at_ends = at_ends, at_sides
    limit = Box(at_sides, at_ends, width - at_sides, height - at_ends)
    live = Box(limit.left + INK + strip, limit.bottom + FOOTER, limit.right - INK, limit.top - HEADER)
    text = Box(limit.left + max(INSET, strip), live.bottom + SPACE, limit.right - INSET, live.top - SPACE)
    if calibration and calibration < LEAST_SQUARE:
        raise ValueError(f"a square of {calibration} mm is smaller than {LEAST_SQUARE:g} mm")
    need = max(calibration, 40.0) + 2 * SQUARE_CLEAR
    if live.width < need or live.height < need:
        raise Refusal(
            PAPER_TOO_SMALL.found(
                f"paper {paper.name} is {paper.width:g} × {paper.height:g} mm and leaves {live.width:.1f} × {live.height:.1f} mm "
                f"between header, footer and margins; a page needs at least {need:g} × {need:g} mm",
                subject=paper.name,
                hint="use a larger paper, or smaller margins",
            )
        )
    square = _in_corner(live, calibration, corner) if calibration else None
    code_box = _code_in(square) if square else (_in_corner(live, CODE, corner, QUIET_MM) if code else None)
    blocked: tuple[Box, ...] = ()
    if square:
        blocked = (_to_sides(square.grown(SQUARE_CLEAR), live, corner),)
    elif code_box:
        blocked = (_to_sides(code_box.grown(QUIET_MM), live, corner),)
    return Frame(paper, landscape, width, height, limit, live, text, square, code_box, blocked)


def kept_boxes(frame: Frame) -> tuple[Box, ...]:
    """Return where no words of a page's body may stand: the corner of the square, and the code with its quiet zone."""
    return (*frame.blocked, *((frame.code.grown(QUIET_MM),) if frame.code else ()))


def columns(box: Box, count: int, gutter: float) -> tuple[Box, ...]:
    """Divide a box into columns of equal width, ``gutter`` mm apart, from the left."""
    width = (box.width - gutter * (count - 1)) / count
    return tuple(
        Box(box.left + i * (width + gutter), box.bottom, box.left + i * (width + gutter) + width, box.top)
        for i in range(count)
    )


def _in_corner(live: Box, side: float, corner: Corner, away: float = SQUARE_CLEAR) -> Box:
    """Return a square of this side in a corner of the live area, ``away`` mm from its sides."""
    left = live.left + away if corner.endswith("left") else live.right - away - side
    bottom = live.bottom + away if corner.startswith("lower") else live.top - away - side
    return Box(left, bottom, left + side, bottom + side)


def _code_in(square: Box) -> Box:
    """Return the code's box inside the calibration square: upper right, clear of the square's ticks."""
    away = QUIET_MM + (4.0 if square.width >= PAGE_SQUARE else 2.5)
    return Box(square.right - away - CODE, square.top - away - CODE, square.right - away, square.top - away)


def _to_sides(box: Box, live: Box, corner: Corner) -> Box:
    """Stretch a corner's box to the sides of the live area: no sliver is left for a part to hide in."""
    return Box(
        live.left if corner.endswith("left") else box.left,
        live.bottom if corner.startswith("lower") else box.bottom,
        live.right if corner.endswith("right") else box.right,
        live.top if corner.startswith("upper") else box.top,
    )
