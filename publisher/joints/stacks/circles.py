"""Largest circle in an area, and the point of one area farthest from another (mm)."""

from math import inf

import numpy as np
import shapely

from publisher.joints.outlines import Array, pieces

CIRCLE_TOLERANCE = 0.003
"""Search tolerance in mm of the largest circle's radius."""

CIRCLE_CLOSE = 0.02
"""Search tolerance in mm of a farthest point between the arms of a base that is not convex."""

MOST_SQUARES = 2_000
"""Squares that are looked at together: along a plateau of equal distance (rims about one axis) many stay alive, and the
best one is then as good as the squares are small: about a thousandth of the plateau's length."""


def largest_circle(area: shapely.Geometry) -> float:
    """Return the radius in mm of the largest circle that lies inside the area; 0 when there is none."""
    if area.is_empty:
        return 0.0
    if shapely.get_num_interior_rings(shapely.get_parts(area)).any():
        return _in_terrace(area)
    return float(shapely.length(shapely.maximum_inscribed_circle(area, CIRCLE_TOLERANCE)))


def _in_terrace(area: shapely.Geometry) -> float:
    """Return the radius for an area with holes: a terrace is nearly as wide everywhere, and looking at all of that plateau
    square by square takes long. What is left when the area shrinks by the radius holds the centre."""
    low, high = 0.0, float(min(np.diff(np.reshape(shapely.bounds(area), (2, 2)), axis=0)[0])) / 2
    left = area
    while high - low > CIRCLE_TOLERANCE:
        middle = (low + high) / 2
        smaller = shapely.buffer(area, -middle, quad_segs=16)
        low, high, left = (low, middle, left) if smaller.is_empty else (middle, high, smaller)
    spots = np.vstack([shapely.get_coordinates(left), shapely.get_coordinates(shapely.centroid(left))])
    spots = shapely.points(spots[:: max(1, len(spots) // 500)])
    rim = shapely.boundary(area)
    shapely.prepare([area, rim])
    inside = spots[shapely.intersects(area, spots)]
    return float(shapely.distance(inside, rim).max(initial=low * 0.998))


def farthest(area: shapely.Geometry, base: shapely.Geometry, known: float = 0.0, enough: float = inf) -> float:
    """Return the greatest distance in mm from a point of ``area`` to the nearest of ``base``; 0 when ``area`` is empty.

    The distance from a convex base grows towards the corners of the area, so corners decide. Between the arms of a base
    that is not convex the farthest point may lie inside the area: it is searched for in squares that are quartered as long
    as they may hold a point farther away than the best known one (distance changes by at most the way moved). What is
    ``known`` from elsewhere need not be found again: the result is then at least that. The search ends when ``enough`` is
    found: the result is then a lower bound.
    """
    if area.is_empty:
        return known
    base = pieces(base, 0.0)  # an intersection may hold lines where outlines touch
    shapely.prepare(base)
    corners = shapely.get_coordinates(area)
    best = max(known, float(shapely.distance(shapely.points(corners), base).max()))
    if base.area >= 0.999 * shapely.convex_hull(base).area:
        return best
    # no point is farther from the base than from a circle inside it, and from a circle corners are farthest
    centre, rim = shapely.get_coordinates(shapely.maximum_inscribed_circle(base))
    most = float(np.hypot(*(corners - centre).T).max() - np.hypot(*(rim - centre)))
    if most <= best + CIRCLE_CLOSE or best >= enough:
        return best
    return _search(shapely.simplify(area, CIRCLE_CLOSE / 4), shapely.simplify(base, CIRCLE_CLOSE / 4), best, enough)


def _search(area: shapely.Geometry, base: shapely.Geometry, best: float, enough: float) -> float:
    left, bottom, right, top = shapely.bounds(area)
    half = max(right - left, top - bottom, CIRCLE_CLOSE) / 2
    centres: Array = np.array([[(left + right) / 2, (bottom + top) / 2]])
    quarters = np.array([[-1, -1], [1, -1], [-1, 1], [1, 1]])
    shapely.prepare([area, base])
    while 0 < len(centres) <= MOST_SQUARES and best < enough:
        spots = shapely.points(centres)
        away = shapely.distance(spots, base)
        corner = half * np.sqrt(2)
        may = away + corner > best + CIRCLE_CLOSE
        spots, away, centres = spots[may], away[may], centres[may]
        outside = shapely.distance(spots, area)
        best = max(best, float(away[outside == 0].max(initial=0.0)))
        half /= 2
        near = (outside <= corner) & (away + corner > best + CIRCLE_CLOSE)
        centres = (centres[near][:, None, :] + half * quarters[None]).reshape(-1, 2)
    return best
