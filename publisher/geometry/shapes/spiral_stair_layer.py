"""One layer of a spiral stair: a round core and one step, laid in a stack, each turned against the one below.

The axis is the origin. For a positive turn the stair climbs anticlockwise seen from above: the step spans the angles 0 …
step_angle between the core and the reach, its front edge lies along +x, and the next layer's front edge lies at the angle
``turn``. For a negative turn the whole layer is mirrored: the step spans 0 … −step_angle.

The line-up notch is a V cut into the outer arc. The side of the V that lies **exactly on the radial line at the angle turn**
is the one that the next layer's front edge must meet; the other side slants across the part of the tread that stays
bare, so the notch stays in sight when the next layer lies on it, and it survives tracing because it is part of the outline.
"""

from collections.abc import Iterator
from math import asin, degrees, pi, radians, sin

from publisher.basics import Finding, Point
from publisher.geometry.curves import Curve, polar
from publisher.geometry.model import ShapeInfo
from publisher.geometry.rings import Pen, reverse
from publisher.geometry.rules import LEAST_WALL
from publisher.geometry.shapes.shape import Shape, ShapeKind, angle, count, edges_of, length
from publisher.geometry.shapes.spiral_stair_marks import marks
from publisher.geometry.values import Values, deg, mm

EDGES = ("front", "step_end", "back", "core")
LEAST_ARC = 1.0  # mm of outer arc that stay on each side of the notch
LEAST_NOTCH = 1.0  # mm: a shallower notch is lost under the pencil
LEAST_TICK_PITCH = 1.0  # mm between joint ticks: closer ones cannot be drawn


def notch_width_deg(reach: float, depth: float) -> float:
    """Return the angle that the notch takes on the outer arc: its slanting side leaves the radial line at 45°.

    From the tip at radius R − d the slanting side meets the circle R where sin(45° − w) = (R − d)/R·sin 45°.
    """
    return 45.0 - degrees(asin((reach - depth) / reach * sin(pi / 4.0)))


def check(values: Values) -> Iterator[Finding]:
    """Find sizes that leave no step, a notch that the step cannot hold, ticks too close to draw."""
    core, reach = values.number("core_radius"), values.number("reach")
    if core > reach - LEAST_WALL + 1e-9:
        yield values.wrong(
            "core_radius",
            f"the core (radius {mm(core)}) leaves no step inside the reach ({mm(reach)})",
            f"make core_radius at most {mm(reach - LEAST_WALL)}, or reach at least {mm(core + LEAST_WALL)}",
            reach - LEAST_WALL,
        )
        return
    depth, joints = values.number("notch"), values.count("joints")
    if depth > 0.0:
        yield from _check_notch(values, core, reach, depth)
    if joints and 2.0 * pi * core / joints < LEAST_TICK_PITCH:
        yield values.wrong(
            "joints",
            f"{joints} joints round a core of radius {mm(core)} stand {mm(2.0 * pi * core / joints)} apart",
            f"nobody can draw them closer than {mm(LEAST_TICK_PITCH)}: at most {int(2.0 * pi * core)} joints",
            2.0 * pi * core,
        )


def _check_notch(values: Values, core: float, reach: float, depth: float) -> Iterator[Finding]:
    turn, step = abs(values.number("turn")), values.number("step_angle")
    if depth < LEAST_NOTCH:
        yield values.wrong(
            "notch",
            f"a notch {mm(depth)} deep cannot be found on the cut layer",
            f"make it at least {mm(LEAST_NOTCH)} deep, better 3 to 5 mm; 0 mm leaves it out",
            LEAST_NOTCH,
        )
        return
    if depth > reach - core - LEAST_WALL + 1e-9:
        yield values.wrong(
            "notch",
            f"a notch {mm(depth)} deep cuts through a step that is {mm(reach - core)} long",
            f"make the notch at most {mm(reach - core - LEAST_WALL)} deep; 3 to 5 mm are enough",
            reach - core - LEAST_WALL,
        )
        return
    arc = degrees(LEAST_ARC / reach)
    least, most = notch_width_deg(reach, depth) + arc, step - arc
    if not least <= turn <= most:
        why = "there is no next front edge to mark" if turn == 0.0 else "it does not fit on the step's outer arc"
        yield values.wrong(
            "turn",
            f"the line-up notch stands where the next layer's front edge lies, at {deg(turn)} on a step of {deg(step)}: {why}",
            f"with this notch the turn must be {deg(least)} … {deg(most)}; or write notch: 0 mm",
            most if turn > most else least,
        )


def outline(values: Values) -> tuple[Curve, ...]:
    """Return the outline for a positive turn: front, step_end (with the notch), back, core; anticlockwise."""
    r, reach, depth = values.number("core_radius"), values.number("reach"), values.number("notch")
    step, turn = radians(values.number("step_angle")), radians(abs(values.number("turn")))
    axis = (0.0, 0.0)
    pen = Pen((r, 0.0)).line((reach, 0.0), "front")
    if depth > 0.0:
        pen.arc(polar(reach, turn - radians(notch_width_deg(reach, depth))), axis, reach, "step_end")
        pen.line(polar(reach - depth, turn), "notch").line(polar(reach, turn), "notch")
    pen.arc(polar(reach, step), axis, reach, "step_end").line(polar(r, step), "back").arc((r, 0.0), axis, r, "core")
    return tuple(pen.curves)


def build(values: Values) -> Shape:
    """Return the layer; area πr² + σ/360·π(R² − r²), less the notch (trade formula for a sector on a core)."""
    outer, drawn = outline(values), marks(values)
    if values.number("turn") < 0.0:
        outer = tuple(curve.moved(_mirror, mirrored=True) for curve in reverse(outer))
        drawn = tuple(
            type(mark)(mark.kind, mark.purpose, tuple(map(_mirror, mark.points)), mark.closed, mark.name, mark.text)
            for mark in drawn
        )
    return Shape(outer, edges_of(outer, EDGES), (), drawn)


def _mirror(point: Point) -> Point:
    return (point[0], -point[1])


KIND = ShapeKind(
    ShapeInfo(
        "spiral_stair_layer",
        "a layer of a spiral stair: a round core and one step, with a notch where the next layer's front edge lies",
        (
            length("core_radius", "radius of the round core"),
            length("reach", "radius of the step's outer end"),
            angle("step_angle", "angle that the step spans, from its front edge to its back edge", 1.0, 350.0),
            angle(
                "turn",
                "turn of each layer against the one below; positive climbs anticlockwise seen from above",
                -180.0,
                180.0,
            ),
            length("notch", "depth of the line-up notch in the outer arc (0 = none)", 0.0, 0.0, 100.0),
            count("joints", "mortar joints round the full circle of the core (0 = none)", 0, 720, 0),
        ),
        EDGES,
        False,
    ),
    build,
    check,
)
