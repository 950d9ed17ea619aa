"""Straight cuts as a buyer makes them: each runs where its words say, past pieces that lie where theirs say."""

from functools import partial

import numpy as np
import shapely

from publisher.basics import Carried, Check, Findings, LayoutPromise, PlacePromise
from publisher.proof.checks.frame import carried_faults, judged, words_at
from publisher.proof.checks.layout_measures import CUT, PIECE, Ruling, ruling_of
from publisher.proof.measuring import Case

GRAZED = 0.02  # mm: layouts keep their gaps to a hundredth, at a cut on either side of it


@judged(
    "proof/layout-cuts",
    "Straight cuts clear of the pieces",
    "a buyer cuts along a rule through the whole board: laid and cut by the printed figures, no straight cut runs into a piece at its true "
    f"size by more than {GRAZED:g} mm, or by one step of the finest rule where pieces lie too close for any other",
    may_be_empty=True,
)
def layout_cuts(case: Case, check: Check[Case]) -> Findings:
    """Lay each promised sheet again by its words alone, and look for a piece that a straight cut runs into."""
    hint = "round a straight cut away from the pieces beside it, as their own measures lay them"
    for promise in case.promises.layouts:
        who = f"{promise.board.replace('_', ' ')}, {promise.sheet}: sheet {promise.number}"
        if promise.cuts:
            judge = partial(_fault, case, promise)
            yield from carried_faults(case, check, promise.key, who, hint, judge, f": {who}")
    return sum(len(promise.cuts) for promise in case.promises.layouts)


def _fault(case: Case, promise: LayoutPromise, _where: Carried) -> str:
    """Return in words which piece is cut into; empty when none is."""
    rule = ruling_of(case, promise)
    if rule is None:
        return ""  # said by the check of the measures
    laid = {place.order: shape for place in promise.places if (shape := _laid(case, promise, rule, place)) is not None}
    orders, shapes = list(laid), np.array(list(laid.values()), dtype=object)
    tree = shapely.STRtree(shapes)
    limit = max(GRAZED, rule.step if rule.finest else 0.0)
    for number in range(1, len(promise.cuts) + 1):
        line = _line(case, promise, rule, number)
        for near in tree.query(line, predicate="intersects") if line is not None else ():
            if shapely.intersects(shapely.buffer(shapes[near], -limit, join_style="mitre"), line):
                return f"cut {number} runs into piece {orders[near]}, as both are printed"
    return ""


def _laid(case: Case, promise: LayoutPromise, rule: Ruling, place: PlacePromise) -> shapely.Geometry | None:
    """Return a piece, as on the board, where its words put it; None where they are no measures of it."""
    found = next(
        (m for w in case.carried(promise.key_of("piece", place.order)) if (m := PIECE.fullmatch(words_at(case, w)))),
        None,
    )
    if found is None:
        return None
    read = [rule.point(found[k], found[k + 2]) for k in (3, 6, 9) if found[k] is not None]
    rings = [np.asarray(ring) @ (1, 1j) for ring in place.rings]
    if len(read) != len(place.measures):
        return None
    by = 1.0 + 0.0j
    if len(read) == 1:
        first = complex(rings[0].real.min(), rings[0].imag.min())
    else:  # both points are corners of the outline
        first, second = (rings[0][np.abs(rings[0] - complex(*m.at)).argmin()] for m in place.measures)
        by = (read[1] - read[0]) / (second - first)
    moved = [read[0] + (ring - first) * by / abs(by) for ring in rings]
    outer, *holes = (np.column_stack((ring.real, ring.imag)) for ring in moved)
    return shapely.Polygon(outer, holes)


def _line(case: Case, promise: LayoutPromise, rule: Ruling, number: int) -> shapely.LineString | None:
    """Return a straight cut where its words put it; None where they are none."""
    for where in case.carried(promise.key_of("cut", number)):
        if found := CUT.fullmatch(words_at(case, where)):
            level = (found[2] == "upright") == rule.turned
            whole = promise.width if level else promise.height
            start, end = (rule.length(found[4]), rule.length(found[5])) if found[4] else (0.0, whole)
            at = rule.length(found[3])
            return shapely.LineString([(along, at) if level else (at, along) for along in (start, end)])
    return None
