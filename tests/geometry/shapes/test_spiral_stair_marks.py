"""Marks of a stair layer: ticks, the next front edge, the lap, the way up."""

from collections.abc import Callable
from math import atan2, degrees, dist, hypot

import pytest
import shapely

from publisher.basics import Finding, LineKind, Point, Purpose
from publisher.design import PartPlan
from publisher.geometry import Part, polygon

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]
DEMO: dict[str, float | str] = {"core_radius": 30.0, "reach": 92.0, "step_angle": 40.0, "turn": 20.0}


def angle_of(point: Point) -> float:
    return degrees(atan2(point[1], point[0]))


def test_marks(plan: Plan, drawn: Draw) -> None:
    part = drawn(plan("spiral_stair_layer", {**DEMO, "notch": 4.0, "joints": 27}))
    ticks = [m for m in part.marks if m.purpose is Purpose.JOINT_TICK]
    pitch = 360.0 / 27.0
    # the free arc of the core runs from 40° to 360°; joints are counted from the front edge, none on the edges themselves
    assert [round(angle_of(m.points[0]) % 360.0, 6) for m in ticks] == [round(k * pitch, 6) for k in range(4, 27)]
    assert all(m.kind is LineKind.DRAW and dist(*m.points) == pytest.approx(3.0, abs=0.01) for m in ticks)
    assert all(hypot(*m.points[0]) == pytest.approx(30.0, abs=0.006) for m in ticks)
    (line,) = [m for m in part.marks if m.purpose is Purpose.LINE_UP]
    assert line.kind is LineKind.REFERENCE and hypot(*line.points[1]) == pytest.approx(88.0)
    (lap,) = [m for m in part.marks if m.purpose is Purpose.LAP]
    assert lap.closed and len(lap.points) < 120
    body = polygon(part.outline)
    assert body.contains(shapely.Polygon(lap.points))
    (climb,) = [m for m in part.marks if m.purpose is Purpose.CLIMB]
    assert climb.text == "climbs" and body.contains(shapely.LineString(climb.points))


def test_ticks_stop_at_the_template(plan: Plan, drawn: Draw) -> None:
    part = drawn(plan("spiral_stair_layer", {**DEMO, "joints": 27}, trace_allowance=0.4))
    ticks = [m for m in part.marks if m.purpose is Purpose.JOINT_TICK]
    assert ticks and max(hypot(*p) for m in ticks for p in m.points) <= 29.6 + 1e-6
