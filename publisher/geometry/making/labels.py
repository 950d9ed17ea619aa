"""Free places inside a part for the words of its edges: matching letters beside their joints, bevels."""

from collections.abc import Iterator, Sequence
from math import dist, radians, tan

import shapely

from publisher.basics import LineKind, Point, Purpose, polyline
from publisher.geometry.making.joint_places import JointPlace
from publisher.geometry.making.rabbets import rabbet_marks
from publisher.geometry.model import Edge, Mark
from publisher.geometry.registry import deg, mm

WORD_CLEAR = 3.0  # mm between a word's place and any cut
WORDS_APART = 8.0  # mm between two words' places
NARROWEST_WORD = 4.0  # mm: between the glue lines of a thinner mate no letter can be read
LONG_PART = 180.0  # mm: a longer joint may be cut into tiles
BEVEL_OUT = "out"  # after the angle of a bevel whose inside face is the longer one
_ALONG = (0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.12, 0.88, 0.45, 0.55, 0.35, 0.65, 0.25, 0.75)
_ASIDE = (0.17, 0.2, 0.14)  # of a joint that may run over several pages: seams lie at halves, thirds and quarters
_BEYOND = (4.0, 7.0, 11.0, 17.0, 24.0)
_INSIDE = (5.0, 8.0, 12.0, 18.0, 25.0)


def edge_words(
    edges: Sequence[Edge], places: Sequence[JointPlace], body: shapely.Polygon, thickness: float
) -> tuple[Mark, ...]:
    """Return MATCH and BEVEL marks, each a point (mm) beside its joint or edge where nothing is cut, with its text.

    A BEVEL mark whose inside face is shorter has a second kind of mark too: the line where the bevel ends on the far face.
    """
    taken: list[Point] = []
    marks: list[Mark] = []
    shapely.prepare(body)
    boundary = body.boundary
    shapely.prepare(boundary)
    for place in places:
        if not place.letters:
            continue
        spots = _row(place, body, boundary, taken)
        taken.extend(spots)
        marks.extend(
            Mark(LineKind.REFERENCE, Purpose.MATCH, polyline((at,)), name=place.edge, text=letter)
            for letter, at in zip(place.letters, spots, strict=True)
        )
    for edge in edges:
        if edge.rabbet is not None:
            inside = [edge.rabbet.width + more for more in (3.0, 6.0, 10.0, 16.0, 23.0)]
            line = (edge.start, edge.end)
            at = _free(_points(line, [(part, far) for far in inside for part in _ALONG]), body, boundary, taken)
            taken.append(at)
            text = f"rabbet {mm(edge.rabbet.width)}"
            marks.append(Mark(LineKind.REFERENCE, Purpose.RABBET, polyline((at,)), name=edge.name, text=text))
        if edge.centre is not None or not edge.bevel:
            continue
        line = (edge.start, edge.end)
        deep = max(0.0, thickness * tan(radians(edge.bevel)))  # beyond the dotted line, so that the words keep off it
        at = _free(_points(line, [(part, deep + i) for i in _BEYOND for part in _ALONG]), body, boundary, taken)
        taken.append(at)
        text = deg(abs(edge.bevel)) + (f" {BEVEL_OUT}" if edge.bevel < 0.0 else "")
        marks.append(Mark(LineKind.REFERENCE, Purpose.BEVEL, polyline((at,)), name=edge.name, text=text))
        if edge.bevel > 0.0:
            marks.append(_bevel_line(edge, thickness))
    return (*marks, *rabbet_marks(edges, body))


def _points(line: tuple[Point, Point], at: Sequence[tuple[float, float]]) -> list[Point]:
    """Return points by their share of a line's length and their distance (mm) on its left."""
    size = dist(*line)
    x, y = (line[1][0] - line[0][0]) / size, (line[1][1] - line[0][1]) / size
    return [
        (line[0][0] + x * share * size - y * inside, line[0][1] + y * share * size + x * inside) for share, inside in at
    ]


def _row(place: JointPlace, body: shapely.Polygon, boundary: shapely.Geometry, taken: Sequence[Point]) -> list[Point]:
    """Return places for all letters of a joint, beside each other and as near as can be to its middle, on a long one aside of it.

    Mates look for theirs from the same end, so that a letter stands at the same place along both.
    """
    line = (place.start, place.end)
    size, count = dist(*line), len(place.letters)
    for inside in _across(place):
        for middle in _ALONG if size <= LONG_PART else (*_ASIDE, *_ALONG):
            shares = [middle + (i - (count - 1) / 2.0) * WORDS_APART / size for i in range(count)]
            if not place.forward:
                shares = [1.0 - share for share in shares]
            spots = _points(line, [(share, inside) for share in shares])
            if _all_clear(spots, body, boundary, taken):
                return spots
    found: list[Point] = []
    tried = _points(line, [(share, inside) for inside in _across(place) for share in _ALONG])
    for _ in place.letters:
        found.append(_free(tried, body, boundary, [*taken, *found]))
    return found


def _all_clear(
    spots: Sequence[Point], body: shapely.Polygon, boundary: shapely.Geometry, taken: Sequence[Point]
) -> bool:
    """Tell whether letters may stand at all of these places: on the part, clear of cuts and of words."""
    points = shapely.points(spots)
    return bool(
        shapely.contains(body, points).all()
        and (shapely.distance(boundary, points) >= WORD_CLEAR).all()
        and all(dist(spot, other) >= WORDS_APART - 1e-6 for spot in spots for other in taken)
    )


def _across(place: JointPlace) -> Iterator[float]:
    """Yield how far (mm) on the left of a joint's line its letters may stand: best where the mate itself stands."""
    if place.mate:
        if not place.glued or place.mate >= NARROWEST_WORD:
            yield place.mate / 2.0
        yield from (place.mate + 4.0, -4.0)
    yield from (place.mate + inside for inside in _INSIDE)


def _free(places: Sequence[Point], body: shapely.Polygon, boundary: shapely.Geometry, taken: Sequence[Point]) -> Point:
    """Return the first place that is clear of cuts and words; the roomiest one when none is."""
    points = shapely.points(places)
    inside = shapely.contains(body, points)
    clear = shapely.distance(boundary, points)
    best, best_room = body.representative_point().coords[0], -1.0
    for place, within, room in zip(places, inside, clear, strict=True):
        if not within:
            continue
        free = min((dist(place, other) for other in taken), default=WORDS_APART)
        if room >= WORD_CLEAR and free >= WORDS_APART:
            return place
        if min(room / WORD_CLEAR, free / WORDS_APART) > best_room:
            best, best_room = place, min(room / WORD_CLEAR, free / WORDS_APART)
    return (float(best[0]), float(best[1]))


def _bevel_line(edge: Edge, thickness: float) -> Mark:
    """The line parallel to the edge where the bevel comes out on the inside face: thickness·tan(bevel) inwards."""
    size, inside = dist(edge.start, edge.end), thickness * tan(radians(edge.bevel))
    x, y = (edge.end[0] - edge.start[0]) / size, (edge.end[1] - edge.start[1]) / size
    line = tuple((px - y * inside, py + x * inside) for px, py in (edge.start, edge.end))
    return Mark(LineKind.REFERENCE, Purpose.BEVEL, polyline(line), name=edge.name)
