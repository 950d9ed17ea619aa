"""The one outline value, from a shape to the file: a path of lines and arcs, each named by its edge.

An arc keeps its centre, radius and sweep wherever it goes; nothing makes an arc from points. Points are made from a path,
where a library or a promise needs them.
"""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import field, replace
from itertools import groupby, pairwise
from math import acos, atan2, ceil, cos, degrees, dist, floor, hypot, pi, radians, sin
from typing import TypeAlias

from publisher.basics.pose import Box, Point, Pose
from publisher.basics.records import record

SAGITTA = 0.005  # mm: greatest distance between a chord and its arc
SAME_POINT = 1e-6  # mm: points closer than this are one point
PART_OF_ARC = 45.0  # degrees

Carry = Callable[[Point], Point]


@record
class Line:
    """A straight line from ``start`` to ``end`` (mm) with the name of its edge."""

    name: str
    start: Point
    end: Point

    @property
    def length(self) -> float:
        """Length in mm."""
        return dist(self.start, self.end)

    def direction(self, at: Point) -> Point:
        """Return the unit vector of travel, the same at every point."""
        del at
        (ax, ay), (bx, by) = self.start, self.end
        size = hypot(bx - ax, by - ay)
        return ((bx - ax) / size, (by - ay) / size)

    def reversed(self) -> "Line":
        """Return the line travelled the other way."""
        return Line(self.name, self.end, self.start)

    def carried(self, carry: Carry, mirrored: bool = False, scale: float = 1.0) -> "Line":
        """Return the line carried by a motion, a mirror or a change of scale."""
        del mirrored, scale
        return Line(self.name, carry(self.start), carry(self.end))

    def knots(self) -> list[Point]:
        """Return the points by which one knows it, beside its start: its end."""
        return [self.end]

    def farthest(self) -> tuple[Point, ...]:
        """Return the points between its ends that reach farthest along an axis: none."""
        return ()

    def points(self, sagitta: float = SAGITTA) -> list[Point]:
        """Return its points without its end: the start."""
        del sagitta
        return [self.start]


@record
class Arc:
    """An arc of less than a full turn from ``start`` to ``end`` (mm) with the name of its edge.

    ``sweep`` is the angle travelled about ``centre``, in degrees, positive anticlockwise.
    """

    name: str
    start: Point
    end: Point
    centre: Point
    radius: float
    sweep: float

    @staticmethod
    def between(name: str, start: Point, end: Point, centre: Point, radius: float, ccw: bool = True) -> "Arc":
        """Return the arc from one point of a circle to another, travelled this way round."""
        turn = angle(centre, end) - angle(centre, start)
        sweep = degrees((turn if ccw else -turn) % (2.0 * pi))
        return Arc(name, start, end, centre, radius, sweep if ccw else -sweep)

    @property
    def ccw(self) -> bool:
        """Whether it is travelled anticlockwise."""
        return self.sweep > 0.0

    @property
    def length(self) -> float:
        """Length in mm of the arc, not of its chords."""
        return self.radius * radians(abs(self.sweep))

    def direction(self, at: Point) -> Point:
        """Return the unit vector of travel at a point of the arc."""
        x, y = (at[0] - self.centre[0]) / self.radius, (at[1] - self.centre[1]) / self.radius
        return (-y, x) if self.sweep > 0.0 else (y, -x)

    def reversed(self) -> "Arc":
        """Return the arc travelled the other way."""
        return Arc(self.name, self.end, self.start, self.centre, self.radius, -self.sweep)

    def carried(self, carry: Carry, mirrored: bool = False, scale: float = 1.0) -> "Arc":
        """Return the arc carried by a motion, a mirror (which turns its sweep round) or a change of scale."""
        sweep = -self.sweep if mirrored else self.sweep
        return Arc(self.name, carry(self.start), carry(self.end), carry(self.centre), self.radius * scale, sweep)

    def farthest(self) -> tuple[Point, ...]:
        """Return the points between its ends that reach farthest along an axis."""
        first = degrees(angle(self.centre, self.start))
        low, high = sorted((first, first + self.sweep))
        quarters = range(ceil(low / 90.0), floor(high / 90.0) + 1)
        (x, y), r = self.centre, self.radius
        return tuple(((x + r, y), (x, y + r), (x - r, y), (x, y - r))[k % 4] for k in quarters)

    def points(self, sagitta: float = SAGITTA) -> list[Point]:
        """Return its points without its end. A chord over the angle a lies r(1 − cos(a/2)) from its arc."""
        whole = radians(self.sweep)
        step = min(2.0 * acos(max(-1.0, 1.0 - sagitta / self.radius)), pi / 4.0)
        count = max(1, ceil(abs(whole) / step - 1e-9))
        first = angle(self.centre, self.start)
        return [self.start, *(polar(self.radius, first + k * whole / count, self.centre) for k in range(1, count))]

    @property
    def parts(self) -> int:
        """In how many equal parts, of at most 45°, it is written where nobody knows arcs."""
        return max(1, int(abs(self.sweep) / PART_OF_ARC + 1.0 - 1e-9))

    def knots(self) -> list[Point]:
        """Return the middle and the end of each of its parts: by these one knows it, however it was written."""
        count = 2 * self.parts
        first, step = angle(self.centre, self.start), radians(self.sweep) / count
        return [*(polar(self.radius, first + k * step, self.centre) for k in range(1, count)), self.end]


