"""Outlines of parts as plane polygons (mm), for computing and for drawing."""

from collections.abc import Callable, Iterable
from dataclasses import replace
from itertools import groupby
from math import ceil, cos, dist, floor, pi, radians

import numpy as np
import numpy.typing as npt
import shapely

from publisher.basics import (
    SAME_POINT,
    Arc,
    Line,
    Path,
    PathEdge,
    Point,
    Pose,
    angle,
    polar,
    remembered,
    remembered_few,
)
from publisher.geometry import Part, mitred, next_of, one_before, polygon

Array = npt.NDArray[np.float64]

STRIP_CLOSE = 0.02
"""Search tolerance in mm of the widest strip."""

ROUND_SPECK = 1e-6  # mm²: less is round-off

HAIRLINE = 0.02
"""mm: what is thinner than twice this is no board."""

MANY_ARCS = 24
"""An outline of more arcs than this is a free curve."""

ARC_ENDS = 0.01
"""Share of a chord: a point this near to the end of an arc is that end."""

NOTCH_EDGES = ("notch", "line_up")
"""Edges with these words in their name are cut for lining up; a figure stands over them and a wall is none the weaker."""


@remembered
def whole_polygon(part: Part) -> shapely.Polygon:
    """Return the finished outline with its line-up notches filled: what stands, covers and is glued."""
    return polygon(replace(part.outline, outer=bridged(part.outline.outer, is_notch)))


def bridged(path: Path, leave_out: Callable[[str], bool]) -> Path:
    """Return the closed path with edges of some names replaced by a straight line between their neighbours, or by the arc
    that they interrupt, under the name of the edge before."""
    out = [leave_out(edge.name) for edge in path.edges]
    if not any(out) or all(out):
        return path
    first = next(i for i in range(len(out)) if not out[i] and out[i - 1])  # begin behind something left out
    edges: list[PathEdge] = []
    groups = [(gone, list(own)) for gone, own in groupby(_from(path.edges, first), lambda edge: leave_out(edge.name))]
    for i, (gone, own) in enumerate(groups):
        if not gone:
            edges += own
            continue
        start, end, before, after = own[0].start, own[-1].end, edges[-1], groups[(i + 1) % len(groups)][1][0]
        if isinstance(before, Arc) and isinstance(after, Arc) and dist(before.centre, after.centre) < SAME_POINT:
            # a chord across it would lose the arc's sagitta
            edges.append(Arc.between(before.name, start, end, before.centre, before.radius, before.ccw))
        else:
            edges.append(Line(before.name, start, end))
    return Path(tuple(edges))


def _from(edges: tuple[PathEdge, ...], first: int) -> tuple[PathEdge, ...]:
    return edges[first:] + edges[:first]


def is_notch(name: str) -> bool:
    """Tell whether edges of this name are a line-up notch."""
    return any(word in name for word in NOTCH_EDGES)


@remembered
def coarse(
    path: Path, *, most_turn: float, sagitta: float, north: float | None = None
) -> tuple[tuple[Point, ...], tuple[bool, ...]]:
    """Return few points of a closed path, for drawing, and for each whether a corner stands there.

    Arcs turn by at most ``most_turn`` degrees from one point to the next, and their sagitta is at most ``sagitta`` mm. A
    corner is a point where the direction changes by more than 18 degrees (an n-sided core of more than 20 sides reads as
    round). With ``north`` (degrees) the points of an arc lie where the circle is shared out from that direction on, wherever
    the arc begins: two arcs of one circle have the same ones.
    """
    least = 1.0 - cos(radians(most_turn) / 2.0)
    radii = [edge.radius if isinstance(edge, Arc) else 0.0 for edge in path.edges]
    points = tuple(
        point
        for edge, radius in zip(path.edges, radii, strict=True)
        for point in _few_points(edge, min(sagitta, radius * least), north)
    )
    if sum(radius > 0.0 for radius in radii) > MANY_ARCS:
        # a free curve is many short arcs, and the ends of each are still there
        thin = shapely.get_coordinates(shapely.simplify(shapely.Polygon(points).exterior, sagitta))[:-1]
        points = tuple((float(x), float(y)) for x, y in thin)
    return points, corners(points)


