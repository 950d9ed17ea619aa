"""Marks of a stair layer: ticks, the next front edge, the lap, the way up."""

from collections.abc import Callable
from math import atan2, cos, degrees, dist, hypot, pi, radians, sin

import pytest
import shapely

from publisher.basics import (
    Arc,
    Finding,
    LineKind,
    Point,
    Purpose,
)
from publisher.design import PartPlan
from publisher.geometry import (
    Part,
    line_string,
    polygon,
)

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
    assert [round(angle_of(m.path.points[0]) % 360.0, 6) for m in ticks] == [round(k * pitch, 6) for k in range(4, 27)]
    assert all(m.kind is LineKind.DRAW and dist(*m.path.points) == pytest.approx(3.0, abs=0.01) for m in ticks)
    assert all(hypot(*m.path.points[0]) == pytest.approx(30.0, abs=0.006) for m in ticks)
    (line,) = [m for m in part.marks if m.purpose is Purpose.LINE_UP]
    assert line.kind is LineKind.REFERENCE and hypot(*line.path.points[1]) == pytest.approx(88.0)
    (lap,) = [m for m in part.marks if m.purpose is Purpose.LAP]
    assert lap.path.closed and {e.radius for e in lap.path.edges if isinstance(e, Arc)} == {28.0, 90.0}
    body = polygon(part.outline)
    assert body.contains(shapely.Polygon(lap.path.points))
    (climb,) = [m for m in part.marks if m.purpose is Purpose.CLIMB]
    assert climb.text == "climbs" and body.contains(line_string(climb.path))
    assert isinstance(climb.path.edges[0], Arc) and climb.path.edges[0].centre == (0.0, 0.0)


def test_ticks_stop_at_the_template(plan: Plan, drawn: Draw) -> None:
    part = drawn(plan("spiral_stair_layer", {**DEMO, "joints": 27}, trace_allowance=0.4))
    ticks = [m for m in part.marks if m.purpose is Purpose.JOINT_TICK]
    assert ticks and max(hypot(*p) for m in ticks for p in m.path.points) <= 29.6 + 1e-6


def test_ticks_of_a_many_sided_core_stand_square_to_its_sides(plan: Plan, drawn: Draw) -> None:
    sizes: dict[str, float | str] = {
        "core_radius": 30.0, "reach": 92.0, "step_angle": 60.0, "turn": 20.0, "core_sides": 6.0, "joints": 24.0,
    }  # fmt: skip
    part = drawn(plan("spiral_stair_layer", sizes))
    ticks = [m.path.points for m in part.marks if m.purpose is Purpose.JOINT_TICK]
    # 24 on six sides of 30 mm: every 7.5 mm; one side lies under the step, with both its corners
    assert len(ticks) == 24 - 4 - 1
    apothem = 30.0 * cos(pi / 6.0)
    for outer, inner in ticks:
        side = int(degrees(atan2(outer[1], outer[0])) % 360.0 // 60.0)
        square = radians(side * 60.0 + 30.0)
        assert outer[0] * cos(square) + outer[1] * sin(square) == pytest.approx(apothem)
        assert dist(outer, inner) == pytest.approx(3.0)


@pytest.mark.parametrize(
    "form", [{"core_sides": 6.0}, {"step_end": "straight"}, {"core_sides": 5.0, "step_end": "straight"}]
)
def test_the_lap_lies_on_this_layer_and_under_the_next(plan: Plan, drawn: Draw, form: dict[str, float | str]) -> None:
    sizes: dict[str, float | str] = {"core_radius": 30.0, "reach": 92.0, "step_angle": 60.0, "turn": 20.0, **form}
    part = drawn(plan("spiral_stair_layer", sizes))
    body = polygon(part.outline)
    above = shapely.affinity.rotate(body, 20.0, origin=(0.0, 0.0))
    (lap,) = (shapely.Polygon(m.path.points) for m in part.marks if m.purpose is Purpose.LAP)
    assert above.buffer(1e-3).contains(lap)
    step = shapely.Polygon([(0.0, 0.0), *((200.0 * cos(radians(a)), 200.0 * sin(radians(a))) for a in range(20, 61))])
    assert lap.intersection(step).difference(body.buffer(1e-3)).area < 1e-6
    assert lap.area > 0.5 * body.intersection(above).area
