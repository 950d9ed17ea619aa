"""Rabbets: foam cut away along an edge from the inside face, the outside paper kept (trade notes, section 4)."""

from collections.abc import Iterator, Sequence
from math import dist

import shapely

from publisher.basics import LineKind, Point, Purpose, polyline
from publisher.geometry.model import Edge, Mark, Part, Region
from publisher.geometry.paths import polygon, recover

OVER = 1.0  # mm by which a strip reaches over its edge, so that no sliver stays


def strip(edge: Edge) -> shapely.Polygon:
    """Return the strip along the finished edge in which the foam is cut away, with a little beyond the edge."""
    if edge.rabbet is None:
        return shapely.Polygon()
    return shapely.Polygon([*_line(edge, -OVER, OVER), *reversed(_line(edge, edge.rabbet.width, OVER))])


def behind_paper(part: Part) -> Region:
    """Return what there is of a part behind the paper of its outside face: its finished outline without its rabbets."""
    strips = [strip(edge) for edge in part.edges if edge.rabbet is not None]
    if not strips:
        return part.outline
    left = shapely.difference(polygon(part.outline), shapely.union_all(strips))
    cuts = [Region(polyline(cut.exterior.coords[:-1], True, "rabbet")) for cut in strips]
    region, _ = recover(left, (part.outline, *cuts))
    return part.outline if region is None else region


def rabbet_marks(edges: Sequence[Edge]) -> Iterator[Mark]:
    """Yield the line up to which the foam is cut away. It lies on the inside face, so it is no line to cut on the drawn one."""
    for edge in edges:
        if edge.rabbet is not None:
            yield Mark(
                LineKind.REFERENCE, Purpose.RABBET, polyline(_line(edge, edge.rabbet.width, 0.0)), name=edge.name
            )


def _line(edge: Edge, inside: float, longer: float) -> tuple[Point, Point]:
    (ax, ay), (bx, by) = edge.start, edge.end
    length = dist(edge.start, edge.end)
    x, y = (bx - ax) / length, (by - ay) / length
    return (
        (ax - x * longer - y * inside, ay - y * longer + x * inside),
        (bx + x * longer - y * inside, by + y * longer + x * inside),
    )
