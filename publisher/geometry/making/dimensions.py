"""Lengths by which a cut piece is checked, beside the two sides of its box: across parallel edges, to the middles of holes, what an
arch of stones is drawn by, and the radii of what is round. Millimetres on the finished piece, in the part's own coordinates."""

from collections.abc import Iterator, Sequence
from itertools import combinations, pairwise
from math import dist, hypot, radians

import shapely

from publisher.basics import Arc, Path, Point, Purpose, angle, polar, record, remembered
from publisher.geometry.making.placed_edges import PARALLEL
from publisher.geometry.model import Edge, Part
from publisher.geometry.paths import polygon

LEAST_DIMENSION = 6.0  # mm: two arrow heads need as much
LEAST_OVERLAP = 6.0  # mm of two parallel edges that lie opposite each other
MOST_ACROSS, MOST_TO_HOLES = 2, 4  # a few lengths check a piece, many hide it
SAME_LENGTH = 0.05  # mm: what is printed alike is one length
DIMENSION_OFF = 0.01  # mm from the outline within which a length ends on it
ASLANT = 0.5  # sine of the angle between two edges from which on they check a place both ways
SAME_CIRCLE = 1e-6  # mm, and degrees of a full turn
OF_STONES = ("extrados", "voussoir joint")  # marks of the stones of an arch
SHARES = (0.5, 0.35, 0.65, 0.2, 0.8, 0.08, 0.92)  # of the way along edges, where a length may be drawn

MeasuredLine = tuple[Point, Point]


@record
class Dimension:
    """A length that checks a cut piece: how its words go, with a ``{}`` for each of ``lengths`` (mm); and the lines, the best first, on
    any of which it may be drawn, as long as its only length. Without lines it ends off the part, and is only said. ``across``: it is that
    of the finished piece, from edge to edge."""

    words: str
    lengths: tuple[float, ...]
    lines: tuple[MeasuredLine, ...] = ()
    across: bool = False


@remembered
def dimensions_of(part: Part) -> tuple[Dimension, ...]:
    """Return the few lengths by which a part is checked beside its width and height over all; none of them twice."""
    body = polygon(part.outline)
    return (*_across(part, body), *_to_holes(part, body), *_of_arch(part))


def _across(part: Part, body: shapely.Polygon) -> Iterator[Dimension]:
    """Yield the distances of parallel edges that face each other, the longest first, but for those that are a side of the box."""
    left, bottom, right, top = body.bounds
    known = [right - left, top - bottom]
    found = []
    for one, other in combinations(_straight(part), 2):
        (ux, uy), (vx, vy) = _along(one), _along(other)
        if abs(ux * vy - uy * vx) > PARALLEL or ux * vx + uy * vy > 0.0:
            continue
        far = _inward(one, other.start)
        low, high = sorted((_run(one, other.start), _run(one, other.end)))
        low, high = max(low, 0.0), min(high, dist(one.start, one.end))
        if far >= LEAST_DIMENSION and high - low >= LEAST_OVERLAP:
            lines = [_across_at(one, low + share * (high - low), far) for share in SHARES]
            found.append((far, _on_outline(body, lines)))
    for far, places in sorted(found, key=lambda one: -one[0]):
        if places and all(abs(far - other) > SAME_LENGTH for other in known):
            known.append(far)
            if len(known) <= 2 + MOST_ACROSS:
                yield Dimension("{}", (far,), places, across=True)


def _to_holes(part: Part, body: shapely.Polygon) -> Iterator[Dimension]:
    """Yield for each round hole how far its middle lies from the nearest edge, and from the nearest that runs another way."""
    known: list[tuple[str, float]] = []
    for ring in part.outline.holes:
        if (round_hole := whole_circle(ring)) is None:
            continue
        middle, _ = round_hole
        near = sorted(
            (edge for edge in _straight(part) if _faces(edge, middle)), key=lambda edge: _inward(edge, middle)
        )
        other = next((edge for edge in near if abs(_sine(near[0], edge)) > ASLANT), None)
        for edge in (*near[:1], *((other,) if other else ())):
            far = _inward(edge, middle)
            lines = _on_outline(body, [_across_at(edge, _run(edge, middle), far)], ends=1)
            alike = any(edge.name == name and abs(far - length) <= SAME_LENGTH for name, length in known)
            if lines and not alike and far >= LEAST_DIMENSION and len(known) < MOST_TO_HOLES:
                known.append((edge.name, far))
                yield Dimension("{} to the hole’s middle", (far,), lines)


def _of_arch(part: Part) -> Iterator[Dimension]:
    """Yield how high the stones of an arch are, square to its line, and about which centres with which radii it is drawn."""
    fronts = [edge for edge in part.outline.outer.edges if isinstance(edge, Arc) and edge.name == "intrados"]
    backs = [mark.path.points for mark in part.marks if mark.name == "extrados"]
    depth = next((depth for points in backs for front in fronts if (depth := _between(front, points[:2]))), None)
    if depth is None:
        return
    # among the joints of a wall's stones a line with arrow heads reads as one more joint, and its words break others: said beside it
    walled = any(mark.purpose is Purpose.SURFACE and mark.name not in OF_STONES for mark in part.marks)
    lines = () if walled else tuple(_through_stones(part, fronts, depth))
    yield Dimension("arch stones {} high", (depth,), lines)
    if not part.whole:  # a piece may have lost its springings
        yield from _centres(fronts)


