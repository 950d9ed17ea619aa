from types import SimpleNamespace

import pytest

from publisher.basics import Severity
from publisher.joints.checks import panel_not_placed
from publisher.joints.checks.edge_unknown import CHECK


def subject(make: SimpleNamespace, edge: str, stands_on: str = "f.bottom") -> object:
    plan = make.panels("b", {"f": "w", "r": "s"}, stands_on, make.join(f"f.{edge}", "r.left"))
    return make.assembled(make.design(panels=(plan,)), make.wall("w", 60, 40), make.wall("s", 30, 40))


@pytest.mark.keeps("joints/edge-unknown")
def test_known_edges_pass(make: SimpleNamespace) -> None:
    outcome = CHECK.run(subject(make, "right"), CHECK)
    assert (outcome.looked_at, outcome.findings) == (3, ())


@pytest.mark.breaks("joints/edge-unknown")
def test_a_slip_in_an_edge_is_found_with_the_nearest_edge(make: SimpleNamespace) -> None:
    (found,) = CHECK.run(subject(make, "rihgt"), CHECK).findings
    assert found.severity is Severity.ERROR
    assert found.message == "f (part W) has no edge “rihgt”"
    assert "did you mean “right”?" in found.hint
    assert "bottom, right, top, left" in found.hint


def test_what_the_assembly_stands_on_is_looked_up_too(make: SimpleNamespace) -> None:
    (found,) = CHECK.run(subject(make, "right", "f.botom"), CHECK).findings
    assert "botom" in found.message


def test_panels_that_hang_on_the_slip_do_not_repeat_it(make: SimpleNamespace) -> None:
    check = panel_not_placed.CHECK
    assert check.run(subject(make, "rihgt"), check).findings == ()
