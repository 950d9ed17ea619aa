"""Where an outline with its openings is narrower than a disc: bars, necks, rims, frames and tongues. Mm.

A disc of the wanted width is rolled through the whole area (morphological opening). What it does not reach is a corner, whose two
sides meet, or a narrow place: a stretch between two lines of the rim that lie across it, or a tongue, whose sides run back side by side.
"""

from collections.abc import Iterator
from itertools import combinations

import numpy as np
import shapely

from publisher.basics import SAME_POINT, Point, record
from publisher.joints.outlines import Array, pieces, widest_strip

ROLLED = 0.02
"""mm by which the disc is smaller than what is wanted, and its arcs may miss a true line: what is just wide enough is."""

SIDE_BY_SIDE = 175.0
"""Degrees by which the rim turns round the end of a tongue, at least; where it turns less it runs to a point, for which there is
a rule of its own."""

STUB = 1.5
"""What stands out by less than this many times its width does not break off. Common practice, no source."""

LEFT_OVER = 0.01
"""mm²: what the disc leaves of a flattened arc is smaller."""


@record
class Narrow:
    """A narrow place: its least ``width``, how ``long`` it is about as narrow (mm), the point ``at`` its middle, and ``over``: the
    board that is so narrow."""

    width: float
    long: float
    at: Point
    over: shapely.Geometry


def narrow_places(area: shapely.Geometry, least: float) -> Iterator[Narrow]:
    """Yield places of an area that are narrower than ``least``, the least width of each pair of lines of the rim among them; nothing
    of a convex one, which is as wide as its short side."""
    if least <= 0.0 or area.is_empty or shapely.convex_hull(area).area - area.area < LEFT_OVER:
        return
    radius = (least - ROLLED) / 2.0
    fine = shapely.simplify(area, ROLLED / 4.0)
    middles = shapely.buffer(fine, -radius, quad_segs=16)
    wide = shapely.buffer(middles, radius + ROLLED, quad_segs=16)
    rings = shapely.get_rings(fine)
    near = [(a, b) for a, b in combinations(rings, 2) if shapely.dwithin(a, b, least)]
    yield from (place for a, b in near if (place := _across(a, b, fine, least)))
    yield from _pinched(shapely.get_parts(middles), fine, radius, least)
    rims = shapely.get_parts(shapely.line_merge(shapely.difference(shapely.boundary(fine), wide)))
    narrower = 0.0
    for over in shapely.get_parts(pieces(shapely.difference(fine, wide), LEFT_OVER)):
        own = rims[shapely.distance(rims, over) < SAME_POINT]
        yield from (place for a, b in combinations(own, 2) if (place := _across(a, b, fine, least)))
        if len(own) == 1 and not wide.is_empty and (tongue := _tongue(own[0], wide, over, least)):
            yield tongue
            narrower = max(narrower, 0.9 * tongue.width)
    yield from narrow_places(area, narrower)  # a tongue may be narrower nearer to its root


def _pinched(middles: Array, area: shapely.Geometry, radius: float, least: float) -> Iterator[Narrow]:
    """Yield places between corners so near to each other that the disc touches them from both sides but does not pass."""
    for a, b in combinations(middles, 2):
        if not shapely.dwithin(a, b, 2.0 * radius):
            continue
        way = shapely.shortest_line(a, b)
        if shapely.covers(area, way):
            around = shapely.intersection(shapely.boundary(area), shapely.buffer(way, radius + ROLLED))
            lines = shapely.get_parts(shapely.line_merge(around))
            yield from (place for c, d in combinations(lines, 2) if (place := _across(c, d, area, least)))


def _across(a: shapely.Geometry, b: shapely.Geometry, area: shapely.Geometry, least: float) -> Narrow | None:
    """Return the place between two lines of the rim, if the shortest way from one to the other is one across the board."""
    way = shapely.shortest_line(a, b)
    width = float(way.length)
    middle = shapely.line_interpolate_point(way, 0.5, normalized=True)
    if width > least - ROLLED / 2.0 or shapely.distance(middle, shapely.boundary(area)) < 0.4 * width:
        return None
    long = min(_along(a, b, least), _along(b, a, least)) - 2.0 * (least - width)  # less what goes on round its corners
    between = shapely.intersection(shapely.buffer(a, width + SAME_POINT), shapely.buffer(b, width + SAME_POINT))
    over = shapely.intersection(between, area)
    return Narrow(width, max(long, 0.0), (float(middle.x), float(middle.y)), over)


def _along(a: shapely.Geometry, b: shapely.Geometry, least: float) -> float:
    """Return how long a line runs within ``least`` of another without a break."""
    lines = shapely.get_parts(shapely.line_merge(shapely.intersection(a, shapely.buffer(b, least))))
    return max((float(line.length) for line in lines), default=0.0)


def _tongue(rim: shapely.Geometry, wide: shapely.Geometry, over: shapely.Geometry, least: float) -> Narrow | None:
    """Return a tongue that is longer than a stub; None for a corner, a point and a stub."""
    ways = np.diff(shapely.get_coordinates(rim), axis=0)
    ways = ways[np.hypot(ways[:, 0], ways[:, 1]) > SAME_POINT]
    cross = ways[:-1, 0] * ways[1:, 1] - ways[:-1, 1] * ways[1:, 0]
    turned = abs(float(np.degrees(np.arctan2(cross, (ways[:-1] * ways[1:]).sum(axis=1))).sum()))
    if turned < SIDE_BY_SIDE:
        return None
    width = widest_strip(over)
    long = float(shapely.distance(shapely.points(shapely.get_coordinates(rim)), wide).max())
    if width > least - ROLLED / 2.0 or long < STUB * width:
        return None
    middle = shapely.centroid(over)
    return Narrow(width, long, (float(middle.x), float(middle.y)), over)
