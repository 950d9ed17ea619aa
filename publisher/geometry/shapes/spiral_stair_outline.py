"""The plan of a spiral stair's layer: a core, round or many-sided, and one step that ends in an arc or straight.

The axis is the origin, the front edge lies along +x, and a many-sided core has a corner there. All for a positive turn.
"""

from math import asin, cos, degrees, pi, radians, sin

from publisher.basics import Point, polar, record
from publisher.geometry.paths import Pen
from publisher.geometry.registry import Values

AXIS = (0.0, 0.0)
_SAME = 1e-9  # rad


def notch_width_deg(reach: float, depth: float) -> float:
    """Return the angle that the notch takes on the outer arc: its slanting side leaves the radial line at 45°.

    From the tip at radius R − d the slanting side meets the circle R where sin(45° − w) = (R − d)/R·sin 45°.
    """
    return 45.0 - degrees(asin((reach - depth) / reach * sin(pi / 4.0)))


@record
class SpiralLayer:
    """Sizes of a layer: mm and radians. ``sides`` 0 means a round core; ``core`` is the radius of its corners."""

    core: float
    sides: int
    reach: float
    straight: bool
    step: float
    turn: float
    notch: float

    @classmethod
    def of(cls, values: Values) -> "SpiralLayer":
        """Read the sizes, for a positive turn."""
        return cls(
            core=values.number("core_radius"),
            sides=values.count("core_sides"),
            reach=values.number("reach"),
            straight=values.word("step_end") == "straight",
            step=radians(values.number("step_angle")),
            turn=radians(abs(values.number("turn"))),
            notch=values.number("notch"),
        )

    def inner(self) -> float:
        """Return the radius in mm of the largest circle in the core."""
        return self.core * cos(pi / self.sides) if self.sides else self.core

    def least_end(self) -> float:
        """Return the least distance in mm from the axis to the step's end: R, or R·cos(step/2) to a straight end."""
        return self.reach * cos(self.step / 2.0) if self.straight else self.reach

    def perimeter(self) -> float:
        """Return the length in mm round the core."""
        return 2.0 * self.sides * self.core * sin(pi / self.sides) if self.sides else 2.0 * pi * self.core

    def core_at(self, at: float) -> Point:
        """Return the core's boundary in this direction (radians)."""
        if not self.sides:
            return polar(self.core, at)
        each = 2.0 * pi / self.sides
        return polar(self.inner() / cos(at % each - each / 2.0), at)

    def end_radius(self, at: float) -> float:
        """Return how far the step reaches in this direction (radians), mm."""
        return self.least_end() / cos(at - self.step / 2.0) if self.straight else self.reach

    def notch_corner(self) -> Point:
        """Return where the notch's slanting side leaves the step's end: 45° off the radial line through its tip."""
        if not self.straight:
            return polar(self.reach, self.turn - radians(notch_width_deg(self.reach, self.notch)))
        tip = polar(self.end_radius(self.turn) - self.notch, self.turn)
        slant, middle = self.turn - pi / 4.0, self.step / 2.0
        short = self.least_end() - (tip[0] * cos(middle) + tip[1] * sin(middle))
        return polar(short / cos(slant - middle), slant, tip)


def draw_end(pen: Pen, plan: SpiralLayer, to: Point) -> Pen:
    """Draw a stretch of the step's end."""
    return pen.line(to, "step_end") if plan.straight else pen.arc(to, AXIS, plan.reach, "step_end")


def draw_core(pen: Pen, plan: SpiralLayer, first: float, last: float, end: Point, turned: float = 0.0) -> Pen:
    """Draw the core's boundary anticlockwise from the direction ``first`` to ``last`` (radians), where ``end`` lies.

    ``turned`` is the direction of a corner. Sides of a many-sided core are named ``core_1`` …, from the first that is met.
    """
    if not plan.sides:
        return pen.arc(end, AXIS, plan.core, "core")
    corners = [turned + k * 2.0 * pi / plan.sides for k in range(2 * plan.sides)]
    stops = [polar(plan.core, at) for at in corners if first + _SAME < at < last - _SAME]
    for number, point in enumerate([*stops, end]):
        pen.line(point, f"core_{number + 1}")
    return pen