def _centres(arcs: Sequence[Arc]) -> Iterator[Dimension]:
    """Yield the different arcs of an arch in words: radius, and where its centre lies below the springings and beside the middle."""
    level = min(y for arc in arcs for _, y in (arc.start, arc.end))
    middle = sum(x for arc in arcs for x in (arc.start[0], arc.end[0])) / (2 * len(arcs))
    known: list[tuple[float, float, float]] = []
    for arc in arcs:
        (x, y), radius = arc.centre, arc.radius
        aside, below = abs(x - middle), level - y
        if any(dist((radius, aside, below), one) < DIMENSION_OFF for one in known):
            continue
        known.append((radius, aside, below))
        words, lengths = "arch: radius {}, centre ", [radius]
        if below > DIMENSION_OFF:
            words, lengths = words + "{} below the arch’s ends", [*lengths, below]
        else:
            words += "level with the arch’s ends"
        if aside > DIMENSION_OFF:
            words, lengths = words + ", {} from the middle", [*lengths, aside]
        yield Dimension(words, tuple(lengths))


def _between(front: Arc, back: Sequence[Point]) -> float | None:
    """Return how far (mm) points lie outside an arc; None where they do not lie on a circle about its centre."""
    first, *others = (dist(point, front.centre) for point in back)
    alike = all(abs(first - other) < DIMENSION_OFF for other in others)
    return first - front.radius if alike and first > front.radius + DIMENSION_OFF else None


def _through_stones(part: Part, fronts: Sequence[Arc], depth: float) -> Iterator[MeasuredLine]:
    """Yield lines through the middles of the stones, square to the arch: from the crown down."""
    joints = [
        (mark.path.edges[0].start, mark.path.edges[-1].end) for mark in part.marks if mark.name == "voussoir joint"
    ]
    found = []
    for front in fronts:
        turns = sorted(angle(front.centre, at) for at, out in joints if _in_line(front.centre, at, out))
        first, sweep = angle(front.centre, front.start), radians(front.sweep)
        middles = [(a + b) / 2.0 for a, b in pairwise(turns)] or [first + share * sweep for share in SHARES]
        near, far = front.radius, front.radius + depth
        found += [(polar(near, turn, front.centre), polar(far, turn, front.centre)) for turn in middles]
    yield from sorted(found, key=lambda line: -line[0][1])


def _in_line(*points: Point) -> bool:
    (ax, ay), (bx, by), (cx, cy) = points
    return abs((bx - ax) * (cy - ay) - (by - ay) * (cx - ax)) < DIMENSION_OFF * dist(points[0], points[2])


def radii_of(part: Part) -> tuple[float, ...]:
    """Return the radii of a part of whole circles about one centre (mm), the outer one first; nothing for another part."""
    circles = [whole_circle(path) for path in part.outline.paths]
    found = [one for one in circles if one is not None]
    if len(found) < len(circles):
        return ()
    (middle, outer), *inner = found
    if any(dist(centre, middle) > SAME_CIRCLE for centre, _ in inner):
        return ()
    return (outer, *sorted((radius for _, radius in inner), reverse=True))


def whole_circle(path: Path) -> tuple[Point, float] | None:
    """Return centre and radius of a path that is one whole circle; None for another."""
    arcs = [edge for edge in path.edges if isinstance(edge, Arc)]
    if not arcs or len(arcs) < len(path.edges):
        return None
    first = arcs[0]
    alike = all(
        abs(arc.radius - first.radius) <= SAME_CIRCLE and dist(arc.centre, first.centre) <= SAME_CIRCLE for arc in arcs
    )
    whole = abs(abs(sum(arc.sweep for arc in arcs)) - 360.0) <= SAME_CIRCLE
    return (first.centre, first.radius) if alike and whole else None


def _straight(part: Part) -> list[Edge]:
    return [edge for edge in part.edges if edge.centre is None and dist(edge.start, edge.end) >= LEAST_OVERLAP]


def _along(edge: Edge) -> Point:
    (ax, ay), (bx, by) = edge.start, edge.end
    size = hypot(bx - ax, by - ay)
    return (bx - ax) / size, (by - ay) / size


def _sine(one: Edge, other: Edge) -> float:
    (ux, uy), (vx, vy) = _along(one), _along(other)
    return ux * vy - uy * vx


def _run(edge: Edge, point: Point) -> float:
    """Return how far along an edge (mm from its start) the foot of a point on it lies."""
    x, y = _along(edge)
    return (point[0] - edge.start[0]) * x + (point[1] - edge.start[1]) * y


def _inward(edge: Edge, point: Point) -> float:
    """Return how far (mm) a point lies from an edge's line, to the side of the material, which is on its left."""
    x, y = _along(edge)
    return (point[1] - edge.start[1]) * x - (point[0] - edge.start[0]) * y


def _faces(edge: Edge, point: Point) -> bool:
    return _inward(edge, point) > 0.0 and 0.0 <= _run(edge, point) <= dist(edge.start, edge.end)


def _across_at(edge: Edge, along: float, far: float) -> MeasuredLine:
    """Return the line square to an edge, from a point of it ``far`` mm into the part."""
    x, y = _along(edge)
    at = (edge.start[0] + along * x, edge.start[1] + along * y)
    return at, (at[0] - far * y, at[1] + far * x)


def _on_outline(body: shapely.Polygon, lines: Sequence[MeasuredLine], ends: int = 2) -> tuple[MeasuredLine, ...]:
    """Return the lines of which the first end, or both, lie on the outside ring: not where a tab or a notch is."""
    ring = shapely.LinearRing(body.exterior.coords)
    return tuple(line for line in lines if all(ring.distance(shapely.Point(at)) <= DIMENSION_OFF for at in line[:ends]))
