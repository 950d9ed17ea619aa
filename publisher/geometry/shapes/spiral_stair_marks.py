"""What is drawn on a spiral-stair layer, for a positive turn: joint ticks, the next front edge, the lap, the way up."""

from math import cos, pi, radians, sin

from publisher.basics import LineKind, Point, Purpose
from publisher.geometry.curves import Curve, flatten, polar
from publisher.geometry.model import Mark
from publisher.geometry.offset import shift
from publisher.geometry.rings import Pen, ring_of
from publisher.geometry.values import Values

TICK = 3.0  # mm
LAP_INSET = 2.0  # mm that the lap's line keeps from the edges, so that it is not taken for a cut
COARSE = 0.05  # mm: sagitta of lines that are only looked at
ARROW = 3.0  # mm: length of an arrow head


def marks(values: Values) -> tuple[Mark, ...]:
    """Return all marks of the layer, mm, axis at the origin."""
    core, reach, depth = values.number("core_radius"), values.number("reach"), values.number("notch")
    step, turn = radians(values.number("step_angle")), radians(abs(values.number("turn")))
    found = [*_ticks(core, values.count("joints"), step)]
    if 0.0 < turn < step:
        line = (polar(core, turn), polar(reach - depth, turn))
        found.append(Mark(LineKind.REFERENCE, Purpose.LINE_UP, line, name="next front edge"))
        found.extend(_lap(core, reach, turn, step))
    if turn > 0.0:
        found.append(_climb((core + reach) / 2.0, min(turn, step)))
    return tuple(found)


def _ticks(core: float, joints: int, step: float) -> list[Mark]:
    """Radial ticks at 360/joints round the free arc of the core, counted from the front edge's direction."""
    pitch = 2.0 * pi / joints if joints else 0.0
    inner = core - min(TICK, core / 2.0)
    clear = 1e-6
    at = [k * pitch for k in range(1, joints) if step + clear < k * pitch < 2.0 * pi - clear]
    return [Mark(LineKind.DRAW, Purpose.JOINT_TICK, (polar(core, a), polar(inner, a)), name="joint") for a in at]


def _lap(core: float, reach: float, turn: float, step: float) -> list[Mark]:
    """The area that the next layer covers (core and the step behind its front edge), inset; none if it is too narrow."""
    axis = (0.0, 0.0)
    pen = Pen(polar(core, turn)).line(polar(reach, turn), "lap").arc(polar(reach, step), axis, reach, "lap")
    pen.line(polar(core, step), "lap").arc(polar(core, turn), axis, core, "lap")
    inset, lost = shift(pen.curves, [LAP_INSET] * len(pen.curves))
    if lost or not inset:
        return []
    points = ring_of(inset, COARSE).points
    return [Mark(LineKind.REFERENCE, Purpose.LAP, points, closed=True, name="lap of the next layer")]


def _climb(radius: float, turn: float) -> Mark:
    """An arrow along the middle of the bare tread, the way the stair climbs; the head is drawn by going back and forth."""
    start, end = polar(radius, 0.2 * turn), polar(radius, 0.8 * turn)
    shaft = [*flatten(Curve("climb", start, end, (0.0, 0.0), radius), COARSE), end]
    head = min(ARROW, 0.3 * radius * turn)
    along = 0.8 * turn + pi / 2.0 - head / 2.0 / radius  # direction of travel near the tip

    def barb(side: float) -> Point:
        away = along + pi + side * radians(25.0)
        return (end[0] + head * cos(away), end[1] + head * sin(away))

    points = (*shaft, barb(1.0), end, barb(-1.0))
    return Mark(LineKind.REFERENCE, Purpose.CLIMB, points, name="climbs this way", text="climbs")
