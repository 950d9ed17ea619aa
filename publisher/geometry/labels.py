"""Free places inside a part for the words that stand beside its edges: matching letters and bevels."""

from collections.abc import Iterator, Sequence
from math import dist, radians, tan

import shapely

from publisher.basics import LineKind, Point, Purpose
from publisher.geometry.model import Edge, Mark
from publisher.geometry.values import deg

CLEAR = 3.0  # mm between a word's place and any cut
APART = 8.0  # mm between two words' places
_ALONG = (0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.12, 0.88, 0.45, 0.55, 0.35, 0.65, 0.25, 0.75)
_INSIDE = (5.0, 8.0, 12.0, 18.0, 25.0)


def edge_words(edges: Sequence[Edge], body: shapely.Polygon, thickness: float) -> tuple[Mark, ...]:
    """Return MATCH and BEVEL marks, each a point (mm) beside its edge where nothing is cut, with its text.

    A BEVEL mark whose inside face is shorter has a second kind of mark too: the line where the bevel ends on the far face.
    """
    taken: list[Point] = []
    marks: list[Mark] = []
    shapely.prepare(body)
    boundary = body.boundary
    shapely.prepare(boundary)
    for edge in edges:
        if edge.centre is not None:
            continue
        words = [(Purpose.MATCH, letter) for letter in edge.matches]
        if edge.bevel:
            words.append((Purpose.BEVEL, f"bevel {deg(edge.bevel)}"))
        for purpose, text in words:
            at = _free(edge, body, boundary, taken)
            taken.append(at)
            marks.append(Mark(LineKind.REFERENCE, purpose, (at,), name=edge.name, text=text))
        if edge.bevel > 0.0:
            marks.append(_bevel_line(edge, thickness))
    return tuple(marks)


def _places(edge: Edge) -> Iterator[Point]:
    size = dist(edge.start, edge.end)
    x, y = (edge.end[0] - edge.start[0]) / size, (edge.end[1] - edge.start[1]) / size
    for inside in _INSIDE:
        for part in _ALONG:
            at = part * size
            yield (edge.start[0] + x * at - y * inside, edge.start[1] + y * at + x * inside)


def _free(edge: Edge, body: shapely.Polygon, boundary: shapely.Geometry, taken: Sequence[Point]) -> Point:
    """Return the first place that is clear of cuts and words; the roomiest one when none is."""
    places = list(_places(edge))
    points = shapely.points(places)
    inside = shapely.contains(body, points)
    clear = shapely.distance(boundary, points)
    best, best_room = body.representative_point().coords[0], -1.0
    for place, within, room in zip(places, inside, clear, strict=True):
        if not within:
            continue
        free = min((dist(place, other) for other in taken), default=APART)
        if room >= CLEAR and free >= APART:
            return place
        if min(room / CLEAR, free / APART) > best_room:
            best, best_room = place, min(room / CLEAR, free / APART)
    return (float(best[0]), float(best[1]))


def _bevel_line(edge: Edge, thickness: float) -> Mark:
    """The line parallel to the edge where the bevel comes out on the inside face: thickness·tan(bevel) inwards."""
    size, inside = dist(edge.start, edge.end), thickness * tan(radians(edge.bevel))
    x, y = (edge.end[0] - edge.start[0]) / size, (edge.end[1] - edge.start[1]) / size
    line = tuple((px - y * inside, py + x * inside) for px, py in (edge.start, edge.end))
    return Mark(LineKind.REFERENCE, Purpose.BEVEL, line, name=edge.name)
