"""Slots in which panels cross: open at an edge, half as deep as the panel is high there."""

from collections.abc import Iterator
from math import dist

import shapely

from publisher.basics import SAME_POINT, Finding, Point
from publisher.design import EdgeTreatment, LapSlot, PartPlan
from publisher.geometry.model import Edge, Lap
from publisher.geometry.paths import Bump, box_bump
from publisher.geometry.registry import mm
from publisher.geometry.rules import SLOT_OFF_PANEL


def left_end_first(start: Point, end: Point) -> bool:
    """True when an edge starts at its left end on the template; the lower end of an upright edge stands for the left one."""
    return (start[0] - end[0] < -SAME_POINT) if abs(start[0] - end[0]) > SAME_POINT else start[1] < end[1]


def along(edge: Edge, at: float) -> Point:
    """Return the point of the nominal edge ``at`` mm from its left end."""
    start, end = edge.nominal_start, edge.nominal_end
    if not left_end_first(start, end):
        start, end = end, start
    share = at / dist(start, end)
    return (start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1]))


def lap_of(edge: Edge, slot: LapSlot, nominal: shapely.Polygon) -> Lap:
    """Return where a slot ends inside the panel: half way along the square to the nominal edge, as long as it meets board."""
    (ax, ay), (bx, by) = edge.nominal_start, edge.nominal_end
    length = edge.nominal_length
    nx, ny = -(by - ay) / length, (bx - ax) / length
    x, y = along(edge, slot.at)
    left, bottom, right, top = nominal.bounds
    far = 2.0 * (right - left + top - bottom)
    cut = shapely.LineString([(x, y), (x + far * nx, y + far * ny)]).intersection(nominal)
    lines = [line for line in shapely.get_parts(cut) if line.geom_type == "LineString"]
    first = min(lines, key=lambda line: float(line.distance(shapely.Point(x, y))), default=None)
    height = float(first.length) if first is not None else 0.0
    return Lap(slot.at, (x + nx * height / 2.0, y + ny * height / 2.0), height, slot.mate + slot.play, slot.matches)


def lap_bumps(edge: Edge) -> Iterator[Bump]:
    """Yield the open slots of a finished edge, from its own line down to half the panel's height."""
    (ax, ay), (bx, by) = edge.start, edge.end
    length = dist(edge.start, edge.end)
    x, y = (bx - ax) / length, (by - ay) / length
    for number, lap in enumerate(edge.laps, 1):
        on = (lap.floor[0] - ax) * x + (lap.floor[1] - ay) * y
        depth = (lap.floor[1] - ay) * x - (lap.floor[0] - ax) * y
        ends = tuple((ax + x * s, ay + y * s) for s in (on - lap.width / 2.0, on + lap.width / 2.0))
        if depth > SAME_POINT:
            what = f"slot {number} in the edge “{edge.name}”"
            yield box_bump(edge.name, f"{edge.name}.lap", what, (ends[0], ends[1]), (-y, x), depth)


def off_panel(edge: Edge, treatment: EdgeTreatment, plan: PartPlan) -> Iterator[Finding]:
    """Find slots that do not lie whole on their edge."""
    for slot in treatment.laps:
        half = (slot.mate + slot.play) / 2.0
        least, most = half, edge.nominal_length - half
        if least < slot.at < most:
            continue
        yield SLOT_OFF_PANEL.found(
            f"part “{plan.id}” is crossed {mm(slot.at)} from the left end of its edge “{edge.name}”, which is "
            f"{mm(edge.nominal_length)} long: the slot, {mm(2.0 * half)} wide, does not lie on it",
            subject=f"part {plan.id}",
            hint=f"let the panels cross between {mm(least)} and {mm(most)} from that end, with board left beside the slot"
            if most > least
            else "make the panel longer",
            place=treatment.place,
            value=slot.at,
            limit=least if slot.at <= least else most,
        )
