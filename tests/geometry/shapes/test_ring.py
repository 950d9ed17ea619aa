"""The shape ring against closed forms."""

from collections.abc import Callable
from math import pi

import pytest

from publisher.basics import Finding
from publisher.design import PartPlan
from publisher.geometry import Part, area

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]


def test_ring(plan: Plan, drawn: Draw) -> None:
    part = drawn(plan("ring", {"radius": 6.0, "hole_radius": 2.0}, trace_allowance=0.4))
    assert area(part.outline) == pytest.approx(pi * 32.0, rel=1e-12)
    assert area(part.template) == pytest.approx(pi * (5.6**2 - 2.4**2), rel=1e-12)
    assert [run.name for run in part.outline.holes[0].edges] == ["bore", "bore"]


def test_a_ring_without_wall(plan: Plan, refused: Refuse) -> None:
    (finding,) = refused(plan("ring", {"radius": 50.0, "hole_radius": 48.0}))
    assert finding.message == "a hole of radius 48 mm in a ring of radius 50 mm leaves 2 mm of wall"
    assert finding.limit == 47.0
