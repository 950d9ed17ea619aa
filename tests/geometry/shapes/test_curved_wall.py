"""The shape curved_wall against the rows of bending."""

from collections.abc import Callable
from itertools import pairwise
from math import pi

import pytest

from publisher.basics import Finding, LineKind, Purpose
from publisher.design import PartPlan
from publisher.geometry import Part, area

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]
Sizes = dict[str, float | str]
WALL: Sizes = {"inner_radius": 60.0, "angle": 180.0, "height": 80.0}


@pytest.mark.parametrize(
    ("cut", "radius", "keeps"), [("outer", 60.0, "inside"), ("inner", 65.0, "outside"), ("none", 62.5, "middle")]
)
def test_the_skin_that_is_not_cut_keeps_its_length(
    plan: Plan, drawn: Draw, cut: str, radius: float, keeps: str
) -> None:
    part = drawn(plan("curved_wall", {**WALL, "cut": cut}))
    assert area(part.outline) == pytest.approx(80.0 * radius * pi, rel=1e-12)
    bottom = part.edge("bottom")
    assert bottom is not None and bottom.nominal_length == pytest.approx(radius * pi)
    assert part.bending is not None
    assert (part.bending.keeps, part.bending.radius) == (keeps, pytest.approx(62.5))


def test_slits_stand_evenly_a_thickness_apart(plan: Plan, drawn: Draw) -> None:
    part = drawn(plan("curved_wall", WALL))
    slits = [m.path.points[0][0] for m in part.marks if not m.text]
    pitch = 65.0 * pi / len(slits)
    assert len(slits) == 41 and pitch == pytest.approx(5.0, abs=0.06)
    assert [b - a for a, b in pairwise(slits)] == pytest.approx([pitch] * 40)
    assert slits[0] == pytest.approx(pitch / 2.0) and 65.0 * pi - slits[-1] == pytest.approx(pitch / 2.0)
    assert {(m.kind, m.purpose) for m in part.marks if not m.text} == {(LineKind.SCORE, Purpose.BEND)}
    assert part.bending is not None and (part.bending.slits, part.bending.slit_depth) == (41, pytest.approx(3.3))


def test_a_wall_bent_whole_has_no_slits(plan: Plan, drawn: Draw) -> None:
    part = drawn(plan("curved_wall", {**WALL, "cut": "none"}, thickness=3.0))
    assert not part.marks and part.bending is not None and part.bending.slits == 0


def test_thin_board_is_not_slit(plan: Plan, refused: Refuse, drawn: Draw) -> None:
    (finding,) = refused(plan("curved_wall", WALL, thickness=4.0))
    assert "too thin to slit" in finding.message and "cut: none" in finding.hint
    drawn(plan("curved_wall", WALL, thickness=4.5))
