"""Piers against areas of triangles and circles."""

from collections.abc import Callable
from math import hypot, pi

import pytest

from publisher.basics import Finding
from publisher.design import PartPlan
from publisher.geometry import Part, area

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]


def test_pointed_cutwaters(plan: Plan, drawn: Draw) -> None:
    part = drawn(plan("pier", {"length": 60.0, "width": 30.0}))
    assert area(part.outline) == pytest.approx(60.0 * 30.0 + 30.0 * 15.0)  # two triangles, base 30, height 15
    nose = part.edge("right_lower")
    assert nose is not None and nose.nominal_length == pytest.approx(hypot(15.0, 15.0))
    assert area(drawn(plan("pier", {"length": 60.0, "width": 30.0, "nose": 24.0})).outline) == pytest.approx(
        1800.0 + 720.0
    )


def test_round_cutwaters_and_a_dowel(plan: Plan, drawn: Draw) -> None:
    part = drawn(plan("pier", {"length": 60.0, "width": 30.0, "cutwater": "round", "dowel_radius": 3.0}))
    assert area(part.outline) == pytest.approx(1800.0 + pi * 15.0**2 - pi * 9.0, rel=1e-12)


@pytest.mark.parametrize(
    ("bad", "says"),
    [
        ({"cutwater": "round", "nose": 10.0}, "stands out 15 mm"),
        ({"nose": 2.0}, "no cutwater"),
        ({"dowel_radius": 13.0}, "leaves 2 mm"),
        ({"dowel_radius": 0.1}, "cannot be cut"),
    ],
)
def test_piers_that_cannot_be(bad: dict[str, float | str], says: str, plan: Plan, refused: Refuse) -> None:
    assert says in refused(plan("pier", {"length": 60.0, "width": 30.0, **bad}))[0].message
