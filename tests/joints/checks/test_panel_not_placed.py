from dataclasses import replace
from types import SimpleNamespace

import pytest

from publisher.basics import Severity
from publisher.design import FaceSeat
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
    assert "lies_on_table" not in found.hint


def test_a_plate_under_the_panel_that_is_said_to_stand_is_to_lie_on_the_table(make: SimpleNamespace) -> None:
    plan = make.panels("yard", {"plate": "plate", "w": "w"}, "w.bottom")
    plan = replace(plan, seats=(FaceSeat("w", "plate", "outside", "bottom", (50.0, 40.0), 0.0, None, make.here),))
    parts = make.wall("plate", 100, 80), make.wall("w", 60, 40)
    (found,) = panel_not_placed.run(make.assembled(make.design(panels=(plan,)), *parts), panel_not_placed).findings
    assert found.hint.startswith("say lies_on_table: plate in place of stands_on: w.bottom; or ")
