"""The way a viewer looks: an axonometric (parallel) projection from the front right and above, or square to the piece."""

from math import cos, radians, sin

import numpy as np

from publisher.basics import record
from publisher.joints.outlines import Array


@record
class View:
    """``turned``: degrees that the viewer stands to the right of the front; ``above``: degrees above the level."""

    turned: float
    above: float

    def axes(self) -> Array:
        """Return the unit vectors right, up and towards the viewer as rows (3, 3)."""
        a, e = radians(self.turned), radians(self.above)
        return np.array(
            [
                [cos(a), sin(a), 0.0],
                [-sin(a) * sin(e), cos(a) * sin(e), cos(e)],
                [sin(a) * cos(e), -cos(a) * cos(e), sin(e)],
            ]
        )

    def plan_matrix(self) -> Array:
        """Return the matrix (2, 2) that carries plan coordinates of a level plane to the drawing."""
        return self.axes()[:2, :2]

    def lift(self) -> Array:
        """Return the plan vector (2,) by which a point 1 mm higher looks moved: away from the viewer."""
        a, e = radians(self.turned), radians(self.above)
        return np.array([-sin(a), cos(a)]) * cos(e) / sin(e)


STACK_VIEW = View(turned=28.0, above=34.0)
"""High enough that every tread of a stair shows."""

PANEL_VIEW = View(turned=38.0, above=24.0)
"""Front, right side and right roof slope show; no slope from 30 to 60 degrees is seen edge-on."""

FRONT = View(turned=0.0, above=0.0)
"""Elevation: x to the right, z up."""

ABOVE = View(turned=0.0, above=90.0)
"""Plan: x to the right, y up."""