PathEdge: TypeAlias = Line | Arc


@record
class Path:
    """Lines and arcs end to end. In a closed path the last ends where the first starts.

    Of a polyline without a name the points are kept; its edges are made when somebody asks for them: pages draw thousands of such lines,
    and move each of them, by their points alone.
    """

    edges: tuple[PathEdge, ...]
    closed: bool = True
    _points: tuple[Point, ...] = field(default=(), init=False, repr=False, compare=False)

    @property
    def points(self) -> tuple[Point, ...]:
        """Its points (mm), arcs flattened to a sagitta of 0.005 mm; a closed path does not repeat its first. Made once."""
        if not self._points:
            object.__setattr__(self, "_points", self.flattened(SAGITTA))
        return self._points

    @property
    def length(self) -> float:
        """Length in mm, arcs as arcs."""
        return sum(edge.length for edge in self.edges)

    @property
    def corners(self) -> tuple[Point, ...] | None:
        """The start of its first edge and the end of each where all are lines; None where one is an arc."""
        if _edges_to_come(self):
            return self.travelled if self.closed or len(self._points) > 1 else self._points * 2
        if any(isinstance(edge, Arc) for edge in self.edges):
            return None
        return (*(edge.start for edge in self.edges[:1]), *(edge.end for edge in self.edges))

    def flattened(self, sagitta: float) -> tuple[Point, ...]:
        """Return its points (mm), arcs flattened to this sagitta; a closed path does not repeat its first."""
        points = [point for edge in self.edges for point in edge.points(sagitta)]
        whole = self.closed or not self.edges or points[-1] == self.edges[-1].end
        return tuple(points) if whole else (*points, self.edges[-1].end)

    @property
    def travelled(self) -> tuple[Point, ...]:
        """Its points as a pen travels them: that of a closed path comes back to the first."""
        return (*self.points, self.points[0]) if self.closed else self.points

    @property
    def box(self) -> Box:
        """The upright rectangle (mm) that it just fits in, arcs as arcs."""
        if _edges_to_come(self):
            return Box.round(self._points)
        return Box.round(point for edge in self.edges for point in (edge.start, edge.end, *edge.farthest()))

    def reversed(self) -> "Path":
        """Return the path travelled the other way."""
        return Path(tuple(edge.reversed() for edge in reversed(self.edges)), self.closed)

    def carried(self, carry: Carry, mirrored: bool = False, scale: float = 1.0) -> "Path":
        """Return the path carried by a motion, a mirror or a change of scale, in its own order."""
        if _edges_to_come(self):
            return polyline(list(map(carry, self._points)), self.closed)
        return Path(tuple(edge.carried(carry, mirrored, scale) for edge in self.edges), self.closed)

    def placed(self, pose: Pose) -> "Path":
        """Return the path carried by a pose, in its own order."""
        a, b, c, d, e, f = pose.matrix()
        if _edges_to_come(self):
            if (a, b, c, d) == (1.0, 0.0, 0.0, 1.0):  # as most are: pages move what was drawn at a corner
                return polyline([(x + e, y + f) for x, y in self._points], self.closed)
            return polyline([(a * x + c * y + e, b * x + d * y + f) for x, y in self._points], self.closed)
        return self.carried(lambda p: (a * p[0] + c * p[1] + e, b * p[0] + d * p[1] + f), pose.mirrored)

    def renamed(self, name: Callable[[str], str]) -> "Path":
        """Return the path with new names for its edges."""
        return Path(tuple(replace(edge, name=name(edge.name)) for edge in self.edges), self.closed)

    def stretches(self) -> tuple["Path", ...]:
        """Return the open paths of neighbouring edges with one name; in a closed path one may go on over its first point."""
        runs = [tuple(own) for _, own in groupby(self.edges, key=lambda edge: edge.name)]
        if self.closed and len(runs) > 1 and runs[0][0].name == runs[-1][0].name:
            runs[0] = runs.pop() + runs[0]
        return tuple(Path(own, closed=False) for own in runs)

    @property
    def name(self) -> str:
        """The name of its first edge: that of all where it is a stretch."""
        return self.edges[0].name

    def __getstate__(self) -> list[object]:
        """Return what another process makes it of again."""
        return [self.edges, self.closed, self._points]


