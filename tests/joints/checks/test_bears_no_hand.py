from dataclasses import replace
from types import SimpleNamespace

import pytest

from publisher.basics import Severity
from publisher.joints.assembled import Assembled
from publisher.joints.checks.bears_no_hand import bears_no_hand

ID = "joints/bears-no-hand"


def stair(make: SimpleNamespace, bending: float, handled: bool = True) -> Assembled:
    plan = make.design(stacks=(make.stack("s", ("step", 8, 20.0, (0, 0))),), boards=(make.board(bending=bending),))
    made: Assembled = make.assembled(replace(plan, handled=handled), make.stair_layer(reach=92))
    return made


@pytest.mark.keeps(ID)
def test_a_strong_step_bears_a_finger_and_a_weak_one_need_not_where_nobody_presses(make: SimpleNamespace) -> None:
    outcome = bears_no_hand.run(stair(make, 10.0), bears_no_hand)
    assert (outcome.looked_at, outcome.findings) == (1, ())
    assert bears_no_hand.run(stair(make, 0.345, handled=False), bears_no_hand).findings == ()


@pytest.mark.breaks(ID)
def test_a_weak_step_of_a_piece_that_is_handled_is_warned_of(make: SimpleNamespace) -> None:
    """By hand: 0.345 MPa · 30 mm · 40° · 25 mm² / (6 · 62 mm) = 0.49 N: the root of the top step is its core's edge."""
    (found,) = bears_no_hand.run(stair(make, 0.345), bears_no_hand).findings
    assert found.severity is Severity.WARNING
    assert found.value == pytest.approx(0.49, abs=0.01)
    assert "the weakest step of s breaks under 0.48 N" in found.message
    assert "5.0 N" in found.message
