"""Rabbets: foam cut away along an edge from the inside face, the outside paper kept."""

from collections.abc import Iterator, Sequence
from math import dist

import shapely

from publisher.basics import LineKind, Point, Purpose, polyline
from publisher.geometry.model import Edge, Mark, Part, Region
from publisher.geometry.paths import polygon, recover

OVER = 1.0  # mm by which a strip reaches over its edge, so that no sliver stays
INSIDE = 1e-3  # mm: so near to a line counts as beside it


def strip(edge: Edge, body: shapely.Geometry) -> shapely.Polygon:
    """Return the strip along the finished edge in which the foam is cut away, with a little beyond the edge.

    The cut runs on past an end of the edge to the rim of the board: where the board goes on beside that end, rising from it
    as a gable does or a ruin, the mate may stand higher than the edge. Where the edge ends in an inner corner it stops.
    """
    if edge.rabbet is None:
        return shapely.Polygon()
    rims = [_is_rim(edge, body, at_end) for at_end in (False, True)]
    over, beyond = ([far if rim else 0.0 for rim in rims] for far in (OVER, _far(body)))
    plain = shapely.Polygon([*_line(edge, -OVER, *over), *reversed(_line(edge, edge.rabbet.width, *over))])
    longer = shapely.Polygon([*_line(edge, 0.0, *beyond), *reversed(_line(edge, edge.rabbet.width, *beyond))])
    own = [piece for piece in shapely.get_parts(shapely.intersection(longer, body)) if _touch(piece, plain)]
    whole = shapely.union_all([plain, *own])
    return whole if isinstance(whole, shapely.Polygon) else plain


def behind_paper(part: Part) -> Region:
    """Return what there is of a part behind the paper of its outside face: its finished outline without its rabbets."""
    body = polygon(part.outline)
    strips = [strip(edge, body) for edge in part.edges if edge.rabbet is not None]
    if not strips:
        return part.outline
    left = shapely.difference(body, shapely.union_all(strips))
    cuts = [Region(polyline(cut.exterior.coords[:-1], True, "rabbet")) for cut in strips]
    region, _ = recover(left, (part.outline, *cuts))
    return part.outline if region is None else region


def rabbet_marks(edges: Sequence[Edge], body: shapely.Geometry) -> Iterator[Mark]:
    """Yield the line up to which the foam is cut away. It lies on the inside face, so it is no line to cut on the drawn one."""
    for edge in edges:
        if edge.rabbet is None:
            continue
        far = shapely.LineString(_line(edge, edge.rabbet.width - INSIDE, _far(body), _far(body)))
        cut = shapely.intersection(far, shapely.intersection(strip(edge, body), body))
        (ax, ay), (bx, by) = edge.start, edge.end
        length = dist(edge.start, edge.end)
        along = [((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / length for x, y in shapely.get_coordinates(cut)]
        line = _line(edge, edge.rabbet.width, -min(along, default=0.0), max(along, default=length) - length)
        yield Mark(LineKind.REFERENCE, Purpose.RABBET, polyline(line), name=edge.name)


def _far(body: shapely.Geometry) -> float:
    left, bottom, right, top = body.bounds
    return float(right - left + top - bottom)


def _is_rim(edge: Edge, body: shapely.Geometry, at_end: bool) -> bool:
    """Tell whether an edge that went on past this end would leave the board there."""
    before, after = _line(edge, 0.0, INSIDE, INSIDE)
    return not shapely.intersects_xy(body, *(after if at_end else before))


def _touch(piece: shapely.Geometry, plain: shapely.Polygon) -> bool:
    return isinstance(piece, shapely.Polygon) and bool(shapely.intersection(piece, plain).area > 0.0)


def _line(edge: Edge, inside: float, before: float, after: float) -> tuple[Point, Point]:
    """Return the line beside an edge, ``inside`` mm within it, longer by so much at its start and at its end."""
    (ax, ay), (bx, by) = edge.start, edge.end
    length = dist(edge.start, edge.end)
    x, y = (bx - ax) / length, (by - ay) / length
    return (
        (ax - x * before - y * inside, ay - y * before + x * inside),
        (bx + x * after - y * inside, by + y * after + x * inside),
    )
