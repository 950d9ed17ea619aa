"""How easily a layout is marked out and cut by hand: nothing askew, few different measures, one large offcut (common practice, no
source)."""

from collections.abc import Sequence

import numpy as np
import shapely

from publisher.basics import Box
from publisher.material.cuts import shared_cuts, straight_sides
from publisher.material.judge import polygons
from publisher.material.model import Ease, Item, Piece
from publisher.material.offcuts import largest_offcut
from publisher.material.packing import usual_turns

SAME_MEASURE = 0.1  # mm; measures that differ by less are one setting of the rule


def ease(pieces: Sequence[Piece], sheets: Sequence[Sequence[Item]], offcut: float = 0.0) -> Ease:
    """Return how easily sheets of items are cut; ``offcut`` is the area (mm²) of what they leave in one piece, where it is known."""
    usual = {p.id: usual_turns(p.rings[0]) for p in pieces}
    askew = sum(not upright(item.pose.turn, usual[item.part]) for sheet in sheets for item in sheet)
    corners = [shapely.bounds(polygons(pieces, sheet)).T for sheet in sheets if sheet]
    measures = sum(len(_measures(left)) + len(_measures(bottom)) for left, bottom, _, _ in corners)
    shared = sum(shared_cuts(straight_sides(pieces, sheet)) for sheet in sheets)
    return Ease(askew, measures, offcut, shared)


def ease_and_offcut(pieces: Sequence[Piece], sheets: Sequence[Sequence[Item]], free: Box, gap: float) -> Ease:
    """Return the same with the largest offcut of the emptiest sheet; ``free`` is the sheet inside its crushed edges."""
    used = [polygons(pieces, sheet) for sheet in sheets if sheet]
    emptiest = min(used, key=lambda laid: float(shapely.area(laid).sum()), default=None)
    offcut = None if emptiest is None else largest_offcut(emptiest, free, gap)
    return ease(pieces, sheets, offcut.width * offcut.height if offcut else 0.0)


def _measures(at: np.ndarray[tuple[int], np.dtype[np.float64]]) -> frozenset[int]:
    return frozenset(np.rint(at / SAME_MEASURE).astype(int).tolist())


def upright(turn: float, usual: Sequence[float]) -> bool:
    """Say whether a turn is one of those at which a part stands upright."""
    return any(abs((turn - one + 180.0) % 360.0 - 180.0) <= 1e-3 for one in usual)
