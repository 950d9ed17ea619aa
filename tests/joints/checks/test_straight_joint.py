from types import SimpleNamespace

from publisher.basics import Severity
from publisher.joints.checks.straight_joint import CHECK


def stair(make: SimpleNamespace, joints: int) -> object:
    plan = make.design(stacks=(make.stack("s", ("step", 6, 20.0, (0, 0))),))
    return make.assembled(plan, make.stair_layer(joints=joints))


def test_joints_half_a_unit_apart_pass(make: SimpleNamespace) -> None:
    outcome = CHECK.run(stair(make, 27), CHECK)
    assert (outcome.looked_at, outcome.findings) == (5, ())


def test_joints_in_line_are_found_with_their_layers(make: SimpleNamespace) -> None:
    (found,) = CHECK.run(stair(make, 36), CHECK).findings
    assert found.severity is Severity.WARNING
    assert "neighbouring layers from 1 to 6 stand nearly over each other: 0.00 of a unit" in found.message
    assert found.limit == 0.25


def test_a_shade_under_a_quarter_is_found_and_a_quarter_is_not(make: SimpleNamespace) -> None:
    # the share of a turn of 20°: n/18 of a unit; 41 joints: 2.278 → 0.278; 40: 2.222 → 0.222
    assert CHECK.run(stair(make, 41), CHECK).findings == ()
    (found,) = CHECK.run(stair(make, 40), CHECK).findings
    assert found.value is not None
    assert 0.22 < found.value < 0.225
