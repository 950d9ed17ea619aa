"""How a narrow place of an upright thing bends under what stands off it. Mm, N, MPa.

A level section whose middle is c, under a load F that stands at p, carries the moment F·(p − c); the stress at its point q is
F·(p − c)ᵀ·J⁻¹·(q − c), with J the second moments of its area about c (elementary bending about both axes). Of a rectangle w wide,
h deep in the way of the load, which stands e off its middle, that is 6·F·e/(w·h²). That the weight presses on it too is left out:
it is some hundredths of what bends it.
"""

import numpy as np
import shapely

from publisher.basics import record
from publisher.joints.outlines import Array, pieces

LEAST_SECTION = 1.0
"""mm²: less holds nothing, and other rules tell it."""


@record
class LevelSection:
    """A level section: its middle (2,), the corners of its hull from there (n, 2), and its second moments of area (2, 2) in mm⁴."""

    middle: Array
    corners: Array
    second: Array

    def stress(self, moments: Array) -> Array:
        """Return the greatest stress (MPa) in it under each moment (n, 2): loads times how far they stand from its middle, in N·mm."""
        return np.asarray(np.abs(moments @ np.linalg.inv(self.second) @ self.corners.T).max(axis=1))


@record
class Neck:
    """A section that bends: its greatest ``stress`` (MPa), under a load at one ``place`` (index of those tried), ``arm`` mm beside its
    middle; and the sides of the rectangle about it (mm), the smaller first."""

    stress: float
    place: int
    arm: float
    size: tuple[float, float]

    def wider(self, strength: float) -> float:
        """Return how wide (mm) its smaller side must be for this strength (MPa) when it grows alike every way: stress goes by the
        third power of its size."""
        return self.size[0] * float(np.cbrt(self.stress / strength))


def section_of_area(area: shapely.Geometry) -> LevelSection | None:
    """Return a level section from its area in plan, of one piece or several that move as one; None for what is no area.

    Sums over the sides of its rings (Green's theorem; standard formulas for the moments of a polygon).
    """
    area = pieces(area)
    if float(area.area) < LEAST_SECTION:
        return None
    rings = shapely.get_rings(shapely.orient_polygons(shapely.get_parts(area)))
    near = shapely.get_coordinates(shapely.centroid(area))[0]
    sums = np.zeros(6)
    for ring in rings:
        x, y = (shapely.get_coordinates(ring) - near).T
        cross = x[:-1] * y[1:] - x[1:] * y[:-1]
        sums += [
            (cross / 2.0).sum(),
            ((x[:-1] + x[1:]) * cross / 6.0).sum(),
            ((y[:-1] + y[1:]) * cross / 6.0).sum(),
            ((x[:-1] ** 2 + x[:-1] * x[1:] + x[1:] ** 2) * cross / 12.0).sum(),
            ((y[:-1] ** 2 + y[:-1] * y[1:] + y[1:] ** 2) * cross / 12.0).sum(),
            ((x[:-1] * y[1:] + 2.0 * (x[:-1] * y[:-1] + x[1:] * y[1:]) + x[1:] * y[:-1]) * cross / 24.0).sum(),
        ]
    whole, middle = sums[0], sums[1:3] / sums[0]
    xx, yy = sums[3:5] - whole * middle**2
    xy = sums[5] - whole * middle[0] * middle[1]
    second = np.array([[xx, xy], [xy, yy]])
    hull = shapely.get_coordinates(shapely.convex_hull(area))[:-1]
    return LevelSection(near + middle, hull - near - middle, second)


def neck_of(area: shapely.Geometry, places: Array, load: float, weight: float, weighs_at: Array) -> Neck | None:
    """Return how a level section bends under a load (N) at the worst of some places (n, 2), and under the weight (N) of all that
    stands over it, in the middle of that (2,); None for what is no area."""
    section = section_of_area(area)
    if section is None or not len(places):
        return None
    moments = load * (places - section.middle) + weight * (weighs_at - section.middle)
    stresses = section.stress(moments)
    worst = int(stresses.argmax())
    box = shapely.get_coordinates(shapely.oriented_envelope(area))
    sides = sorted(float(np.hypot(*side)) for side in np.diff(box, axis=0)[:2])
    return Neck(float(stresses[worst]), worst, float(np.hypot(*(places[worst] - section.middle))), (sides[0], sides[1]))
