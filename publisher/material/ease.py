"""How easily a layout is marked out and cut by hand: nothing askew, few different measures, one large offcut (common practice, no
source)."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import groupby

import numpy as np
import shapely

from publisher.material.cuts import shared_cuts, straight_sides
from publisher.material.judge import polygons
from publisher.material.model import Ease, Item, Piece
from publisher.material.offcuts import largest_offcut
from publisher.material.packing import Packed, usual_turns
from publisher.material.problem import Problem

SAME_MEASURE = 0.1  # mm; measures that differ by less are one setting of the rule


def ease(pieces: Sequence[Piece], sheets: Sequence[Sequence[Item]], offcut: float = 0.0) -> Ease:
    """Return how easily sheets of items are cut; ``offcut`` is the area (mm²) of what they leave in one piece, where it is known."""
    usual = {p.id: usual_turns(p.rings[0]) for p in pieces}
    askew = sum(not upright(item.pose.turn, usual[item.part]) for sheet in sheets for item in sheet)
    corners = [shapely.bounds(polygons(pieces, sheet)).T for sheet in sheets if sheet]
    measures = sum(len(_measures(left)) + len(_measures(bottom)) for left, bottom, _, _ in corners)
    shared = sum(shared_cuts(straight_sides(pieces, sheet)) for sheet in sheets)
    return Ease(askew, measures, offcut, shared)


def easiest_first(problem: Problem, equals: Sequence[Packed]) -> Iterator[Packed]:
    """Yield layouts of as many copies on as many sheets, the one that the board prefers first: the easiest to cut, or the densest.

    The offcuts, which take the longest to find, are looked for only where they decide.
    """
    different: dict[tuple[tuple[Item, ...], ...], Packed] = {}
    for packed in equals:
        different.setdefault(packed.sheets, packed)
    if len(different) < 2:
        yield from different.values()
        return
    eases = {sheets: ease(problem.pieces, sheets) for sheets in different}
    if problem.board.prefer == "density":
        known = {sheets: replace(one, offcut=offcut_area(problem, sheets)) for sheets, one in eases.items()}
        yield from (different[sheets] for sheets in sorted(known, key=lambda sheets: known[sheets].density))
        return
    for _, tied in groupby(sorted(eases, key=lambda sheets: eases[sheets].order), lambda sheets: eases[sheets]):
        alike = list(tied)
        if len(alike) > 1:
            alike.sort(key=lambda sheets: -offcut_area(problem, sheets))
        yield from (different[sheets] for sheets in alike)


def offcut_area(problem: Problem, sheets: Sequence[Sequence[Item]]) -> float:
    """Return the area (mm²) of the largest offcut of a layout's emptiest sheet; 0 where none is worth keeping."""
    used = [polygons(problem.pieces, sheet) for sheet in sheets if sheet]
    emptiest = min(used, key=lambda laid: float(shapely.area(laid).sum()), default=None)
    offcut = None if emptiest is None else largest_offcut(emptiest, problem.free(), problem.board.knife_gap)
    return offcut.width * offcut.height if offcut else 0.0


def _measures(at: np.ndarray[tuple[int], np.dtype[np.float64]]) -> frozenset[int]:
    return frozenset(np.rint(at / SAME_MEASURE).astype(int).tolist())


def upright(turn: float, usual: Sequence[float]) -> bool:
    """Say whether a turn is one of those at which a part stands upright."""
    return any(abs((turn - one + 180.0) % 360.0 - 180.0) <= 1e-3 for one in usual)
