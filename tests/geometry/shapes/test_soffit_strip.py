"""The under side of an arch against bending of sheet."""

from collections.abc import Callable
from math import asin, pi, tan

import pytest

from publisher.basics import Finding
from publisher.design import PartPlan
from publisher.geometry import Part, area
from publisher.geometry.shapes.soffit_strip import groove

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


def test_grooves_close_over_the_bend(plan: Plan, drawn: Draw) -> None:
    """n V grooves of width w on the inner face take up the difference of the faces' lengths: n·w ≈ tθ (w = 2t·tan(q/2R))."""
    part = drawn(plan("soffit_strip", ARCH))
    scores = [mark for mark in part.marks if mark.name == "bend"]
    q = 89.0 * ANGLE / len(scores)
    assert q * q / (8.0 * 84.0) <= 0.3 + 1e-9 and q <= 84.0 / 3.0
    width = groove(84.0, q, 5.0)
    assert width == pytest.approx(2.0 * 5.0 * tan(q / (2.0 * 89.0)))
    assert len(scores) * width == pytest.approx(5.0 * ANGLE, rel=0.01)
    assert f"{width:.1f} mm" in scores[0].text


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