_EDGES, _CLOSED, _POINTS = (vars(Path)[name] for name in ("edges", "closed", "_points"))  # the slots


def _edges_to_come(path: Path) -> bool:
    """Say whether the edges of a path, which are lines between its points, have not been asked for yet."""
    try:
        _EDGES.__get__(path)
    except AttributeError:
        return True
    return False


def _edges_at_last(path: Path, name: str) -> tuple[PathEdge, ...]:
    """Make the edges of a polyline, as it is asked for them for the first time."""
    if name != "edges":
        raise AttributeError(f"a path has no {name}")
    points = path.points
    ends = (*points, points[0]) if path.closed or len(points) == 1 else points
    edges = tuple(Line("", a, b) for a, b in pairwise(ends))
    _EDGES.__set__(path, edges)
    return edges


setattr(Path, "__getattr__", _edges_at_last)  # noqa: B010 - asked when a slot is empty; written so, types know no other name


def closed_path(edges: Iterable[PathEdge]) -> Path:
    """Return the closed path of a chain of edges, without those of no length: each starts where the one before ends."""
    kept = [edge for edge in edges if edge.length >= SAME_POINT]
    ends = [kept[i - 1].end for i in range(len(kept))]
    return Path(tuple(e if e.start == end else replace(e, start=end) for e, end in zip(kept, ends, strict=True)))


def polyline(points: Sequence[Point], closed: bool = False, name: str = "") -> Path:
    """Return a path of lines through the points (mm); a single point is a line of no length."""
    if not name and len(points) > 0 and (len(points) == 1 or points[-1] != points[-2]):
        path = Path.__new__(Path)
        _CLOSED.__set__(path, closed)
    else:
        ends = (*points, points[0]) if closed or len(points) == 1 else points
        path = Path(tuple(Line(name, a, b) for a, b in pairwise(ends)), closed)
    _POINTS.__set__(path, tuple(points))  # they are at hand
    return path


def circle(centre: Point, radius: float, name: str = "", ccw: bool = True) -> Path:
    """Return a full circle (mm) as two half turns, from its rightmost point."""
    right, left = (centre[0] + radius, centre[1]), (centre[0] - radius, centre[1])
    half = 180.0 if ccw else -180.0
    return Path((Arc(name, right, left, centre, radius, half), Arc(name, left, right, centre, radius, half)))


def angle(centre: Point, at: Point) -> float:
    """Return the direction from ``centre`` to ``at`` in radians."""
    return atan2(at[1] - centre[1], at[0] - centre[0])


def polar(radius: float, angle_rad: float, centre: Point = (0.0, 0.0)) -> Point:
    """Return the point at this distance (mm) and direction (radians) from ``centre``."""
    return (centre[0] + radius * cos(angle_rad), centre[1] + radius * sin(angle_rad))
