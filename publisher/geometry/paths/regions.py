"""Regions and shapely polygons; every segment of a boolean's result gets its run back.

A boolean knows nothing of names and arcs. Its result lies on the boundaries it was made from, so each of its segments
takes the run of the nearest source segment, neighbours of one run are merged, corners are put where the exact curves
meet, and arcs are flattened anew from their own centre and radius.
"""

from collections.abc import Sequence
from math import dist, hypot

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from publisher.basics import Point
from publisher.geometry.model import Region, Ring
from publisher.geometry.paths.curves import SAGITTA, SAME, Curve, meet
from publisher.geometry.paths.rings import circle, oriented, ring_of

_SPECK = 1e-6  # mm²: a piece or hole smaller than this is a speck of rounding, not board
_FAULTS = {  # what the geometry library says, in words
    "Self-intersection": "crosses itself",
    "Ring Self-intersection": "touches itself",
    "Hole lies outside shell": "has a piece that lies apart",
    "Holes are nested": "has a piece that lies loose in a hole",
    "Interior is disconnected": "falls apart where its holes touch",
}
_Run = tuple[str, Point | None, float]


def polygon(region: Region) -> shapely.Polygon:
    """Return the region as a shapely polygon (mm), arcs flattened to a sagitta of at most 0.005 mm."""
    return shapely.Polygon(region.outer.points, [hole.points for hole in region.holes])


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
    """Return the result of a boolean on ``sources`` as one region with its runs, or None and in words why not.

    Where sources share a boundary, the run of the earlier one is taken.
    """
    pieces = [p for p in shapely.get_parts(result) if p.geom_type == "Polygon" and p.area > _SPECK]
    if not pieces:
        return None, "nothing is left of it"
    if len(pieces) > 1:
        sizes = ", ".join(f"{p.area:.0f} mm²" for p in sorted(pieces, key=lambda p: -p.area)[:4])
        return None, f"it falls into {len(pieces)} pieces ({sizes})"
    piece = pieces[0]
    finder = _Finder(sources)
    outer = finder.ring(piece.exterior, hole=False)
    if outer is None:
        return None, "nothing is left of it"
    inner = [finder.ring(r, hole=True) for r in piece.interiors if shapely.Polygon(r).area > _SPECK]
    region = Region(outer, tuple(r for r in inner if r is not None))
    reason = fault(polygon(region))
    return (None, reason) if reason else (region, "")


class _Finder:
    """Knows the source segments and the run of each."""

    def __init__(self, sources: Sequence[Region]) -> None:
        """Index all segments of the sources."""
        ends: list[tuple[Point, Point]] = []
        self.runs: list[_Run] = []
        for region in sources:
            for ring in (region.outer, *region.holes):
                for run in ring.runs:
                    count = (run.last - run.first) % len(ring.points)
                    for k in range(run.first, run.first + count):
                        ends.append((ring.points[k % len(ring.points)], ring.points[(k + 1) % len(ring.points)]))
                        self.runs.append((run.name, run.centre, run.radius))
        self.tree = shapely.STRtree(shapely.linestrings(np.asarray(ends)))

    def ring(self, line: shapely.LinearRing, hole: bool) -> Ring | None:
        """Return the ring with its runs; None when nothing is left after cleaning."""
        points = _clean([(float(x), float(y)) for x, y in line.coords])
        if len(points) < 3:
            return None
        array = np.asarray(points)
        middles = (array + np.roll(array, -1, axis=0)) / 2.0
        pairs = self.tree.query_nearest(shapely.points(middles), all_matches=True)
        nearest = np.full(len(points), len(self.runs))
        np.minimum.at(nearest, pairs[0], pairs[1])
        return ring_of(oriented(_chain(points, [self.runs[i] for i in nearest]), hole), SAGITTA)


def _clean(points: list[Point]) -> list[Point]:
    """Drop points that repeat the one before."""
    kept: list[Point] = []
    for point in points:
        if not kept or dist(kept[-1], point) > SAME:
            kept.append(point)
    while len(kept) > 1 and dist(kept[0], kept[-1]) <= SAME:
        kept.pop()
    return kept


def _chain(points: list[Point], runs: list[_Run]) -> tuple[Curve, ...]:
    """Return exact curves: an arc per arc run, a line per straight stretch; corners where neighbours really meet."""
    n = len(points)
    starts = [i for i in range(n) if runs[i] != runs[i - 1] or _bends(points, runs, i)]
    if not starts:  # one run all round: a full circle
        name, centre, radius = runs[0]
        assert centre is not None
        return circle(centre, radius, name)
    curves: list[Curve] = []
    for i, first in enumerate(starts):
        last = starts[(i + 1) % len(starts)]
        name, centre, radius = runs[first]
        if centre is None:
            curves.append(Curve(name, points[first], points[last]))
            continue
        (ax, ay), (bx, by) = points[first], points[(first + 1) % n]
        ccw = (ax - centre[0]) * (by - centre[1]) - (ay - centre[1]) * (bx - centre[0]) > 0.0
        ends = (_onto(points[first], centre, radius), _onto(points[last], centre, radius))
        curves.append(Curve(name, *ends, centre, radius, ccw))
    return _sharpened(curves)


def _bends(points: list[Point], runs: list[_Run], i: int) -> bool:
    """Say whether a straight run has a real corner at point i."""
    if runs[i][1] is not None:
        return False
    (ax, ay), (bx, by), (cx, cy) = points[i - 1], points[i], points[(i + 1) % len(points)]
    base = hypot(cx - ax, cy - ay)
    off = abs((bx - ax) * (cy - ay) - (by - ay) * (cx - ax))
    ahead = (bx - ax) * (cx - bx) + (by - ay) * (cy - by) > 0.0
    return not ahead or off > SAME * base


def _onto(point: Point, centre: Point, radius: float) -> Point:
    """Return the point of the circle nearest to ``point``."""
    away = dist(point, centre)
    if away == 0.0:
        return point
    return (
        centre[0] + (point[0] - centre[0]) * radius / away,
        centre[1] + (point[1] - centre[1]) * radius / away,
    )


def _sharpened(curves: list[Curve]) -> tuple[Curve, ...]:
    """Put each corner at an arc where the exact curves meet; a boolean left it on a chord, up to a sagitta away."""
    corners: list[Point] = []
    for i, curve in enumerate(curves):
        before, at = curves[i - 1], curve.start
        if before.centre is None and curve.centre is None:
            corners.append(at)
            continue
        exact = meet(before, curve, at)
        near = exact is not None and dist(exact, at) < 20.0 * SAGITTA
        corners.append(exact if exact is not None and near else at if curve.centre is not None else before.end)
    return tuple(
        Curve(c.name, corners[i], corners[(i + 1) % len(curves)], c.centre, c.radius, c.ccw)
        for i, c in enumerate(curves)
    )
