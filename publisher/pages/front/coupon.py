"""The fit coupon: a tab and a slot of this design, or a step of its board, to cut from free board before any piece.

It is made as the parts are: in a pack that is traced it is drawn with the same allowance as the part that it stands for, so that
what is tried is the pencil and the hand as well as the board.
"""

from publisher.basics import Layer, LengthPromise, Point, TextPromise, polyline, record
from publisher.basics.units import inches
from publisher.basics.wording import paired
from publisher.pages.model import Drawn, Stroke
from publisher.pages.sheet import Body, Context, described
from publisher.pages.type import CUT, NOTE, SMALL

TAB = 14.0  # mm along the edge
PIECE = 28.0
COUPON_HIGH = 13.0  # of the piece under its tab
SIDE = 1.5  # clear of words in a piece


@record
class Fit:
    """What the coupon tries: the board, its thickness and how far that may be off (mm), the slot's width (0: no slots), and the
    pencil's allowance (0: it is cut as it is printed)."""

    board: str
    thickness: float
    spread: float
    slot: float
    allowance: float = 0.0


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
        return Fit(own.id, own.thickness, own.spread, 0.0, plans[0].trace_allowance)
    plan, thick, play = found
    own = context.design.board(plan.board)  # a slot's mate is of the same board, unless the thickness says otherwise
    boards = (own, *context.design.boards)
    mate = next((board for board in boards if abs(board.thickness - thick) < 1e-6), own)
    return Fit(mate.id, thick, mate.spread, thick + play, plan.trace_allowance)


def tried_boards(context: Context) -> tuple[Fit, ...]:
    """Return what is measured of each board of which pieces are cut: that of the coupon first, the others without a slot."""
    first = fit_of(context)
    if first is None:
        return ()
    used = {part.board for part in context.parts} - {first.board}
    others = (board for board in context.design.boards if board.id in used)
    return (first, *(Fit(board.id, board.thickness, board.spread, 0.0) for board in others))


def board_name(fit: Fit) -> str:
    """Return what a board is called in words."""
    return fit.board.replace("_", " ")


def coupon(context: Context, fit: Fit, page: int, at: Point) -> Body:
    """Draw the coupon with its lower left corner at ``at``: two pieces side by side (or one), 62 mm wide, 24 high with words."""
    return _tab_and_slot(context, fit, page, at) if fit.slot else _step(context, fit, page, at)


def _tab_and_slot(context: Context, fit: Fit, page: int, at: Point) -> Body:
    t, a = fit.thickness, fit.allowance
    x, y = at
    middle, shoulder = x + PIECE / 2, y + COUPON_HIGH - a
    inner, outer, far = TAB / 2 - a, PIECE / 2 - a, y + COUPON_HIGH + t - a
    tab = (
        (middle - outer, y + a),
        (middle + outer, y + a),
        (middle + outer, shoulder),
        (middle + inner, shoulder),
        (middle + inner, far),
        (middle - inner, far),
        (middle - inner, shoulder),
        (middle - outer, shoulder),
    )
    left = x + PIECE + 6.0
    plate = ((left + a, y + a), (left + PIECE - a, y + a), (left + PIECE - a, far), (left + a, far))
    long, wide = TAB + fit.slot - t + 2.0 * a, fit.slot + 2.0 * a
    cx, cy = left + PIECE / 2, y + (COUPON_HIGH + t) / 2 + 2.0
    slot = (
        (cx - long / 2, cy - wide / 2),
        (cx + long / 2, cy - wide / 2),
        (cx + long / 2, cy + wide / 2),
        (cx - long / 2, cy + wide / 2),
    )
    drawn: list[Drawn] = [Stroke(CUT, tuple(polyline(ring, True) for ring in (tab, plate, slot)), Layer.OUTLINES)]
    setter, size = context.type, _both(fit.slot, context)
    said = f"{'slot cut' if a else 'slot'} {size}"  # the card’s own is wider
    lines: tuple[str, ...] = (said,)
    if setter.width(said, NOTE) > PIECE - 2.0 * SIDE:
        lines = tuple(said.replace(" (", "\n(").split("\n")) if " (" in said else (said.removesuffix(f" {size}"), size)
    drawn += setter.line("tab", SMALL, middle, y + COUPON_HIGH / 2 - 1.0, align="centre")
    for above, words in zip(range(len(lines) - 1, -1, -1), lines, strict=True):
        drawn += setter.line(
            words, NOTE, cx, y + (2.2 if len(lines) == 1 else 1.2) + above * NOTE.leading, align="centre"
        )
    lengths = (
        LengthPromise(page, slot[1], slot[2], wide, "gauge"),
        LengthPromise(page, slot[0], slot[1], long, "gauge"),
        LengthPromise(page, tab[4], tab[5], 2.0 * inner, "gauge"),
        LengthPromise(page, tab[3], tab[4], t, "gauge"),
    )
    shown = described(drawn, f"Fit coupon: a tab, and a {said}")
    return Body(shown, lengths=lengths, texts=tuple(TextPromise(page, words) for words in lines))


def _step(context: Context, fit: Fit, page: int, at: Point) -> Body:
    t, a = fit.thickness, fit.allowance
    left, right, low, foot = at[0] + a, at[0] + 2 * PIECE - a, at[1] + COUPON_HIGH - a, at[1] + a
    riser = at[0] + PIECE - a
    ring = ((left, foot), (right, foot), (right, low), (riser, low), (riser, low + t), (left, low + t))
    setter, said = context.type, f"step {_both(t, context)}"
    drawn: tuple[Drawn, ...] = (
        Stroke(CUT, (polyline(ring, True),), Layer.OUTLINES),
        *setter.line(said, NOTE, at[0] + PIECE, at[1] + COUPON_HIGH / 2 - 1.0, align="centre"),
    )
    shown = described(drawn, f"Fit coupon: a {said}")
    return Body(shown, lengths=(LengthPromise(page, ring[3], ring[4], t, "gauge"),), texts=(TextPromise(page, said),))


def _both(mm: float, context: Context) -> str:
    """Say a length of the coupon: in mm, and where inches come first in thousandths of them too."""
    metric = f"{mm:.2f} mm"
    return metric if context.paper.first == "mm" else paired(metric, f"{inches(mm):.3f} in", "in")
