"""Edges that are cut to the slope of what rests on them: how far they are bevelled. Millimetres and degrees.

The height that a wall states is that of its outside face. Where its outside looks up the slope, its inside is the lower one
and the bevel is above zero; where it looks down the slope, the inside is the higher one.
"""

from collections.abc import Iterator
from itertools import product
from math import atan2, degrees

from publisher.basics import Finding
from publisher.design import EdgeRef, PanelPlan, Rest
from publisher.geometry.making.placed_edges import PlacedEdges, apart, middle, parallel, way
from publisher.geometry.rules import NO_SLOPE

NO_RISE = 1e-6  # sine: an edge that rises less lies level


def slope_bevels(plan: PanelPlan, edges: PlacedEdges) -> tuple[dict[EdgeRef, float], tuple[Finding, ...]]:
    """Return the bevel of each edge of an assembly that is cut to a slope, and findings where no slope follows.

    The slope is that of the sloping edges of the same rest; without one, that between two level edges of walls which one
    panel holds apart.
    """
    found: dict[EdgeRef, float] = {}
    told: list[Finding] = []
    for rest in plan.rests:
        for ref in rest.cut_to_slope:
            if ref not in edges:
                continue  # the unknown edge is told elsewhere
            bevel = _by_slopes(plan, rest, ref, edges) or _by_heights(plan, rest, ref, edges)
            if bevel is None:
                told.append(_none(rest, ref))
            else:
                found[ref] = bevel
    return found, tuple(told)


def _by_slopes(plan: PanelPlan, rest: Rest, ref: EdgeRef, edges: PlacedEdges) -> float | None:
    """Return the bevel of a level edge beside sloping ones."""
    sloping = [on for on in rest.on if on in edges and abs(way(edges[on])[1]) > NO_RISE]
    for on in sloping:
        x, y = way(edges[on])
        slope = degrees(atan2(abs(y), abs(x)))
        uphill = (x, y) if y > 0.0 else (-x, -y)
        for own, other in _pairs(plan):
            if own.panel != on.panel or other.panel != ref.panel or own not in edges:
                continue
            (ax, _), (bx, _) = middle(edges[on]), middle(edges[own])
            high = (bx - ax) * uphill[0] > 0.0
            return slope if high else -slope
    return None


def _by_heights(plan: PanelPlan, rest: Rest, ref: EdgeRef, edges: PlacedEdges) -> float | None:
    """Return the bevel of a level edge that lies higher or lower than another one, by what holds the two walls apart."""
    for on in rest.on:
        if on == ref or on not in edges or on.panel == ref.panel or abs(way(edges[on])[1]) > NO_RISE:
            continue
        for own, far in _held_apart(plan, ref, on, edges):
            inset = sum(join.inset for join in plan.joins if join.a in (own, far))
            run = apart(edges[own], edges[far]) - inset
            rise = middle(edges[ref])[1] - middle(edges[on])[1]
            return degrees(atan2(rise, run)) if run > 0.0 and rise else None
    return None


def _held_apart(plan: PanelPlan, ref: EdgeRef, on: EdgeRef, edges: PlacedEdges) -> Iterator[tuple[EdgeRef, EdgeRef]]:
    """Yield the parallel edges of a panel at which it is joined to the panels of two other edges."""
    ours = [own for own, other in _pairs(plan) if other.panel == ref.panel and own in edges]
    theirs = [far for far, other in _pairs(plan) if other.panel == on.panel and far in edges]
    for own, far in product(ours, theirs):
        if far.panel == own.panel and far != own and parallel(edges[own], edges[far]):
            yield own, far


def _pairs(plan: PanelPlan) -> Iterator[tuple[EdgeRef, EdgeRef]]:
    """Yield the edges of each join, both ways round."""
    for join in plan.joins:
        if join.at is None:
            yield join.a, join.b
            yield join.b, join.a


def _none(rest: Rest, ref: EdgeRef) -> Finding:
    return NO_SLOPE.found(
        f"{ref} is cut to the slope of {rest.panel}, and nothing says how steep that is",
        subject=f"{rest.panel} on {ref}",
        hint=f"let {rest.panel} rest on a sloping edge of a panel that {ref.panel} is joined to, such as the slope of a ramp_side, or "
        "on level edges of two walls of unequal height that one panel joins",
        place=rest.place,
    )
