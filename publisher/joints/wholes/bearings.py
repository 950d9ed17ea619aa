"""How a thing lies on what carries it: broad face on broad face, edges, and how much of their seat is covered. Mm."""

import numpy as np
import shapely

from publisher.basics import record, remembered_few
from publisher.geometry import mitred
from publisher.joints.outlines import Array, corners, pieces
from publisher.joints.panels import BARE, PANEL_TOUCH, Panel
from publisher.joints.wholes.put import PlacedThing, PlacedWhole
from publisher.joints.wholes.surfaces import Surfaces, over_each_other, surfaces_of

LEAST_TOUCH = 1.0
"""mm: a face that is touched on less length than this is touched in a point: that counts where nothing else is."""

ONE_LEVEL = 2.0
"""mm: rims that lie no farther from those that are touched are meant to be touched as well. An assumption."""

FAR_OFF = 1.0e5  # mm: farther than anything reaches
OPEN = 2.0
"""Boards: a side that is bare from corner to corner with more air than this over it is left open on purpose, as a gable that
nobody closes, where the sides beside it are touched on more than a spot. An assumption."""

LIES_FLAT = 1e-4
"""Rise over run by which two faces may differ that lie flat on each other; faces that are more askew touch in a line."""

MERGE = 0.02  # mm: two faces so near in plan are one


@record
class Bearing:
    """A thing on one of those that carry it, both in their places.

    ``broad``: in plan, where broad faces lie flat on one another. ``smaller``: of the two broad faces that touch, the one of less
    area. ``thin``: where edges lie flat on a face or on edges with less than ``board``, the thinner of the boards (mm), less a
    fillet of glue. ``share``: how much of the rim that one turns to the other is touched, without sides that are left open, of the
    better of both rims; where edges lie flat on edges, of the longer one, as the other may lie over its corners alone. ``bare`` mm
    of it are not, and ``gap`` is the widest gap there, at ``at`` in plan; 0 where nothing is over it.
    """

    thing: PlacedThing
    on: PlacedThing
    broad: shapely.Geometry
    smaller: shapely.Geometry
    thin: shapely.Geometry
    board: float
    share: float
    bare: float
    gap: float
    at: tuple[float, float]
    only_broad: bool  # broad faces touch, and no edge does


@record
class _Contacts:
    """Where faces that look down touch faces that look up: the regions in plan, and which faces (indices) touch there."""

    regions: Array
    upper: Array
    lower: Array


@record
class _Rim:
    """The rim of a seat: mm of it that count, how many of them are not touched, the widest gap there and where that is."""

    length: float
    bare: float
    gap: float
    at: tuple[float, float]

    @property
    def share(self) -> float:
        """How much of it is touched."""
        return 1.0 - self.bare / max(self.length, 1e-9)


NO_RIM = _Rim(0.0, 0.0, 0.0, (0.0, 0.0))


@remembered_few
def bearings_of(whole: PlacedWhole) -> tuple[Bearing, ...]:
    """Return every thing on each thing that carries it, where they touch."""
    found = (_bearing(one, whole.thing(name)) for one in whole.things for name in one.thing.on)
    return tuple(bearing for bearing in found if bearing is not None)


def _bearing(one: PlacedThing, other: PlacedThing) -> Bearing | None:
    upper, lower = surfaces_of(one.panels, up=False), surfaces_of(other.panels, up=True)
    touch = _contacts(upper, lower)
    if not len(touch.regions):
        return None
    every = shapely.union_all(touch.regions)
    flat = (np.abs(upper.planes[touch.upper] - lower.planes[touch.lower])[:, :2] < LIES_FLAT).all(axis=1)
    both = flat & upper.broad[touch.upper] & lower.broad[touch.lower]
    edges = flat.any() and not (flat & (upper.broad[touch.upper] | lower.broad[touch.lower])).any()
    faces = [
        shapely.union_all(surfaces.areas[np.unique(of[both])]) if both.any() else shapely.Polygon()
        for surfaces, of in ((upper, touch.upper), (lower, touch.lower))
    ]
    board = max(_thickness(one.panels), _thickness(other.panels))
    thinner = min(_thickness(one.panels, least=True), _thickness(other.panels, least=True))
    heights = _heights(touch.regions, lower.planes[touch.lower])
    level = float(heights.min()) - ONE_LEVEL, float(heights.max()) + ONE_LEVEL
    own, its = (_level(surfaces, level) for surfaces in (upper, lower))
    rims = [_rim(own, lower, (own, lower), every, board), _rim(its, upper, (upper, its), every, board)]
    counted = [rim for rim in rims if rim.length > LEAST_TOUCH]
    best = max(counted, key=lambda rim: rim.length if edges else rim.share, default=NO_RIM)
    return Bearing(
        one,
        other,
        shapely.union_all(touch.regions[both]),
        min(faces, key=lambda face: float(face.area)),
        _thin(shapely.union_all(touch.regions[flat & ~both]), thinner),
        thinner,
        best.share,
        best.bare,
        best.gap,
        best.at,
        bool(both.all()),
    )


def _thickness(panels: tuple[Panel, ...], *, least: bool = False) -> float:
    every = [panel.part.thickness for panel in panels]
    return min(every) if least else max(every)


def _thin(flat: shapely.Geometry, board: float) -> shapely.Geometry:
    """Return the stretches, longer than twice a board, where a flat contact is narrower than a board less a fillet of glue."""
    half = (board - BARE) / 2.0 - MERGE
    if half <= 0.0:
        return shapely.Polygon()
    wide = mitred(mitred(flat, -half), half + board)
    parts = shapely.get_parts(pieces(shapely.difference(flat, wide), 0.0))
    return shapely.union_all(parts[shapely.length(parts) / 2.0 > 2.0 * board])


