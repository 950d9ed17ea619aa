from types import SimpleNamespace

import pytest

from publisher.basics import Severity
from publisher.joints.checks.layers_do_not_touch import layers_do_not_touch


@pytest.mark.keeps("joints/layers-do-not-touch")
def test_layers_that_overlap_pass(make: SimpleNamespace) -> None:
    plan = make.design(stacks=(make.stack("s", ("a", 3, 0.0, (40, 0))),))
    outcome = layers_do_not_touch.run(make.assembled(plan, make.rectangle("a", 0, 0, 50, 50)), layers_do_not_touch)
    assert (outcome.looked_at, outcome.findings) == (2, ())


@pytest.mark.breaks("joints/layers-do-not-touch")
def test_a_layer_beside_the_one_below_hangs_in_the_air(make: SimpleNamespace) -> None:
    plan = make.design(stacks=(make.stack("s", ("a", 2, 0.0, (60, 0))),))
    (found,) = layers_do_not_touch.run(
        make.assembled(plan, make.rectangle("a", 0, 0, 50, 50)), layers_do_not_touch
    ).findings
    assert found.severity is Severity.ERROR
    assert "layer 2 (a) does not lie on layer 1 (a): it would hang in the air" in found.message
