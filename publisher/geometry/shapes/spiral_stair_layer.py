"""One layer of a spiral stair: a core and one step, laid in a stack, each turned against the one below.

The axis is the origin. For a positive turn the stair climbs anticlockwise seen from above: the step spans the angles 0 …
step_angle between the core and the reach, its front edge lies along +x, and the next layer's front edge lies at the angle
``turn``. For a negative turn the whole layer is mirrored: the step spans 0 … −step_angle.

The line-up notch is a V cut into the step's end. The side of the V that lies **exactly on the radial line at the angle turn**
is the one that the next layer's front edge must meet; the other side slants across the part of the tread that stays
bare, so the notch stays in sight when the next layer lies on it, and it survives tracing because it is part of the outline.
"""

from math import pi

from publisher.basics import Path, Pose, circle, polar
from publisher.geometry.paths import Pen
from publisher.geometry.registry import ON_AXIS, Shape, Values, angle, choice, count, edges_of, length, shape_kind
from publisher.geometry.shapes.spiral_stair_checks import check
from publisher.geometry.shapes.spiral_stair_marks import marks
from publisher.geometry.shapes.spiral_stair_outline import AXIS, SpiralLayer, draw_core, draw_end

OTHER_WAY = Pose(turn=180.0, mirrored=True)  # mirrored in the front edge
EDGES = ("front", "step_end", "back", "core")


def outline(plan: SpiralLayer) -> Path:
    """Return the outline for a positive turn: front, step_end (with the notch), back, core; anticlockwise."""
    pen = Pen((plan.core, 0.0)).line((plan.reach, 0.0), "front")
    if plan.notch > 0.0:
        line = plan.end_radius(plan.turn)
        draw_end(pen, plan, plan.notch_corner())
        pen.line(polar(line - plan.notch, plan.turn), "notch").line(polar(line, plan.turn), "notch")
    draw_end(pen, plan, polar(plan.reach, plan.step)).line(plan.core_at(plan.step), "back")
    draw_core(pen, plan, plan.step, 2.0 * pi, (plan.core, 0.0))
    return pen.path()


def build(values: Values) -> Shape:
    """Return the layer; area πr² + σ/360·π(R² − r²), less the notch (trade formula for a sector on a core).

    A many-sided core has a corner at the front edge, so layers turned by a multiple of 360/sides keep its faces plane.
    """
    plan = SpiralLayer.of(values)
    outer, drawn = outline(plan), marks(values)
    if values.number("turn") < 0.0:
        outer, drawn = outer.reversed().placed(OTHER_WAY), tuple(mark.placed(OTHER_WAY) for mark in drawn)
    names = [name for name in dict.fromkeys(edge.name for edge in outer.edges) if name != "notch"]
    order = sorted(names, key=lambda name: EDGES.index(name.partition("_")[0] if name.startswith("core") else name))
    hole = values.number("hole_radius")
    holes = (circle(AXIS, hole, "bore", ccw=False),) if hole else ()
    return Shape(outer, edges_of(outer, order), holes, drawn)


KIND = shape_kind(
    "spiral_stair_layer",
    "a layer of a spiral stair: a core and one step, with a notch where the next layer's front edge lies",
    (
        length("core_radius", "radius of the core; of its corners, if it has sides"),
        length("reach", "radius of the step's outer end"),
        angle("step_angle", "angle that the step spans, from its front edge to its back edge", 1.0, 350.0),
        angle(
            "turn",
            "turn of each layer against the one below; positive climbs anticlockwise seen from above",
            -180.0,
            180.0,
        ),
        length("notch", "depth of the line-up notch in the step's end (0 = none)", 0.0, 0.0, 100.0),
        count("core_sides", "sides of the core, a corner at the front edge (0 = round)", 0, 60, 0),
        choice("step_end", "form of the step's outer end", ("arc", "straight")),
        length("hole_radius", "radius of a hole about the axis, for a dowel (0 = none)", 0.0, 0.0),
        count("joints", "mortar joints round the full circle of the core (0 = none)", 0, 720, 0),
    ),
    ("front", "step_end", "back", "core", "core_1 … core_n"),
    build,
    check,
    origin=ON_AXIS,
    axis=True,
)
