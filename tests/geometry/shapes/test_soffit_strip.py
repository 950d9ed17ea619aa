"""The under side of an arch against bending of sheet."""

from collections.abc import Callable
from math import asin, pi

import pytest

from publisher.basics import Finding
from publisher.design import PartPlan
from publisher.geometry import Part, area
from publisher.geometry.making.parts import make_part

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]


ARCH: dict[str, float | str] = {"form": "segmental", "span": 160.0, "rise": 50.0, "width": 75.0}
ANGLE = 2.0 * asin(80.0 / 89.0)


@pytest.mark.parametrize(
    ("keeps", "radius"), [("arch_face", 89.0), ("inner_face", 84.0), ("unscored", 86.5), ("thin_card", 89.0)]
)
def test_what_keeps_its_length(keeps: str, radius: float, plan: Plan, drawn: Draw) -> None:
    """Outer skin uncut (ρ + t)θ, inner skin uncut ρθ, bare foam (ρ + t/2)θ, with ρ = 84 inside and t = 5."""
    part = drawn(plan("soffit_strip", {**ARCH, "keeps": keeps}))
    bottom = part.edge("bottom")
    assert bottom is not None and bottom.nominal_length == pytest.approx(radius * ANGLE)
    assert area(part.outline) == pytest.approx(radius * ANGLE * 75.0)
    if keeps == "arch_face":
        assert bottom.nominal_length == pytest.approx(198.9, abs=0.05)


def test_slits_stand_a_thickness_apart_along_each_arc(plan: Plan, drawn: Draw) -> None:
    part = drawn(plan("soffit_strip", ARCH))
    slits = [mark for mark in part.marks if mark.name == "slit"]
    assert len(slits) == round(89.0 * ANGLE / 5.0) == 40
    assert part.bending is not None
    assert (part.bending.radius, part.bending.slits, part.bending.slit_depth) == pytest.approx((86.5, 40, 3.3))
    (finding,) = make_part(plan("soffit_strip", ARCH, thickness=4.0))[1]
    assert "too thin to slit" in finding.message and "keeps: unscored" in finding.hint


def test_a_pointed_arch_folds_at_its_apex(plan: Plan, drawn: Draw) -> None:
    part = drawn(plan("soffit_strip", {"form": "pointed", "span": 60.0, "rise": 30.0 * 3.0**0.5, "width": 40.0}))
    (apex,) = [mark for mark in part.marks if mark.name == "arcs meet"]
    assert apex.kind == "fold" and apex.path.points[0][0] == pytest.approx(60.0 * pi / 3.0)


def test_board_too_thick_for_its_arch(plan: Plan, refused: Refuse, drawn: Draw) -> None:
    tight = {"form": "semicircular", "span": 28.0, "width": 40.0}
    (finding,) = refused(plan("soffit_strip", tight))
    assert "does not bend" in finding.message
    drawn(plan("soffit_strip", {**tight, "keeps": "thin_card"}))
    drawn(plan("soffit_strip", {**tight, "span": 30.0}))
