"""Straight stretches of a drawn outline as named edges, so that panels from drawings can be joined."""

from collections.abc import Sequence
from dataclasses import replace

from publisher.basics import Arc, Line, Path, PathEdge
from publisher.geometry.model import Edge

LEAST_EDGE = 5.0  # mm: a join needs at least that
_STRAIGHT = 1e-6  # sine of the greatest turn between stretches of one edge


def named_edges(outside: Path) -> tuple[Path, tuple[Edge, ...]]:
    """Return the outside (anticlockwise, mm) with its straight stretches of 5 mm and more named ``edge_1`` and on, and the edges.

    ``edge_1`` begins at the lowest corner, of those the leftmost; the others follow anticlockwise.
    """
    merged = _merged(outside.edges)
    corners = [i for i, edge in enumerate(merged) if _is_edge(edge)]
    if not corners:
        return Path(tuple(merged)), ()
    first = min(corners, key=lambda i: (round(merged[i].start[1], 3), merged[i].start[0]))
    turned = [*merged[first:], *merged[:first]]
    named: list[PathEdge] = []
    edges: list[Edge] = []
    for edge in turned:
        if not _is_edge(edge):
            named.append(edge)
            continue
        one = replace(edge, name=f"edge_{len(edges) + 1}")
        named.append(one)
        edges.append(Edge(one.name, one.start, one.end, one.start, one.end))
    return Path(tuple(named)), tuple(edges)


def _is_edge(edge: PathEdge) -> bool:
    return isinstance(edge, Line) and edge.length >= LEAST_EDGE


def _merged(outside: Sequence[PathEdge]) -> list[PathEdge]:
    """Put straight stretches together that go on in one direction."""
    chain: list[PathEdge] = []
    for edge in outside:
        if chain and _goes_on(chain[-1], edge):
            chain[-1] = replace(chain[-1], end=edge.end)
        else:
            chain.append(edge)
    if len(chain) > 2 and _goes_on(chain[-1], chain[0]):
        chain[0] = replace(chain[0], start=chain.pop().start)
    return chain


def _goes_on(a: PathEdge, b: PathEdge) -> bool:
    if isinstance(a, Arc) or isinstance(b, Arc):
        return False
    (ax, ay), (bx, by) = a.direction(a.start), b.direction(b.start)
    return abs(ax * by - ay * bx) < _STRAIGHT and ax * bx + ay * by > 0.0
