"""Regions and shapely polygons; what a boolean leaves gets the lines and arcs back that it was made from.

A boolean knows nothing of names and arcs. Its result lies on the boundaries it was made from, so each of its segments has
a source: the edge whose flattened points it lies on. Neighbouring segments of one line or circle are one edge of the result,
with the source's centre and radius, and it ends where the two sources really meet. Nothing is fitted.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import pairwise
from math import degrees, dist, radians

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from publisher.basics import (
    SAGITTA,
    SAME_POINT,
    Arc,
    Line,
    Path,
    PathEdge,
    Point,
    Pose,
    angle,
    circle,
    polar,
    record,
    remembered,
)
from publisher.geometry.model import Region
from publisher.geometry.paths.curves import meet
from publisher.geometry.paths.rings import next_of, oriented

_NEAR = 4.0 * SAGITTA  # mm: sources nearer than this may seem to cross when they are flattened
_SPECK = 1e-6  # mm²: a piece or hole smaller than this is a speck of rounding, not board
_FAULTS = {  # what the geometry library says, in words
    "Self-intersection": "crosses itself",
    "Ring Self-intersection": "touches itself",
    "Hole lies outside shell": "has a piece that lies apart",
    "Holes are nested": "has a piece that lies loose in a hole",
    "Interior is disconnected": "falls apart where its holes touch",
}


def polygon(shape: Region | Path, pose: Pose | None = None) -> shapely.Polygon:
    """Return a region or what a closed path encloses as a shapely polygon (mm), carried by the pose when one is given.

    Arcs are flattened to a sagitta of at most 0.005 mm.
    """
    if pose is None:
        return _polygon(shape)
    outer, *holes = [np.array(pose.apply_all(path.points)) for path in _paths(shape)]
    return shapely.Polygon(outer, holes)


@remembered
def _polygon(shape: Region | Path) -> shapely.Polygon:
    outer, *holes = [np.array(path.points) for path in _paths(shape)]
    return shapely.Polygon(outer, holes)


def _paths(shape: Region | Path) -> tuple[Path, ...]:
    return shape.paths if isinstance(shape, Region) else (shape,)


def fault(shape: shapely.Polygon) -> str:
    """Say in words what is wrong with an outline; '' when it is sound."""
    if not shape.is_valid:
        reason: str = shapely.is_valid_reason(shape)
        words, _, rest = reason.partition("[")
        x, y = (float(number) for number in rest.rstrip("]").split()[:2]) if rest else (0.0, 0.0)
        known = (what for start, what in _FAULTS.items() if words.startswith(start))
        return f"the outline {next(known, 'is not sound')} at x {x:.1f}, y {y:.1f} mm"
    return "" if shape.area > _SPECK else "the outline encloses nothing"


def recover(result: BaseGeometry, sources: Sequence[Region]) -> tuple[Region | None, str]:
    """Return the result of a boolean on ``sources`` as one region of their lines and arcs, or None and in words why not.

    Where sources share a boundary, the edge of the earlier one is taken. An end of an arc lies where its circle meets the
    neighbour's line or circle; where they are coincident, or only touch, at the end of the source that lies there.
    """
    pieces = [p for p in shapely.get_parts(result) if p.geom_type == "Polygon" and p.area > _SPECK]
    if not pieces:
        return None, "nothing is left of it"
    if len(pieces) > 1:
        sizes = ", ".join(f"{p.area:.0f} mm²" for p in sorted(pieces, key=lambda p: -p.area)[:4])
        return None, f"it falls into {len(pieces)} pieces ({sizes})"
    piece = pieces[0]
    finder = _Finder(sources)
    outer = finder.path(piece.exterior, hole=False)
    if outer is None:
        return None, "nothing is left of it"
    inner = [finder.path(r, hole=True) for r in piece.interiors if shapely.Polygon(r).area > _SPECK]
    region = Region(outer, tuple(r for r in inner if r is not None))
    reason = fault(polygon(region))
    return (None, reason) if reason else (region, "")


class _Finder:
    """Knows the flattened segments of all sources and the edge of each."""

    def __init__(self, sources: Sequence[Region]) -> None:
        """Index all segments of the sources."""
        ends: list[tuple[Point, Point]] = []
        self.edges: list[PathEdge] = []
        for edge in (edge for region in sources for path in region.paths for edge in path.edges):
            points = [*edge.points(), edge.end]
            ends.extend(pairwise(points))
            self.edges.extend([edge] * (len(points) - 1))
        self.tree = shapely.STRtree(shapely.linestrings(np.asarray(ends)))

    def path(self, line: shapely.LinearRing, hole: bool) -> Path | None:
        """Return a ring of the result as lines and arcs; None when nothing of it is left."""
        points = _clean([(float(x), float(y)) for x, y in line.coords])
        if len(points) < 3:
            return None
        array = np.asarray(points)
        middles = (array + next_of(array)) / 2.0
        pairs = self.tree.query_nearest(shapely.points(middles), all_matches=True)
        nearest = np.full(len(points), len(self.edges))
        np.minimum.at(nearest, pairs[0], pairs[1])
        edges = _exact(_stretches(points, [self.edges[i] for i in nearest]))
        return oriented(Path(edges), hole) if edges else None


def _clean(points: list[Point]) -> list[Point]:
    """Drop points that repeat the one before."""
    kept: list[Point] = []
    for point in points:
        if not kept or dist(kept[-1], point) > SAME_POINT:
            kept.append(point)
    while len(kept) > 1 and dist(kept[0], kept[-1]) <= SAME_POINT:
        kept.pop()
    return kept


@record
class _Stretch:
    """Segments of a result that lie on one line or circle: the sources of the first and the last, and how they run.

    ``sweep`` is the angle that they turn about an arc's centre, in degrees.
    """

    first: PathEdge
    last: PathEdge
    start: Point
    end: Point
    sweep: float = 0.0

    def length(self) -> float:
        """Return the length in mm."""
        if isinstance(self.first, Line):
            return dist(self.start, self.end)
        return radians(abs(self.sweep)) * self.first.radius

    def middle(self) -> Point:
        """Return the point half way along."""
        if isinstance(self.first, Line):
            return _between(self.start, self.end)
        turn = angle(self.first.centre, self.start) + radians(self.sweep) / 2.0
        return polar(self.first.radius, turn, self.first.centre)

    def goes_on(self, other: "_Stretch") -> bool:
        """Say whether another stretch lies on the same line or circle, under the same name."""
        a, b = self.last, other.first
        if isinstance(a, Arc) and isinstance(b, Arc):
            return (a.name, a.centre, a.radius) == (b.name, b.centre, b.radius)
        if a.name != b.name or isinstance(a, Arc) or isinstance(b, Arc):
            return False
        return a is b or not _bends(self.start, self.end, other.end)

    def joined(self, other: "_Stretch") -> "_Stretch":
        """Return both as one, with what lies between them."""
        between = 0.0
        if isinstance(self.last, Arc):
            between = _turn(self.last.centre, self.end, other.start)
        return _Stretch(self.first, other.last, self.start, other.end, self.sweep + between + other.sweep)


def _bends(a: Point, b: Point, c: Point) -> bool:
    """Say whether there is a real corner at ``b``."""
    base = dist(a, c)
    off = abs((b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]))
    ahead = (b[0] - a[0]) * (c[0] - b[0]) + (b[1] - a[1]) * (c[1] - b[1]) > 0.0
    return not ahead or off > SAME_POINT * base


def _turn(centre: Point, start: Point, end: Point) -> float:
    """Return the lesser turn from one point to another about a centre, in degrees."""
    turn = degrees(angle(centre, end) - angle(centre, start))
    return (turn + 180.0) % 360.0 - 180.0


def _stretches(points: list[Point], sources: list[PathEdge]) -> list[_Stretch]:
    """Put the segments of a ring together that lie on one line or circle."""
    found: list[_Stretch] = []
    for start, end, source in zip(points, [*points[1:], points[0]], sources, strict=True):
        sweep = _turn(source.centre, start, end) if isinstance(source, Arc) else 0.0
        one = _Stretch(source, source, start, end, sweep)
        if found and found[-1].goes_on(one):
            found[-1] = found[-1].joined(one)
        else:
            found.append(one)
    if len(found) > 1 and found[-1].goes_on(found[0]):
        found[0] = found.pop().joined(found[0])
    return found


def _exact(stretches: list[_Stretch]) -> tuple[PathEdge, ...]:
    """Return the stretches with their ends where their sources meet.

    Two sources that nearly touch seem to cross each other again and again when they are flattened. A stretch of which nothing
    is left between its true ends, or that lies along a neighbour and meets none, was never there.
    """
    while len(stretches) > 1:
        corners = [_corner(stretches[i - 1], stretch) for i, stretch in enumerate(stretches)]
        edges = [_edge(s, corners[i][1], corners[(i + 1) % len(corners)][0]) for i, s in enumerate(stretches)]
        gone = [i for i, edge in enumerate(edges) if edge is None or _only_seems(stretches, corners, i)]
        if not gone:
            return tuple(_closed_up([edge for edge in edges if edge is not None]))
        out = min(gone, key=lambda i: stretches[i].length())
        stretches = [*stretches[out + 1 :], *stretches[:out]]
        if len(stretches) > 1 and stretches[-1].goes_on(stretches[0]):
            stretches = [stretches[-1].joined(stretches[0]), *stretches[1:-1]]
    first = stretches[0].first
    if isinstance(first, Line):
        return ()
    return circle(first.centre, first.radius, first.name, stretches[0].sweep > 0.0).edges


def _only_seems(stretches: list[_Stretch], corners: list[tuple[Point, Point]], i: int) -> bool:
    """Say whether a stretch meets neither neighbour and lies along one of them."""
    if any(dist(*corners[k % len(corners)]) <= SAME_POINT for k in (i, i + 1)):
        return False
    middle = stretches[i].middle()
    beside = (stretches[i - 1].last, stretches[(i + 1) % len(stretches)].first)
    return any(dist(middle, _foot(edge, middle)) <= _NEAR for edge in beside)


def _corner(before: _Stretch, after: _Stretch) -> tuple[Point, Point]:
    """Return where one stretch ends and the next starts: one point, unless their sources neither meet nor share an end."""
    a, b = before.last, after.first
    near = _between(before.end, after.start)
    reach = _NEAR + dist(before.end, after.start)
    ends = sorted(
        (end for end in (a.start, a.end, b.start, b.end) if dist(end, near) <= reach), key=lambda e: dist(e, near)
    )
    for end in ends:
        if dist(end, _foot(a, end)) <= SAME_POINT and dist(end, _foot(b, end)) <= SAME_POINT:
            return end, end
    found = meet(a, b, near)
    if found is not None:
        half = _foot(a, _between(near, found))
        if dist(half, _foot(b, half)) <= _NEAR:
            return found, found
    at = ends[0] if ends else near
    return _foot(a, at), _foot(b, at)


def _edge(stretch: _Stretch, start: Point, end: Point) -> PathEdge | None:
    """Return a stretch between its true ends; None when nothing is left of it."""
    source = stretch.first
    if isinstance(source, Line):
        (ax, ay), (bx, by) = stretch.start, stretch.end
        ahead = (bx - ax) * (end[0] - start[0]) + (by - ay) * (end[1] - start[1]) > 0.0
        return Line(source.name, start, end) if ahead and dist(start, end) > SAME_POINT else None
    late, on = _turn(source.centre, stretch.start, start), _turn(source.centre, stretch.end, end)
    arc = replace(source, start=start, end=end, sweep=stretch.sweep + on - late)
    return arc if arc.ccw is (stretch.sweep > 0.0) and arc.length > SAME_POINT else None


def _closed_up(edges: list[PathEdge]) -> Iterator[PathEdge]:
    """Yield the edges, with a short line where one does not start where the one before ends."""
    for before, edge in zip([edges[-1], *edges], edges, strict=False):
        if dist(before.end, edge.start) > SAME_POINT:
            yield Line(edge.name, before.end, edge.start)
        yield edge


def _foot(edge: PathEdge, point: Point) -> Point:
    """Return the point of an edge's line or circle that is nearest to a point."""
    if isinstance(edge, Line):
        (x, y), (ax, ay) = edge.direction(edge.start), edge.start
        along = (point[0] - ax) * x + (point[1] - ay) * y
        return (ax + x * along, ay + y * along)
    (cx, cy), away = edge.centre, dist(point, edge.centre)
    if away == 0.0:
        return edge.start
    return (cx + (point[0] - cx) * edge.radius / away, cy + (point[1] - cy) * edge.radius / away)


def _between(a: Point, b: Point) -> Point:
    return ((a[0] + b[0]) / 2.0, (a[1] + b[1]) / 2.0)
