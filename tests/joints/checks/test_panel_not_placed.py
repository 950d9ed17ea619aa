from types import SimpleNamespace

import pytest

from publisher.basics import Severity
from publisher.joints.checks.panel_not_placed import CHECK


@pytest.mark.keeps("joints/panel-not-placed")
def test_every_panel_that_a_join_leads_to_is_placed(make: SimpleNamespace) -> None:
    plan = make.panels("b", {"f": "w", "r": "w"}, "f.bottom", make.join("f.right", "r.left"))
    outcome = CHECK.run(make.assembled(make.design(panels=(plan,)), make.wall("w", 60, 40)), CHECK)
    assert (outcome.looked_at, outcome.findings) == (2, ())


@pytest.mark.breaks("joints/panel-not-placed")
def test_a_panel_without_a_join_is_named(make: SimpleNamespace) -> None:
    plan = make.panels("b", {"f": "w", "lonely": "w"}, "f.bottom")
    (found,) = CHECK.run(make.assembled(make.design(panels=(plan,)), make.wall("w", 60, 40)), CHECK).findings
    assert found.severity is Severity.ERROR
    assert "nothing says where lonely stands" in found.message
    assert found.place == make.here
