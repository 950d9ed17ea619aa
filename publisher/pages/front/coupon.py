"""The fit coupon: a tab and a slot of this design, or a step of its board, to cut from scrap before anything else.

It is cut directly through the paper, not traced, so everything on it is drawn at its finished size.
"""

from publisher.basics import Layer, LengthPromise, Point, polyline, record
from publisher.pages.model import Drawn, Stroke
from publisher.pages.sheet import Body, Context
from publisher.pages.type import CUT, NOTE, SMALL

TAB = 14.0  # mm along the edge
PIECE = 28.0
COUPON_HIGH = 13.0  # of the piece under its tab


@record
class Fit:
    """What the coupon tries: the board, its thickness and how far that may be off (mm), and the slot's width (0: no slots)."""

    board: str
    thickness: float
    spread: float
    slot: float


def fit_of(context: Context) -> Fit | None:
    """Return the fit of the design's first slot for a tab, else of its first slot for a panel that crosses, else of its first
    board; None without parts."""
    plans = context.design.parts
    if not plans:
        return None
    slots = [(plan, row.mate, row.play) for plan in plans for t in plan.treatments for row in t.slots]
    laps = [(plan, lap.mate, lap.play) for plan in plans for t in plan.treatments for lap in t.laps]
    found = next(iter((*slots, *laps)), None)
    own = context.design.board(plans[0].board)
    if found is None:
        return Fit(own.id, own.thickness, own.spread, 0.0)
    plan, thick, play = found
    own = context.design.board(plan.board)  # a slot's mate is of the same board, unless the thickness says otherwise
    boards = (own, *context.design.boards)
    mate = next((board for board in boards if abs(board.thickness - thick) < 1e-6), own)
    return Fit(mate.id, thick, mate.spread, thick + play)


def coupon(context: Context, fit: Fit, page: int, at: Point) -> Body:
    """Draw the coupon with its lower left corner at ``at``: two pieces side by side (or one), 62 mm wide, 24 high with words."""
    return _tab_and_slot(context, fit, page, at) if fit.slot else _step(context, fit, page, at)


def _tab_and_slot(context: Context, fit: Fit, page: int, at: Point) -> Body:
    t = fit.thickness
    x, y = at
    middle = x + PIECE / 2
    tab = (
        (x, y),
        (x + PIECE, y),
        (x + PIECE, y + COUPON_HIGH),
        (middle + TAB / 2, y + COUPON_HIGH),
        (middle + TAB / 2, y + COUPON_HIGH + t),
        (middle - TAB / 2, y + COUPON_HIGH + t),
        (middle - TAB / 2, y + COUPON_HIGH),
        (x, y + COUPON_HIGH),
    )
    left = x + PIECE + 6.0
    plate = ((left, y), (left + PIECE, y), (left + PIECE, y + COUPON_HIGH + t), (left, y + COUPON_HIGH + t))
    long, wide = TAB + fit.slot - t, fit.slot
    cx, cy = left + PIECE / 2, y + (COUPON_HIGH + t) / 2 + 2.0
    slot = (
        (cx - long / 2, cy - wide / 2),
        (cx + long / 2, cy - wide / 2),
        (cx + long / 2, cy + wide / 2),
        (cx - long / 2, cy + wide / 2),
    )
    drawn: list[Drawn] = [Stroke(CUT, tuple(polyline(ring, True) for ring in (tab, plate, slot)), Layer.OUTLINES)]
    setter = context.type
    drawn += setter.line("tab", SMALL, middle, y + COUPON_HIGH / 2 - 1.0, align="centre")
    drawn += setter.line(f"slot {fit.slot:.2f} mm", NOTE, cx, y + 2.2, align="centre")
    lengths = (
        LengthPromise(page, slot[1], slot[2], wide, "gauge"),
        LengthPromise(page, slot[0], slot[1], long, "gauge"),
        LengthPromise(page, tab[4], tab[5], TAB, "gauge"),
        LengthPromise(page, tab[3], tab[4], t, "gauge"),
    )
    return Body(tuple(drawn), lengths=lengths)


def _step(context: Context, fit: Fit, page: int, at: Point) -> Body:
    t = fit.thickness
    x, y = at
    low = y + COUPON_HIGH
    ring = ((x, y), (x + 2 * PIECE, y), (x + 2 * PIECE, low), (x + PIECE, low), (x + PIECE, low + t), (x, low + t))
    setter = context.type
    drawn: tuple[Drawn, ...] = (
        Stroke(CUT, (polyline(ring, True),), Layer.OUTLINES),
        *setter.line(f"step {t:.2f} mm", NOTE, x + PIECE, y + COUPON_HIGH / 2 - 1.0, align="centre"),
    )
    return Body(drawn, lengths=(LengthPromise(page, ring[3], ring[4], t, "gauge"),))
