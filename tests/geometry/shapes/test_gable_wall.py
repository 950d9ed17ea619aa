"""The shape gable_wall against closed forms."""

from collections.abc import Callable
from math import cos, radians, tan

import pytest

from publisher.basics import Finding
from publisher.design import PartPlan
from publisher.geometry import Part, area, polygon

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]
GABLE: dict[str, float | str] = {"span": 110.0, "past": 10.0, "eaves": 80.0, "pitch": 45.0}


def test_gable(plan: Plan, drawn: Draw) -> None:
    part = drawn(plan("gable_wall", GABLE))
    # width 130, ends 80 − 10·tan 45° = 70 high, ridge 80 + 55 = 135 high: a box and a triangle
    assert area(part.outline) == pytest.approx(130.0 * 70.0 + 130.0 * 65.0 / 2.0, rel=1e-12)
    assert polygon(part.outline).bounds == pytest.approx((0.0, 0.0, 130.0, 135.0))
    right, slope = part.edge("right"), part.edge("right_slope")
    assert right is not None and right.end == pytest.approx((130.0, 70.0))
    assert slope is not None and slope.nominal_length == pytest.approx(65.0 / cos(radians(45.0)))
    at_long_wall = slope.start[1] + (130.0 - 120.0) * tan(radians(45.0))
    assert at_long_wall == pytest.approx(80.0)  # the eaves, at the long wall's outside face


def test_a_gable_whose_slopes_reach_the_ground(plan: Plan, refused: Refuse, drawn: Draw) -> None:
    (finding,) = refused(plan("gable_wall", {**GABLE, "past": 80.0}))
    assert "drops 80 mm over the 80 mm" in finding.message and finding.limit == pytest.approx(79.0)
    drawn(plan("gable_wall", {**GABLE, "past": 79.0}))


def test_the_ridge_gives_the_pitch(plan: Plan, drawn: Draw, refused: Refuse) -> None:
    by_ridge = {name: value for name, value in GABLE.items() if name != "pitch"}
    part = drawn(plan("gable_wall", {**by_ridge, "ridge": 135.0}))
    assert area(part.outline) == pytest.approx(area(drawn(plan("gable_wall", GABLE)).outline), rel=1e-12)
    assert polygon(part.outline).bounds == pytest.approx((0.0, 0.0, 130.0, 135.0))
    (finding,) = refused(plan("gable_wall", by_ridge))
    assert finding.message == "neither pitch nor ridge is given"
    (finding,) = refused(plan("gable_wall", {**GABLE, "ridge": 135.0}))
    assert "are both given" in finding.message
    (finding,) = refused(plan("gable_wall", {**by_ridge, "ridge": 80.5}))
    assert "gives slopes of 0.52°" in finding.message and finding.limit == pytest.approx(
        80.0 + 55.0 * tan(radians(1.0))
    )
    (finding,) = refused(plan("gable_wall", {**by_ridge, "ridge": 900.0}))
    assert finding.limit == pytest.approx(80.0 + 55.0 * tan(radians(85.0)))
