"""What of a panel assembly touches the table, and where its weight falls. Mm, in the assembly's plan."""

from collections.abc import Callable

import numpy as np
import shapely

from publisher.geometry import Part, polygon
from publisher.joints.panels.place import PanelAssembly
from publisher.joints.panels.solids import corners_of
from publisher.joints.panels.space import Array

ON_TABLE = 0.2
"""mm: corners that lie no higher than this over the lowest one stand on the table."""


def foot_of(assembly: PanelAssembly) -> shapely.Geometry:
    """Return the convex hull, seen from above, of all corners that stand on the table."""
    every = np.vstack([panel.frame.carry(corners_of(panel.part)) for panel in assembly.panels])
    low = every[every[:, 2] < every[:, 2].min() + ON_TABLE]
    return shapely.convex_hull(shapely.multipoints(low[:, :2]))


def weight_of(assembly: PanelAssembly, mass: Callable[[Part], float]) -> Array:
    """Return the point (2,) under the centre of mass; every panel weighs ``mass`` in the middle of its board."""
    masses = np.array([mass(panel.part) for panel in assembly.panels])
    middles = []
    for panel in assembly.panels:
        centre = polygon(panel.part.outline).centroid
        middles.append(panel.frame.point((float(centre.x), float(centre.y)), panel.part.thickness / 2.0))
    return np.asarray((masses[:, None] * np.array(middles)).sum(axis=0)[:2] / masses.sum())
