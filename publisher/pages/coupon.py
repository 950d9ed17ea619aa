"""The fit coupon: a tab and a slot of this design, or a step of its board, to cut from scrap before anything else."""

from dataclasses import dataclass

from publisher.basics import Layer, LengthPromise, Point
from publisher.pages.draft import Body, Context
from publisher.pages.model import Drawn, Path, Stroke
from publisher.pages.styles import CUT, NOTE, SMALL

TAB = 14.0  # mm along the edge
PIECE = 28.0
HIGH = 13.0  # of the piece under its tab


@dataclass(frozen=True, slots=True)
class Fit:
    """What the coupon tries: board and its thickness, slot width (0: the design has no slots), allowance of a tracing pencil."""

    thickness: float
    slot: float
    allowance: float
    part: str  # letter of the part that the slot is of, or of the first part


def fit_of(context: Context) -> Fit | None:
    """Return the fit of the design's first slot, or of its first board when it has no slots; None without parts."""
    plans = context.design.parts
    found = next(((plan, row) for plan in plans for t in plan.treatments for row in t.slots), None)
    if found is not None:
        slotted, row = found
        return Fit(row.mate, row.mate + row.play, slotted.trace_allowance, slotted.letter)
    if not plans:
        return None
    return Fit(context.design.board(plans[0].board).thickness, 0.0, plans[0].trace_allowance, plans[0].letter)


def coupon(context: Context, fit: Fit, page: int, at: Point) -> Body:
    """Draw the coupon with its lower left corner at ``at``: two pieces side by side (or one), 62 mm wide, 24 high with words."""
    return _tab_and_slot(context, fit, page, at) if fit.slot else _step(context, fit, page, at)


def _tab_and_slot(context: Context, fit: Fit, page: int, at: Point) -> Body:
    p, t = fit.allowance, fit.thickness
    x, y = at
    middle = x + PIECE / 2
    tab = (
        (x + p, y + p),
        (x + PIECE - p, y + p),
        (x + PIECE - p, y + HIGH - p),
        (middle + TAB / 2 - p, y + HIGH - p),
        (middle + TAB / 2 - p, y + HIGH + t - p),
        (middle - TAB / 2 + p, y + HIGH + t - p),
        (middle - TAB / 2 + p, y + HIGH - p),
        (x + p, y + HIGH - p),
    )
    left = x + PIECE + 6.0
    play = fit.slot - t
    plate = (
        (left + p, y + p),
        (left + PIECE - p, y + p),
        (left + PIECE - p, y + HIGH + t - p),
        (left + p, y + HIGH + t - p),
    )
    half_long, half_wide = (TAB + play) / 2 + p, fit.slot / 2 + p
    cx, cy = left + PIECE / 2, y + (HIGH + t) / 2 + 2.0
    slot = (
        (cx - half_long, cy - half_wide),
        (cx + half_long, cy - half_wide),
        (cx + half_long, cy + half_wide),
        (cx - half_long, cy + half_wide),
    )
    drawn: list[Drawn] = [Stroke(CUT, tuple(Path(ring, True) for ring in (tab, plate, slot)), Layer.OUTLINES)]
    setter = context.type
    drawn += setter.line("tab", SMALL, middle, y + HIGH / 2 - 1.0, align="centre")
    drawn += setter.line(f"slot {fit.slot:.2f} mm", NOTE, cx, y + 2.2, align="centre")
    lengths = (LengthPromise(page, slot[1], slot[2], 2 * half_wide, "gauge"),)
    return Body(tuple(drawn), lengths=lengths)


def _step(context: Context, fit: Fit, page: int, at: Point) -> Body:
    p, t = fit.allowance, fit.thickness
    x, y = at
    low = y + HIGH - p
    ring = (
        (x + p, y + p),
        (x + 2 * PIECE - p, y + p),
        (x + 2 * PIECE - p, low),
        (x + PIECE - p, low),
        (x + PIECE - p, low + t),
        (x + p, low + t),
    )
    setter = context.type
    drawn: tuple[Drawn, ...] = (
        Stroke(CUT, (Path(ring, True),), Layer.OUTLINES),
        *setter.line(f"step {t:.2f} mm", NOTE, x + PIECE, y + HIGH / 2 - 1.0, align="centre"),
    )
    return Body(drawn, lengths=(LengthPromise(page, ring[3], ring[4], t, "gauge"),))
