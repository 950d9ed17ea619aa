from types import SimpleNamespace

import pytest

from publisher.basics import Severity
from publisher.joints.checks.step_too_weak import CHECK


def stair(make: SimpleNamespace, reach: float, bending: float | None = None) -> object:
    plan = make.design(stacks=(make.stack("s", ("step", 8, 20.0, (0, 0))),), boards=(make.board(bending=bending),))
    return make.assembled(plan, make.stair_layer(reach=reach))


@pytest.mark.keeps("joints/step-too-weak")
def test_a_short_step_bears_a_figure(make: SimpleNamespace) -> None:
    outcome = CHECK.run(stair(make, 92), CHECK)
    assert outcome.looked_at == 6  # all but the two that stand on the table all round
    assert outcome.findings == ()


@pytest.mark.breaks("joints/step-too-weak")
def test_a_long_top_step_is_named_with_its_root(make: SimpleNamespace) -> None:
    (found,) = CHECK.run(stair(make, 142), CHECK).findings
    assert found.severity is Severity.WARNING
    assert "step 8 of s (layer 8) is the weak one" in found.message
    assert "0.345 MPa assumed" in found.message
    assert "knee brace" in found.hint


def test_a_stronger_board_bears_it(make: SimpleNamespace) -> None:
    assert CHECK.run(stair(make, 142, 0.6), CHECK).findings == ()
    (found,) = CHECK.run(stair(make, 142, 0.3), CHECK).findings
    assert "assumed" not in found.message


def test_a_pile_has_no_steps_to_look_at(make: SimpleNamespace) -> None:
    plan = make.design(stacks=(make.stack("s", ("plinth", 3, 0.0, (0, 0))),))
    outcome = CHECK.run(make.assembled(plan, make.disc()), CHECK)
    assert (outcome.looked_at, outcome.findings) == (0, ())
