"""The middle of things in plan: the point that is put over another middle. Mm."""

from collections.abc import Iterable
from math import cos, radians, sin

import numpy as np
import shapely

from publisher.joints.outlines import Array
from publisher.joints.panels import Panel, corners_of

ODD_TURNS = (3, 5, 7, 11, 13)
"""Parts of a full turn by which a plan may look the same. Primes are enough: what looks the same by a ninth does by a third. Plans
that do by half a turn have the middle of their rectangle there."""

LOOKS_THE_SAME = 0.5
"""mm by which a plan may differ from itself when it is turned: less than a cut by hand shows. An assumption."""


def middle_of_plan(panels: Iterable[Panel]) -> Array:
    """Return the middle (2,) of panels, seen from above: the axis of a plan that looks the same when it is turned by a third, a fifth
    … of a full turn, as that of a regular tower or spire with an odd number of sides; else the middle of the upright
    rectangle round it."""
    corners = np.vstack([panel.frame.carry(corners_of(panel.part)) for panel in panels])[:, :2]
    plan = shapely.convex_hull(shapely.multipoints(corners))
    if plan.geom_type == "Polygon":
        axis = shapely.get_coordinates(shapely.centroid(plan))[0]  # what turns into itself turns about its centroid
        if any(_looks_the_same(plan, axis, 360.0 / turns) for turns in ODD_TURNS):
            return np.asarray(axis)
    return np.asarray((corners.min(axis=0) + corners.max(axis=0)) / 2.0)


def _looks_the_same(plan: shapely.Polygon, axis: Array, turn: float) -> bool:
    """Tell whether a convex plan, turned by degrees about a point, lies on itself."""
    c, s = cos(radians(turn)), sin(radians(turn))
    turned = (shapely.get_coordinates(plan) - axis) @ np.array([[c, s], [-s, c]]) + axis
    return bool((shapely.distance(plan.exterior, shapely.points(turned)) <= LOOKS_THE_SAME).all())
