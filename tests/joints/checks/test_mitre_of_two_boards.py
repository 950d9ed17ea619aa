"""Mitres of equal and of unlike boards, and what of the thicker bevel stays open."""

from math import sqrt
from types import SimpleNamespace

import pytest

from publisher.basics import Finding
from publisher.joints.checks.mitre_of_two_boards import mitre_of_two_boards


def corner(make: SimpleNamespace, thick: float, joint: str = "mitre") -> tuple[Finding, ...]:
    plan = make.panels("hut", {"f": "front", "s": "side"}, "f.bottom", make.join("f.right", "s.left", joint))
    walls = make.wall("front", 80, 60), make.wall("side", 50, 60, thickness=thick)
    outcome = mitre_of_two_boards.run(make.assembled(make.design(panels=(plan,)), *walls), mitre_of_two_boards)
    assert outcome.looked_at == (joint == "mitre")
    return outcome.findings


@pytest.mark.keeps("joints/mitre-of-two-boards")
@pytest.mark.parametrize(("thick", "joint"), [(5.0, "mitre"), (5.2, "mitre"), (10.0, "butt")])
def test_boards_of_one_thickness_may_be_mitred(make: SimpleNamespace, thick: float, joint: str) -> None:
    assert corner(make, thick, joint) == ()


@pytest.mark.breaks("joints/mitre-of-two-boards")
def test_a_thicker_board_in_a_mitre_is_found(make: SimpleNamespace) -> None:
    (found,) = corner(make, 10.0)
    assert found.value == pytest.approx(5.0 * sqrt(2.0))
    assert "of the bevel of s.left stay open" in found.message
