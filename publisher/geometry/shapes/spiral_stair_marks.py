"""What is drawn on a spiral-stair layer, for a positive turn: joint ticks, the next front edge, the lap, the way up."""

from math import atan2, cos, pi, radians, sin

from publisher.basics import Arc, LineKind, Path, Point, Purpose, closed_path, polar, polyline
from publisher.geometry.model import Mark
from publisher.geometry.paths import Pen, shift
from publisher.geometry.registry import Values
from publisher.geometry.shapes.centre import cross
from publisher.geometry.shapes.spiral_stair_outline import AXIS, SpiralLayer, draw_core

STAIR_TICK = 3.0  # mm
LAP_INSET = 2.0  # mm that the lap's line keeps from the edges, so that it is not taken for a cut
CLIMB_ARROW = 3.0  # mm: length of an arrow head
FRONT = 3.5  # mm from the front edge to the words that name it


def marks(values: Values) -> tuple[Mark, ...]:
    """Return all marks of the layer, mm, axis at the origin."""
    plan = SpiralLayer.of(values)
    step, turn = plan.step, plan.turn
    hole = values.number("hole_radius")
    found = [*_ticks(plan, values.count("joints"), hole), *(() if hole else cross())]
    found.append(_said("front edge", polar(0.82 * plan.least_end(), 0.0), FRONT))
    if 0.0 < turn < step:
        line = (plan.core_at(turn), polar(plan.end_radius(turn) - plan.notch, turn))
        found.append(Mark(LineKind.REFERENCE, Purpose.LINE_UP, polyline(line), name="next front edge"))
        found.append(_said("next layer’s front edge here", polar(0.8 * plan.least_end(), (turn + step) / 2.0)))
        found.extend(_lap(plan))
    if turn > 0.0:
        found.append(_climb((plan.core + plan.least_end()) / 2.0, min(turn, step)))
    return tuple(found)


def _said(text: str, at: Point, up: float = 0.0) -> Mark:
    """Return words at a point (mm), or ``up`` mm above it."""
    return Mark(LineKind.REFERENCE, Purpose.NAME, polyline(((at[0], at[1] + up),)), name=text, text=text)


def _ticks(plan: SpiralLayer, joints: int, hole: float) -> list[Mark]:
    """Ticks square to the free boundary of the core, evenly round it, counted from the front edge's direction."""
    deep = min(STAIR_TICK, (plan.inner() - hole) / 2.0)
    clear = 1e-6
    found: list[Mark] = []
    for k in range(1, joints):
        point, at, square = _on_core(plan, k / joints)
        if plan.step + clear < at < 2.0 * pi - clear:
            inwards = (point[0] - deep * cos(square), point[1] - deep * sin(square))
            found.append(Mark(LineKind.DRAW, Purpose.JOINT_TICK, polyline((point, inwards)), name="joint"))
    return found


def _on_core(plan: SpiralLayer, part: float) -> tuple[Point, float, float]:
    """Return the point this part of the way round the core, its direction, and the direction outwards there (radians)."""
    if not plan.sides:
        at = 2.0 * pi * part
        return polar(plan.core, at), at, at
    side, along = divmod(part * plan.sides, 1.0)
    each = 2.0 * pi / plan.sides
    (ax, ay), (bx, by) = polar(plan.core, side * each), polar(plan.core, (side + 1.0) * each)
    point = (ax + (bx - ax) * along, ay + (by - ay) * along)
    return point, atan2(point[1], point[0]) % (2.0 * pi), (side + 0.5) * each


def _lap(plan: SpiralLayer) -> list[Mark]:
    """The area that the next layer covers (core and the step behind its front edge), inset; none if it is too narrow."""
    step, turn = plan.step, plan.turn
    pen = Pen(polar(plan.core, turn)).line(polar(plan.end_radius(turn), turn), "lap")
    if plan.straight:  # this layer's end, then the next one's, which lies turned: they cross in the middle
        pen.line(polar(plan.end_radius((step + turn) / 2.0), (step + turn) / 2.0), "lap")
        pen.line(polar(plan.end_radius(step - turn), step), "lap.next")
    else:
        pen.arc(polar(plan.reach, step), AXIS, plan.reach, "lap")
    x, y = plan.core_at(step - turn)
    pen.line((x * cos(turn) - y * sin(turn), x * sin(turn) + y * cos(turn)), "lap")
    draw_core(pen, plan, step, turn + 2.0 * pi, polar(plan.core, turn), turned=turn)
    inset, lost = shift(pen.path(), [LAP_INSET] * len(pen.edges))
    if lost:
        return []
    return [Mark(LineKind.REFERENCE, Purpose.LAP, closed_path(inset.edges), name="lap of the next layer")]


def _climb(radius: float, turn: float) -> Mark:
    """An arrow along the middle of the bare tread, the way the stair climbs; the head is drawn by going back and forth."""
    start, end = polar(radius, 0.2 * turn), polar(radius, 0.8 * turn)
    shaft = Arc.between("climb", start, end, AXIS, radius)
    head = min(CLIMB_ARROW, 0.3 * radius * turn)
    along = 0.8 * turn + pi / 2.0 - head / 2.0 / radius  # direction of travel near the tip

    def barb(side: float) -> Point:
        away = along + pi + side * radians(25.0)
        return (end[0] + head * cos(away), end[1] + head * sin(away))

    path = Path((shaft, *polyline((end, barb(1.0), end, barb(-1.0))).edges), closed=False)
    return Mark(LineKind.REFERENCE, Purpose.CLIMB, path, name="climbs this way", text="climbs")
