from types import SimpleNamespace

from publisher.basics import Severity
from publisher.joints.checks.tips_over import CHECK


def test_a_stair_on_a_wide_plinth_passes(make: SimpleNamespace) -> None:
    plan = make.design(stacks=(make.stack("s", ("plinth", 1, 0.0, (0, 0)), ("step", 14, 20.0, (0, 0))),))
    outcome = CHECK.run(make.assembled(plan, make.disc(), make.stair_layer()), CHECK)
    assert (outcome.looked_at, outcome.findings) == (1, ())


def test_a_light_stair_without_a_plinth_tips_with_figures(make: SimpleNamespace) -> None:
    plan = make.design(stacks=(make.stack("s", ("step", 14, 20.0, (0, 0))),))
    (found,) = CHECK.run(make.assembled(plan, make.stair_layer()), CHECK).findings
    assert found.severity is Severity.WARNING
    assert "s tips over with two figures of 30 g on its two worst treads" in found.message
    assert "radius 76.0 mm" in found.hint


def test_a_beam_that_overhangs_too_far_tips_on_its_own(make: SimpleNamespace) -> None:
    plan = make.design(stacks=(make.stack("s", ("base", 1, 0.0, (0, 0)), ("beam", 1, 0.0, (0, 0))),))
    parts = make.rectangle("base", 0, 0, 20, 20), make.rectangle("beam", 0, 0, 100, 20)
    (found,) = CHECK.run(make.assembled(plan, *parts), CHECK).findings
    assert "tips over on its own" in found.message
