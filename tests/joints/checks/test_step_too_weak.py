from dataclasses import replace
from types import SimpleNamespace

import pytest

from publisher.basics import Severity
from publisher.design import Figure, StackRow
from publisher.joints.assembled import Assembled
from publisher.joints.checks.step_too_weak import step_too_weak


def stair(make: SimpleNamespace, reach: float, bending: float | None = None) -> Assembled:
    plan = make.design(stacks=(make.stack("s", ("step", 8, 20.0, (0, 0))),), boards=(make.board(bending=bending),))
    made: Assembled = make.assembled(plan, make.stair_layer(reach=reach))
    return made


@pytest.mark.keeps("joints/step-too-weak")
def test_a_short_step_bears_a_figure(make: SimpleNamespace) -> None:
    outcome = step_too_weak.run(stair(make, 92), step_too_weak)
    assert outcome.looked_at == 6  # all but the two that stand on the table all round
    assert outcome.findings == ()


@pytest.mark.breaks("joints/step-too-weak")
def test_a_long_top_step_is_named_with_its_root(make: SimpleNamespace) -> None:
    (found,) = step_too_weak.run(stair(make, 142), step_too_weak).findings
    assert found.severity is Severity.ERROR
    assert "step 8 of s (layer 8) is the weak one" in found.message
    assert "0.345 MPa assumed" in found.message
    assert "knee brace" in found.hint


def test_a_stronger_board_bears_it(make: SimpleNamespace) -> None:
    assert step_too_weak.run(stair(make, 142, 0.6), step_too_weak).findings == ()
    (found,) = step_too_weak.run(stair(make, 142, 0.3), step_too_weak).findings
    assert "MPa assumed" not in found.message


def test_figures_are_as_heavy_as_their_bases_say(make: SimpleNamespace) -> None:
    """A step of 92 mm bears a figure on a base of 25 mm, and not one on 40 mm; doubled, it bears that too."""
    heavy = replace(stair(make, 92).design, figure=Figure(40.0, 80.0))
    (found,) = step_too_weak.run(make.assembled(heavy, make.stair_layer(reach=92)), step_too_weak).findings
    assert "a figure of 80 g (assumed, by its base of 40.0 mm)" in found.message
    rows = (*heavy.stacks[0].rows, StackRow("step", 1, 0.0, (0.0, 0.0), make.here))
    doubled = replace(heavy, stacks=(replace(heavy.stacks[0], rows=rows),))
    assert step_too_weak.run(make.assembled(doubled, make.stair_layer(reach=92)), step_too_weak).findings == ()


def test_a_pile_has_no_steps_to_look_at(make: SimpleNamespace) -> None:
    plan = make.design(stacks=(make.stack("s", ("plinth", 3, 0.0, (0, 0))),))
    outcome = step_too_weak.run(make.assembled(plan, make.disc()), step_too_weak)
    assert (outcome.looked_at, outcome.findings) == (0, ())
