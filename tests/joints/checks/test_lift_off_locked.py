from types import SimpleNamespace

import pytest

from publisher.joints.checks.lift_off_locked import lift_off_locked
from tests.joints.checks.test_thing_not_carried import GOOD, whole


@pytest.mark.breaks("joints/lift-off-locked")
def test_a_beam_under_another_one(make: SimpleNamespace) -> None:
    high = {"n": ("pier", (), (0, 30)), "over": ("pier", ("n",), (0, 0)), "bar": ("beam", ("over",), (0, -15))}
    (finding,) = lift_off_locked.run(whole(make, {**GOOD, **high}), lift_off_locked).findings
    assert "top lifts off, and bar reaches over it" in finding.message
