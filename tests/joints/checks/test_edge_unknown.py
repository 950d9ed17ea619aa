from types import SimpleNamespace

import pytest

from publisher.basics import Severity
from publisher.joints.checks.edge_unknown import edge_unknown
from publisher.joints.checks.panel_not_placed import panel_not_placed


def subject(make: SimpleNamespace, edge: str, stands_on: str = "f.bottom") -> object:
    plan = make.panels("b", {"f": "w", "r": "s"}, stands_on, make.join(f"f.{edge}", "r.left"))
    return make.assembled(make.design(panels=(plan,)), make.wall("w", 60, 40), make.wall("s", 30, 40))


@pytest.mark.keeps("joints/edge-unknown")
def test_known_edges_pass(make: SimpleNamespace) -> None:
    outcome = edge_unknown.run(subject(make, "right"), edge_unknown)
    assert (outcome.looked_at, outcome.findings) == (3, ())


@pytest.mark.breaks("joints/edge-unknown")
def test_a_slip_in_an_edge_is_found_with_the_nearest_edge(make: SimpleNamespace) -> None:
    (found,) = edge_unknown.run(subject(make, "rihgt"), edge_unknown).findings
    assert found.severity is Severity.ERROR
    assert found.message == "f (part W) has no edge “rihgt”"
    assert "did you mean “right”?" in found.hint
    assert "bottom, right, top, left" in found.hint


def test_what_the_assembly_stands_on_is_looked_up_too(make: SimpleNamespace) -> None:
    (found,) = edge_unknown.run(subject(make, "right", "f.botom"), edge_unknown).findings
    assert "botom" in found.message


def test_panels_that_hang_on_the_slip_do_not_repeat_it(make: SimpleNamespace) -> None:
    check = panel_not_placed
    assert check.run(subject(make, "rihgt"), check).findings == ()
