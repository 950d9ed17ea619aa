from types import SimpleNamespace

import pytest

from publisher.basics import Severity
from publisher.joints.checks.panel_not_placed import panel_not_placed


@pytest.mark.keeps("joints/panel-not-placed")
def test_every_panel_that_a_join_leads_to_is_placed(make: SimpleNamespace) -> None:
    plan = make.panels("b", {"f": "w", "r": "w"}, "f.bottom", make.join("f.right", "r.left"))
    outcome = panel_not_placed.run(
        make.assembled(make.design(panels=(plan,)), make.wall("w", 60, 40)), panel_not_placed
    )
    assert (outcome.looked_at, outcome.findings) == (2, ())


@pytest.mark.breaks("joints/panel-not-placed")
def test_a_panel_without_a_join_is_named(make: SimpleNamespace) -> None:
    plan = make.panels("b", {"f": "w", "lonely": "w"}, "f.bottom")
    (found,) = panel_not_placed.run(
        make.assembled(make.design(panels=(plan,)), make.wall("w", 60, 40)), panel_not_placed
    ).findings
    assert found.severity is Severity.ERROR
    assert "nothing says where lonely stands" in found.message
    assert found.place == make.here
