from math import inf, radians, sin
from types import SimpleNamespace

import pytest

from publisher.joints.stacks.facts import facts_of, report_on
from publisher.joints.stacks.layers import lay_all


def facts(make: SimpleNamespace, plan: object, *parts: object, height: float = inf) -> dict[str, float]:
    by_id, boards = {p.id: p for p in parts}, {"foam": make.board()}  # type: ignore[attr-defined]
    (stack,), _ = lay_all((plan,), by_id)  # type: ignore[arg-type]
    report = report_on(stack, by_id, boards, height, make.here)
    return {f.name: f.value for f in facts_of(report, by_id, boards)}


def test_the_demo_stair(make: SimpleNamespace) -> None:
    """Core r 30, reach 92, 18 to a turn, step 40°, 14 layers of 5 mm (sizes checked by calculation)."""
    found = facts(make, make.stack("stair", ("step", 14, 20.0, (0, 0))), make.stair_layer(joints=27, notch_at=19.0))
    assert found["stair.layers"] == found["stair.steps"] == 14
    assert found["stair.height"] == 70.0
    assert found["stair.height_spread"] == pytest.approx(2.8)
    assert found["stair.rise"] == 5.0
    assert found["stair.layers_to_a_turn"] == 18
    assert found["stair.total_turn"] == 260
    assert found["stair.rim_chord"] == pytest.approx(2 * 92 * sin(radians(20 / 2)))
    assert round(found["stair.base_that_stands"], 1) == 27.2
    assert found["stair.headroom"] == inf
    assert round(found["stair.joint_stagger"], 2) == 0.5
    assert found["stair.flying_reach"] == pytest.approx(92 - 30, abs=0.01)  # R − r
    assert 75 < found["stair.least_plinth_radius"] <= 76


def test_three_sixteenths_board_makes_fifteen_layers_71_4_high(make: SimpleNamespace) -> None:
    found = facts(make, make.stack("stair", ("step", 15, 20.0, (0, 0))), make.stair_layer(thickness=4.7625))
    assert round(found["stair.height"], 1) == 71.4


def test_a_plinth_counts_into_the_height_and_not_into_the_climb(make: SimpleNamespace) -> None:
    plan = make.stack("stair", ("plinth", 1, 0.0, (0, 0)), ("step", 14, 20.0, (0, 0)))
    found = facts(make, plan, make.disc(), make.stair_layer())
    assert (found["stair.height"], found["stair.climb"]) == (75.0, 70.0)
    assert (found["stair.layers"], found["stair.steps"]) == (15, 14)


def test_twenty_boards_of_5_and_twenty_one_of_three_sixteenths_are_a_storey(make: SimpleNamespace) -> None:
    thin = make.rectangle("a", 0, 0, 40, 40, thickness=4.7625)
    assert facts(make, make.stack("p", ("a", 20, 0.0, (0, 0))), make.rectangle("a", 0, 0, 40, 40))["p.height"] == 100.0
    assert round(facts(make, make.stack("p", ("a", 21, 0.0, (0, 0))), thin)["p.height"], 2) == 100.01


def test_a_layer_in_the_air_has_no_reach(make: SimpleNamespace) -> None:
    found = facts(make, make.stack("s", ("a", 2, 0.0, (60, 0))), make.rectangle("a", 0, 0, 50, 50))
    assert found["s.contact_least"] == 0
    assert found["s.flying_reach"] == found["s.overhang_reach"] == inf


def test_overhang_and_flying_reach_of_a_straight_stair(make: SimpleNamespace) -> None:
    found = facts(make, make.stack("s", ("a", 4, 0.0, (20, 0))), make.rectangle("a", 0, 0, 100, 40))
    assert found["s.overhang_reach"] == pytest.approx(20)
    assert found["s.flying_reach"] == pytest.approx(60)  # the fourth layer's end, over what stands on the ground
    assert "s.joint_stagger" not in found
