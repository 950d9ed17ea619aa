"""Named edges after a boolean: which of them are still there, how long, and under which name."""

from collections.abc import Sequence
from dataclasses import replace

from publisher.basics import SAME_POINT, Line, Path, PathEdge, Point
from publisher.geometry.model import Edge
from publisher.geometry.registry import Shape

ON_LINE = 1e-4  # mm: a corner that a boolean has put this near to an edge's line lies on it


def surviving_edges(outer: Path, shapes: Sequence[Shape]) -> tuple[Path, tuple[Edge, ...]]:
    """Return the outer path and the edges that are still on it.

    A straight edge goes from the first to the last point that is left of it, also when something is cut out of its middle,
    or when a neighbour goes on in line under the same name. An edge of a copy takes the plain name when the original
    edge of that name is gone and no other copy's is left.
    """
    edges: dict[str, Edge] = {}
    for shape in shapes:
        for edge in shape.edges:
            own = [piece for piece in outer.edges if piece.name == edge.name]
            if own and edge.name not in edges:
                edges[edge.name] = _what_is_left(edge, own)
    names = _plain_names(edges, [edge.name for edge in shapes[0].edges])
    renamed = outer.renamed(lambda name: names.get(name, name))
    return renamed, tuple(replace(edge, name=names.get(name, name)) for name, edge in edges.items())


def _what_is_left(edge: Edge, own: Sequence[PathEdge]) -> Edge:
    (sx, sy), (ex, ey) = edge.start, edge.end
    size = ((ex - sx) ** 2 + (ey - sy) ** 2) ** 0.5
    straight = edge.centre is None and size > SAME_POINT and all(isinstance(piece, Line) for piece in own)
    if straight:
        x, y = (ex - sx) / size, (ey - sy) / size
        points = [point for piece in own for point in (piece.start, piece.end)]
        if all(abs((px - sx) * y - (py - sy) * x) < ON_LINE for px, py in points):
            along = [(px - sx) * x + (py - sy) * y for px, py in points]

            def at(t: float) -> Point:
                t = 0.0 if abs(t) < ON_LINE else size if abs(t - size) < ON_LINE else t
                return (sx + x * t, sy + y * t) if t != size else (ex, ey)

            return _between(edge, at(min(along)), at(max(along)))
    ordered = _in_order(own)
    return _between(edge, ordered[0].start, ordered[-1].end)


def _between(edge: Edge, start: Point, end: Point) -> Edge:
    return replace(edge, start=start, end=end, nominal_start=start, nominal_end=end)


def _in_order(own: Sequence[PathEdge]) -> list[PathEdge]:
    """Return the pieces of one edge from the one that no other leads to (the path may begin in the middle of the edge)."""
    first = next((i for i, c in enumerate(own) if not any(_meet(o.end, c.start) for o in own)), 0)
    return [*own[first:], *own[:first]]


def _meet(a: Point, b: Point) -> bool:
    return abs(a[0] - b[0]) < SAME_POINT and abs(a[1] - b[1]) < SAME_POINT


def _plain_names(edges: dict[str, Edge], plain: Sequence[str]) -> dict[str, str]:
    """Map the name of an only surviving copy to the plain name."""
    found = {}
    for name in plain:
        copies = [n for n in edges if n.startswith(f"{name}_") and n.removeprefix(f"{name}_") not in ("", *plain)]
        copies = [n for n in copies if n[len(name) + 1 :].isdigit() or n.endswith("_mirrored")]
        if name not in edges and len(copies) == 1:
            found[copies[0]] = name
    return found
