"""Straight stretches of a drawn outline as named edges, so that panels from drawings can be joined."""

from collections.abc import Sequence
from dataclasses import replace
from math import dist

from publisher.geometry.model import Edge
from publisher.geometry.paths import Curve

LEAST_EDGE = 5.0  # mm: a join needs at least that
_STRAIGHT = 1e-6  # sine of the greatest turn between stretches of one edge


def named_edges(outside: Sequence[Curve]) -> tuple[tuple[Curve, ...], tuple[Edge, ...]]:
    """Return the outside (anticlockwise, mm) with its straight stretches of 5 mm and more named ``edge_1`` and on, and the edges.

    ``edge_1`` begins at the lowest corner, of those the leftmost; the others follow anticlockwise.
    """
    merged = _merged(outside)
    corners = [i for i, curve in enumerate(merged) if _is_edge(curve)]
    if not corners:
        return tuple(merged), ()
    first = min(corners, key=lambda i: (round(merged[i].start[1], 3), merged[i].start[0]))
    turned = [*merged[first:], *merged[:first]]
    named: list[Curve] = []
    edges: list[Edge] = []
    for curve in turned:
        if not _is_edge(curve):
            named.append(curve)
            continue
        one = replace(curve, name=f"edge_{len(edges) + 1}")
        named.append(one)
        edges.append(Edge(one.name, one.start, one.end, one.start, one.end))
    return tuple(named), tuple(edges)


def _is_edge(curve: Curve) -> bool:
    return curve.centre is None and dist(curve.start, curve.end) >= LEAST_EDGE


def _merged(outside: Sequence[Curve]) -> list[Curve]:
    """Put straight stretches together that go on in one direction."""
    chain: list[Curve] = []
    for curve in outside:
        if chain and _goes_on(chain[-1], curve):
            chain[-1] = replace(chain[-1], end=curve.end)
        else:
            chain.append(curve)
    if len(chain) > 2 and _goes_on(chain[-1], chain[0]):
        chain[0] = replace(chain[0], start=chain.pop().start)
    return chain


def _goes_on(a: Curve, b: Curve) -> bool:
    if a.centre is not None or b.centre is not None:
        return False
    (ax, ay), (bx, by) = a.direction(a.start), b.direction(b.start)
    return abs(ax * by - ay * bx) < _STRAIGHT and ax * bx + ay * by > 0.0
