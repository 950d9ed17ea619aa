"""Cheeks on a roof: cut for its pitch, for another one, and fins that stand square on it."""

from dataclasses import replace
from math import radians, tan
from types import SimpleNamespace

import pytest

from publisher.basics import Outcome
from publisher.design import FaceSeat
from publisher.joints.checks.leans_on_its_slope import leans_on_its_slope


def cheek(make: SimpleNamespace, pitch: float, turn: float = 90.0, edge: str = "slope") -> Outcome:
    """A tent whose slopes rise by 45°, and a cheek on the first: upright in front, level on top, slanted below."""
    part = make.polygon("cheek", [(0, 0), (30 / tan(radians(pitch)), 30), (0, 30)], ("slope", "top", "front"))
    plan = make.panels("tent", {"a": "p", "b": "p", "c": "cheek"}, "a.bottom", make.join("a.top", "b.top"))
    seat = FaceSeat("c", "a", "outside", edge, (70.0, 50.0), turn, None, make.here)
    plan = replace(plan, seats=(seat,))
    return leans_on_its_slope.run(
        make.assembled(make.design(panels=(plan,)), make.wall("p", 140, 100), part), leans_on_its_slope
    )


@pytest.mark.keeps("joints/leans-on-its-slope")
@pytest.mark.parametrize(("turn", "edge", "looked_at"), [(90.0, "slope", 1), (0.0, "slope", 0), (90.0, "front", 0)])
def test_a_cheek_that_is_cut_for_its_roof_stands_upright(
    make: SimpleNamespace, turn: float, edge: str, looked_at: int
) -> None:
    outcome = cheek(make, 45.0, turn, edge)  # across the slope, or on its square edge, it stands square on the roof
    assert (outcome.looked_at, outcome.findings) == (looked_at, ())


@pytest.mark.breaks("joints/leans-on-its-slope")
@pytest.mark.parametrize("pitch", (35.0, 50.0))
def test_a_cheek_for_another_pitch_leans(make: SimpleNamespace, pitch: float) -> None:
    (found,) = cheek(make, pitch).findings
    assert found.value == pytest.approx(abs(pitch - 45.0))
    assert "that face rises by 45°" in found.message
    assert "cut its edge for 45°" in found.hint


def test_a_cheek_the_wrong_way_round_is_to_be_turned(make: SimpleNamespace) -> None:
    (found,) = cheek(make, 40.0, 270.0).findings
    assert found.value == pytest.approx(85.0)
    assert found.hint == "turn it by 180 deg: its edge rises the other way"
