from types import SimpleNamespace

import pytest

from publisher.basics import LineKind, Purpose, polyline
from publisher.geometry import Mark
from publisher.joints.stacks.courses import staggers_of
from publisher.joints.stacks.layers import lay_all
from publisher.joints.stacks.plan_geometry import PlanGeometry


def shares(plan: object, *parts: object) -> list[float]:
    by_id = {p.id: p for p in parts}  # type: ignore[attr-defined]
    (stack,), _ = lay_all((plan,), by_id)  # type: ignore[arg-type]
    return [s.share for s in staggers_of(stack, PlanGeometry(stack.layers, by_id), by_id)]


@pytest.mark.parametrize(
    ("joints", "share"),
    # 20° turns: 27 joints are 13.33° apart (1.5 pitches a turn), 45 are 8° (2.5), 36 are 10° (2), 40 are 9° (2.22)
    [(27, 0.5), (45, 0.5), (36, 0.0), (18, 0.0), (40, 2 / 9)],
)
def test_joints_round_a_core_follow_the_turn(make: SimpleNamespace, joints: int, share: float) -> None:
    found = shares(make.stack("s", ("step", 5, 20.0, (0, 0))), make.stair_layer(joints=joints))
    assert len(found) == 4
    assert found == pytest.approx([share] * 4, abs=1e-3)


def test_layers_turned_fifteen_degrees_with_a_pitch_that_divides_the_turn_line_up(make: SimpleNamespace) -> None:
    """Fact of the trade (common practice, no source): joints at a pitch that divides the turn stand over each other."""
    step = make.stair_layer(sweep=30, joints=48)  # 7.5°: two pitches a turn
    assert shares(make.stack("s", ("step", 24, 15.0, (0, 0))), step) == pytest.approx([0.0] * 23, abs=1e-3)


def test_only_neighbouring_courses_count(make: SimpleNamespace) -> None:
    """Every second course in line is how a bond is laid: half a unit from one to the next."""
    wall = wall_of(make, 0.0)
    assert shares(make.stack("w", ("a", 4, 0.0, (5, 0))), wall) == pytest.approx([0.5] * 3, abs=1e-3)


@pytest.mark.parametrize(("shift", "share"), [(0.0, 0.0), (2.5, 0.25), (3.0, 0.3), (10.0, 0.0)])
def test_joints_along_a_straight_wall_follow_the_shift(make: SimpleNamespace, shift: float, share: float) -> None:
    found = shares(make.stack("w", ("a", 3, 0.0, (shift, 0))), wall_of(make, 0.0))
    assert found == pytest.approx([share] * 2, abs=1e-3)


def test_ticks_that_end_inside_a_smaller_template_still_count(make: SimpleNamespace) -> None:
    found = shares(make.stack("w", ("a", 3, 0.0, (5, 0))), wall_of(make, 0.4))
    assert found == pytest.approx([0.5] * 2, abs=1e-3)


def test_a_stack_without_ticks_has_no_stagger(make: SimpleNamespace) -> None:
    assert shares(make.stack("w", ("a", 3, 0.0, (5, 0))), make.rectangle("a", 0, 0, 100, 20)) == []


def wall_of(make: SimpleNamespace, short: float) -> object:
    """A straight course 100 × 20 with joints every 10 mm along its front, ticks beginning ``short`` mm inside."""
    ticks = tuple(
        Mark(LineKind.DRAW, Purpose.JOINT_TICK, polyline(((10.0 * i, short), (10.0 * i, 3.0)))) for i in range(1, 10)
    )
    return make.polygon("a", [(0, 0), (100, 0), (100, 20), (0, 20)], marks=ticks)
