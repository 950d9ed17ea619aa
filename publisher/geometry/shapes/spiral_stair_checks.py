"""Sizes of a spiral stair's layer that do not go together, each in words."""

from collections.abc import Iterator
from math import cos, degrees, dist, pi, sin

from publisher.basics import Finding, polar
from publisher.geometry.registry import Values, deg, mm
from publisher.geometry.rules import LEAST_HOLE, LEAST_WALL
from publisher.geometry.shapes.spiral_stair_outline import SpiralLayer, notch_width_deg

LEAST_COSINE = 0.2  # the notch's slanting side meets a straight end at 78° from square at most
LEAST_ARC = 1.0  # mm of the step's end that stay on each side of the notch
LEAST_NOTCH = 1.0  # mm: a shallower notch is lost under the pencil
LEAST_TICK_PITCH = 1.0  # mm between joint ticks: closer ones cannot be drawn


def check(values: Values) -> Iterator[Finding]:
    """Find sizes that leave no step, a notch that the step cannot hold, a hole too wide, ticks too close to draw."""
    core, reach, plan = values.number("core_radius"), values.number("reach"), SpiralLayer.of(values)
    if core > reach - LEAST_WALL + 1e-9:
        yield values.wrong(
            "core_radius",
            f"the core (radius {mm(core)}) leaves no step inside the reach ({mm(reach)})",
            f"make core_radius at most {mm(reach - LEAST_WALL)}, or reach at least {mm(core + LEAST_WALL)}",
            reach - LEAST_WALL,
        )
        return
    if 0 < plan.sides < 3:
        yield values.wrong(
            "core_sides", f"a core cannot have {plan.sides} sides", "0 makes it round; else 3 or more", 3
        )
        return
    if core > plan.least_end() - LEAST_WALL + 1e-9:
        yield values.wrong(
            "step_end",
            f"a straight end over {deg(values.number('step_angle'))} comes within {mm(max(plan.least_end(), 0.0))} of the axis, but the"
            f" core's radius is {mm(core)}",
            "make the step's angle or the core smaller, the reach larger, or the end an arc",
        )
        return
    yield from _check_hole(values, plan)
    depth, joints = values.number("notch"), values.count("joints")
    if depth > 0.0:
        yield from _check_notch(values, plan)
    if joints and plan.perimeter() / joints < LEAST_TICK_PITCH:
        yield values.wrong(
            "joints",
            f"{joints} joints round a core of radius {mm(core)} stand {mm(plan.perimeter() / joints)} apart",
            f"nobody can draw them closer than {mm(LEAST_TICK_PITCH)}: at most {int(plan.perimeter())} joints",
            plan.perimeter(),
        )


def _check_hole(values: Values, plan: SpiralLayer) -> Iterator[Finding]:
    hole, most = values.number("hole_radius"), plan.inner() - LEAST_WALL
    if hole > max(most, 0.0) + 1e-9:
        yield values.wrong(
            "hole_radius",
            f"a hole of radius {mm(hole)} leaves {mm(max(plan.inner() - hole, 0.0))} of the core",
            f"leave at least {mm(LEAST_WALL)}: hole_radius at most {mm(max(most, 0.0))} (0 = no hole)",
            max(most, 0.0),
        )
    elif 0.0 < hole < LEAST_HOLE:
        yield values.wrong(
            "hole_radius",
            f"a hole of radius {mm(hole)} cannot be cut",
            f"make it at least {mm(LEAST_HOLE)}, or 0 mm for none",
            LEAST_HOLE,
        )


def _check_notch(values: Values, plan: SpiralLayer) -> Iterator[Finding]:
    core, depth = plan.core, plan.notch
    turn, step = abs(values.number("turn")), values.number("step_angle")
    most_deep = plan.least_end() - core - LEAST_WALL
    if depth < LEAST_NOTCH:
        yield values.wrong(
            "notch",
            f"a notch {mm(depth)} deep cannot be found on the cut layer",
            f"make it at least {mm(LEAST_NOTCH)} deep, better 3 to 5 mm; 0 mm leaves it out",
            LEAST_NOTCH,
        )
        return
    if depth > most_deep + 1e-9:
        yield values.wrong(
            "notch",
            f"a notch {mm(depth)} deep cuts through a step that is {mm(plan.least_end() - core)} long",
            f"make the notch at most {mm(most_deep)} deep; 3 to 5 mm are enough",
            most_deep,
        )
        return
    if plan.straight:
        yield from _check_straight_notch(values, plan)
        return
    arc = degrees(LEAST_ARC / plan.reach)
    least, most = notch_width_deg(plan.reach, depth) + arc, step - arc
    if not least <= turn <= most:
        why = "there is no next front edge to mark" if turn == 0.0 else "it does not fit on the step's outer arc"
        yield values.wrong(
            "turn",
            f"the line-up notch stands where the next layer's front edge lies, at {deg(turn)} on a step of {deg(step)}: {why}",
            f"with this notch the turn must be {deg(least)} … {deg(most)}; or write notch: 0 mm",
            most if turn > most else least,
        )


def _check_straight_notch(values: Values, plan: SpiralLayer) -> Iterator[Finding]:
    """Find a notch that a straight end cannot hold: off its ends, or met too flatly by its slanting side."""
    fits = plan.turn < plan.step and cos(plan.turn - pi / 4.0 - plan.step / 2.0) > LEAST_COSINE
    if fits:
        corner, line = plan.notch_corner(), polar(plan.end_radius(plan.turn), plan.turn)
        middle = plan.step / 2.0
        along = (corner[0] - plan.reach) * -sin(middle) + corner[1] * cos(middle)
        fits = along >= LEAST_ARC and dist(line, polar(plan.reach, plan.step)) >= LEAST_ARC
    if not fits:
        turn, step = abs(values.number("turn")), values.number("step_angle")
        yield values.wrong(
            "turn",
            f"the line-up notch stands where the next layer's front edge lies, at {deg(turn)} on a step of {deg(step)}: it does not"
            " fit on the step's straight end",
            "bring the turn nearer to the middle of the step, make the notch less deep, or write notch: 0 mm",
        )
