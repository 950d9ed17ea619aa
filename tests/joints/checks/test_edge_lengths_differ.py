from types import SimpleNamespace

import pytest

from publisher.basics import Severity
from publisher.joints.checks.edge_lengths_differ import edge_lengths_differ


@pytest.mark.keeps("joints/edge-lengths-differ")
def test_equal_edges_pass(make: SimpleNamespace) -> None:
    plan = make.panels("b", {"f": "w", "r": "w"}, "f.bottom", make.join("f.right", "r.left"))
    outcome = edge_lengths_differ.run(
        make.assembled(make.design(panels=(plan,)), make.wall("w", 60, 40)), edge_lengths_differ
    )
    assert (outcome.looked_at, outcome.findings) == (1, ())


@pytest.mark.breaks("joints/edge-lengths-differ")
def test_a_difference_of_two_hundredths_is_found(make: SimpleNamespace) -> None:
    plan = make.panels("b", {"f": "w", "r": "v"}, "f.bottom", make.join("f.right", "r.left"))
    subject = make.assembled(make.design(panels=(plan,)), make.wall("w", 60, 40), make.wall("v", 60, 40.02))
    (found,) = edge_lengths_differ.run(subject, edge_lengths_differ).findings
    assert found.severity is Severity.ERROR
    assert "they differ by 0.02 mm" in found.message
    assert found.place == make.here


def test_panels_that_cross_are_equally_high(make: SimpleNamespace) -> None:
    plan, parts = make.crate()
    good = edge_lengths_differ.run(make.assembled(make.design(panels=(plan,)), *parts.values()), edge_lengths_differ)
    assert (good.looked_at, good.findings) == (4, ())
    plan, parts = make.crate(height=44.0)
    found = edge_lengths_differ.run(
        make.assembled(make.design(panels=(plan,)), *parts.values()), edge_lengths_differ
    ).findings
    assert len(found) == 4
    assert "l1 is 40.0 mm (1.57 in) high and s1 44.0 mm (1.73 in)" in found[0].message
    assert "one stands 2.00 mm off the ground" in found[0].message


def test_an_edge_of_the_right_length_is_named_where_another_was_joined(make: SimpleNamespace) -> None:
    """A wall of 60 × 40 mm that is joined by its top in place of its side: its left, which is free, is as long as the other's."""
    plan = make.panels("b", {"f": "w", "r": "w"}, "f.bottom", make.join("f.right", "r.top"))
    subject = make.assembled(make.design(panels=(plan,)), make.wall("w", 60, 40))
    (found,) = edge_lengths_differ.run(subject, edge_lengths_differ).findings
    assert found.hint.startswith(
        "is f.bottom or f.top meant, which are as long as r.top? Or is r.right or r.left meant, which are as long as f.right? Else write"
    )