def _few_points(edge: PathEdge, sagitta: float, north: float | None) -> list[Point]:
    """Return the points of an edge without its end; those of an arc lie on the shares of its circle from ``north`` on, if given."""
    if north is None or not isinstance(edge, Arc):
        return edge.points(sagitta)
    shares = len(Arc.points(replace(edge, sweep=360.0), sagitta))
    step = 2.0 * pi / shares if edge.ccw else -2.0 * pi / shares
    before = (angle(edge.centre, edge.start) - radians(north)) / step  # shares of the circle from north to its start
    first, last = floor(before + ARC_ENDS) + 1, ceil(before + abs(radians(edge.sweep) / step) - ARC_ENDS) - 1
    at = (radians(north) + k * step for k in range(first, last + 1))
    return [edge.start, *(polar(edge.radius, a, edge.centre) for a in at)]


def corners(points: tuple[Point, ...], least: float = 18.0) -> tuple[bool, ...]:
    """Tell for each point of a closed ring whether the direction changes there by more than ``least`` degrees."""
    ring = np.asarray(points)
    ahead = next_of(ring) - ring
    behind = one_before(ahead)
    cross = behind[:, 0] * ahead[:, 1] - behind[:, 1] * ahead[:, 0]
    dot = (behind * ahead).sum(axis=1)
    return tuple(bool(b) for b in np.abs(np.arctan2(cross, dot)) > radians(least))


def move(geometry: shapely.Geometry, pose: Pose) -> shapely.Geometry:
    """Return the geometry carried by the pose."""
    a, b, c, d, e, f = pose.matrix()
    matrix, shift = np.array([[a, b], [c, d]]), np.array([e, f])
    return sound(shapely.transform(geometry, lambda xy: xy @ matrix + shift))


def sound(area: shapely.Geometry) -> shapely.Geometry:
    """Return an area that shapely can go on with: rounding may make a sliver's border cross itself when it is moved."""
    return area if shapely.is_valid(area) else shapely.buffer(area, 0.0)


def pieces(geometry: shapely.Geometry, least: float = 0.05) -> shapely.Geometry:
    """Return the polygons of a geometry of at least ``least`` mm²: slivers between two flattenings of an arc go."""
    parts = shapely.get_parts(geometry)
    parts = parts[(shapely.get_type_id(parts) == 3) & (shapely.area(parts) >= least)]
    return sound(parts[0] if len(parts) == 1 else shapely.multipolygons(parts))


def united(areas: Iterable[shapely.Geometry]) -> shapely.Geometry:
    """Return what areas cover together: their polygons, without dust, of which GEOS (3.14) makes an error where much of it meets."""
    parts = shapely.get_parts(np.array([*areas], dtype=object))
    return shapely.union_all(parts[(shapely.get_type_id(parts) == 3) & (shapely.area(parts) > ROUND_SPECK)])


def without_hairs(area: shapely.Geometry) -> shapely.Geometry:
    """Return an area without what is thinner than twice ``HAIRLINE``: two flattenings of one arc leave hairs, which reach as far as what
    is wide."""
    return pieces(mitred(mitred(area, -HAIRLINE), HAIRLINE))


def points_of(points: Iterable[Point]) -> Array:
    """Return points as an array of shape (n, 2)."""
    return np.asarray(list(points), dtype=np.float64).reshape(-1, 2)


@remembered_few
def widest_strip(area: shapely.Geometry) -> float:
    """Return the width (mm) of the widest strip of an area: of the largest circle in one of its pieces; 0 for none."""
    circles = [shapely.maximum_inscribed_circle(piece, STRIP_CLOSE) for piece in shapely.get_parts(pieces(area, 1e-6))]
    return 2.0 * max((float(circle.length) for circle in circles), default=0.0)
