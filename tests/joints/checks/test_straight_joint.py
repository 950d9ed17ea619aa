from types import SimpleNamespace

import pytest

from publisher.basics import Severity
from publisher.joints.checks.straight_joint import straight_joint


def stair(make: SimpleNamespace, joints: int) -> object:
    plan = make.design(stacks=(make.stack("s", ("step", 6, 20.0, (0, 0))),))
    return make.assembled(plan, make.stair_layer(joints=joints))


@pytest.mark.keeps("joints/straight-joint")
def test_joints_half_a_unit_apart_pass(make: SimpleNamespace) -> None:
    outcome = straight_joint.run(stair(make, 27), straight_joint)
    assert (outcome.looked_at, outcome.findings) == (5, ())


@pytest.mark.breaks("joints/straight-joint")
def test_joints_in_line_are_found_with_their_layers(make: SimpleNamespace) -> None:
    (found,) = straight_joint.run(stair(make, 36), straight_joint).findings
    assert found.severity is Severity.WARNING
    assert "the joints of layers 1 to 6 (each with its neighbours) stand nearly over each other: 0.00" in found.message
    assert found.limit == 0.25


def test_a_shade_under_a_quarter_is_found_and_a_quarter_is_not(make: SimpleNamespace) -> None:
    # the share of a turn of 20°: n/18 of a unit; 41 joints: 2.278 → 0.278; 40: 2.222 → 0.222
    assert straight_joint.run(stair(make, 41), straight_joint).findings == ()
    (found,) = straight_joint.run(stair(make, 40), straight_joint).findings
    assert found.value is not None
    assert 0.22 < found.value < 0.225


def test_the_nearest_pitch_and_offset_are_proposed(make: SimpleNamespace) -> None:
    """A turn of 20° is n/18 of a unit: of 36 joints, 31 is the nearest count with a quarter (0.278), 27 the one with a half."""
    (found,) = straight_joint.run(stair(make, 36), straight_joint).findings
    assert "31 joints round the ring, a unit of 6.08 mm (0.24 in) (0.28 of a unit apart)" in found.hint
    assert "27 joints round the ring, a unit of 6.98 mm (0.27 in) (0.50 of a unit apart)" in found.hint
    assert "moved along by 1.31 mm (0.05 in) (0.25 apart) or 2.62 mm (0.10 in) (0.50 apart)" in found.hint
    assert (
        straight_joint.run(stair(make, 31), straight_joint).findings
        == straight_joint.run(stair(make, 27), straight_joint).findings
        == ()
    )


def test_only_the_layers_that_are_in_line_are_named(make: SimpleNamespace) -> None:
    rows = (("step", 3, 20.0, (0, 0)), ("step", 2, 15.0, (0, 0)))  # 24 joints: 15° is a whole unit, 20° is 1.33 units
    plan = make.design(stacks=(make.stack("s", *rows),))
    (found,) = straight_joint.run(make.assembled(plan, make.stair_layer(joints=24)), straight_joint).findings
    assert "the joints of layers 3 to 5 (each with its neighbours) stand" in found.message
