"""Largest circle in an area, and the point of one area farthest from another (mm)."""

import numpy as np
import shapely

from publisher.joints.outlines import Array

TOLERANCE = 0.001
"""Search tolerance in mm of the largest circle: a tenth of what a printed digit shows."""

CLOSE = 0.02
"""Search tolerance in mm of a farthest point between the arms of a base that is not convex."""

MOST = 20_000
"""Squares that are looked at together: a plateau of equal distance may keep many alive, and none of them is farther."""


def largest_circle(area: shapely.Geometry) -> float:
    """Return the radius in mm of the largest circle that lies inside the area; 0 when there is none."""
    if area.is_empty:
        return 0.0
    return float(shapely.length(shapely.maximum_inscribed_circle(area, TOLERANCE)))


def farthest(area: shapely.Geometry, base: shapely.Geometry) -> float:
    """Return the greatest distance in mm from a point of ``area`` to the nearest of ``base``; 0 when ``area`` is empty.

    The distance from a convex base grows towards the corners of the area, so corners decide. Between the arms of a base
    that is not convex the farthest point may lie inside the area: it is searched for in squares that are quartered as long
    as they may hold a point farther away than the best known one (distance changes by at most the way moved).
    """
    if area.is_empty:
        return 0.0
    shapely.prepare(base)
    corners = shapely.points(shapely.get_coordinates(area))
    best = float(shapely.distance(corners, base).max())
    if base.area < 0.999 * shapely.convex_hull(base).area:
        best = _search(area, base, best)
    return best


def _search(area: shapely.Geometry, base: shapely.Geometry, best: float) -> float:
    left, bottom, right, top = shapely.bounds(area)
    half = max(right - left, top - bottom, CLOSE) / 2
    centres: Array = np.array([[(left + right) / 2, (bottom + top) / 2]])
    quarters = np.array([[-1, -1], [1, -1], [-1, 1], [1, 1]])
    shapely.prepare(area)
    while 0 < len(centres) <= MOST:
        spots = shapely.points(centres)
        away = shapely.distance(spots, base)
        inside = shapely.distance(spots, area)
        if (inside == 0).any():
            best = max(best, float(away[inside == 0].max()))
        corner = half * np.sqrt(2)
        open_ = (away + corner > best + CLOSE) & (inside <= corner)
        half /= 2
        centres = (centres[open_][:, None, :] + half * quarters[None]).reshape(-1, 2)
    return best