def _contacts(upper: Surfaces, lower: Surfaces) -> _Contacts:
    """Return where two faces lie nearer than what touches, on more than a point; points where there is no more."""
    shared, i, j = over_each_other(upper, lower)
    near = [_nearer(area, plane) for area, plane in zip(shared, upper.planes[i] - lower.planes[j], strict=True)]
    regions = np.array(near, dtype=object)
    lengths = shapely.length(regions) / 2.0
    long = lengths > min(LEAST_TOUCH, float(lengths.max(initial=0.0)) / 2.0)
    return _Contacts(regions[long], i[long], j[long])


def _nearer(area: shapely.Geometry, gap: Array) -> shapely.Geometry:
    """Return where of an area a gap p·x + q·y + r is no wider than what touches."""
    slope = float(np.hypot(gap[0], gap[1]))
    if slope * FAR_OFF < PANEL_TOUCH:
        return area if gap[2] <= PANEL_TOUCH else shapely.Polygon()
    way = gap[:2] / slope
    foot = way * (PANEL_TOUCH - gap[2]) / slope
    along = FAR_OFF * np.array([-way[1], way[0]])
    half = shapely.Polygon([foot + along, foot - along, foot - along - FAR_OFF * way, foot + along - FAR_OFF * way])
    return pieces(shapely.intersection(area, half), 0.0)


def _heights(areas: Array, planes: Array) -> Array:
    points, of = shapely.get_coordinates(areas, return_index=True)
    return np.asarray((np.column_stack([points, np.ones(len(points))]) * planes[of]).sum(axis=1))


def _level(surfaces: Surfaces, level: tuple[float, float]) -> Surfaces:
    """Return the faces that lie between two heights as a whole."""
    inside = [
        bool(
            ((heights := _heights(np.array([area]), plane[None, :])) >= level[0]).all() and (heights <= level[1]).all()
        )
        for area, plane in zip(surfaces.areas, surfaces.planes, strict=True)
    ]
    chosen = np.array(inside, dtype=np.bool_)
    return Surfaces(surfaces.areas[chosen], surfaces.planes[chosen], surfaces.broad[chosen])


def _rim(
    seat: Surfaces, others: Surfaces, between: tuple[Surfaces, Surfaces], touched: shapely.Geometry, board: float
) -> _Rim:
    """Return the outer rim of a seat as far as the other thing is over or under it, hollow or not. What lies no farther than
    a board from where they touch is touched; sides that are left open do not count. ``between``: the faces of the gap."""
    filled = _filled(seat)
    near = board + BARE
    turns = shapely.multipoints(np.vstack([np.zeros((0, 2)), *(_corners(piece) for piece in filled)]))
    lines = shapely.union_all([piece.exterior for piece in filled])
    lines = shapely.intersection(lines, shapely.buffer(shapely.union_all(_filled(others)), PANEL_TOUCH))
    free = shapely.difference(lines, shapely.union(shapely.buffer(touched, near), shapely.buffer(turns, MERGE)))
    along = _on_more_than_a_spot(touched, near)
    length, bare, widest = float(lines.length), 0.0, (0.0, (0.0, 0.0))
    for stretch in shapely.get_parts(shapely.line_merge(free)):
        gap = _widest(stretch, *between)
        ends = shapely.points(shapely.get_coordinates(stretch)[[0, -1]])
        flanked = shapely.distance(ends, along) <= near + LEAST_TOUCH
        if gap[0] > OPEN * board and bool((flanked & (shapely.distance(ends, turns) <= near + LEAST_TOUCH)).all()):
            length -= stretch.length
        else:
            bare += stretch.length
            widest = max(widest, gap)
    return _Rim(length, bare, *widest)


def _on_more_than_a_spot(touched: shapely.Geometry, spot: float) -> shapely.Geometry:
    """Return the parts of what is touched that are longer than a spot (mm): what stands on its corners alone leaves no side open."""
    parts = shapely.get_parts(shapely.union_all(shapely.buffer(touched, MERGE)))
    low_x, low_y, high_x, high_y = shapely.bounds(parts).T
    return shapely.union_all(parts[np.hypot(high_x - low_x, high_y - low_y) > spot])


def _corners(piece: shapely.Polygon) -> Array:
    points = shapely.get_coordinates(piece.exterior)[:-1]
    return np.asarray(points[list(corners(tuple((float(x), float(y)) for x, y in points)))])


def _filled(surfaces: Surfaces) -> list[shapely.Polygon]:
    if not len(surfaces.areas):
        return []
    merged = shapely.union_all(mitred(surfaces.areas, MERGE))
    return [shapely.Polygon(piece.exterior) for piece in shapely.get_parts(merged)]


def _widest(bare: shapely.Geometry, upper: Surfaces, seat: Surfaces) -> tuple[float, tuple[float, float]]:
    """Return the widest gap over or under what is bare of a rim, and where it is."""
    points = shapely.get_coordinates(shapely.segmentize(bare, LEAST_TOUCH))
    found = (0.0, (0.0, 0.0))
    for x, y in points:
        here = shapely.buffer(shapely.Point(x, y), 2.0 * MERGE)
        above = [float(plane @ (x, y, 1.0)) for plane in upper.planes[shapely.intersects(upper.areas, here)]]
        below = [float(plane @ (x, y, 1.0)) for plane in seat.planes[shapely.intersects(seat.areas, here)]]
        gap = min(above) - max(below) if above and below else 0.0
        found = max(found, (gap, (float(x), float(y))), key=lambda one: one[0])
    return found
