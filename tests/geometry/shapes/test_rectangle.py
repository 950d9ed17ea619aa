"""The shape rectangle against closed forms."""

from collections.abc import Callable
from math import pi

import pytest

from publisher.basics import Finding
from publisher.design import PartPlan
from publisher.geometry import Part, area, path_length

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]


def test_rectangle(plan: Plan, drawn: Draw) -> None:
    square = drawn(plan("rectangle", {"width": 480.0, "height": 80.0}))
    assert area(square.outline) == 480.0 * 80.0 and len(square.outline.outer.points) == 4
    rounded = drawn(plan("rectangle", {"width": 60.0, "height": 40.0, "corner_radius": 8.0}, trace_allowance=0.4))
    assert area(rounded.outline) == pytest.approx(2400.0 - (4.0 - pi) * 64.0, rel=1e-12)
    assert path_length(rounded.outline) == pytest.approx(200.0 - (8.0 - 2.0 * pi) * 8.0, rel=1e-12)
    assert area(rounded.template) == pytest.approx(59.2 * 39.2 - (4.0 - pi) * 7.6**2, rel=1e-12)
    bottom = rounded.edge("bottom")
    assert bottom is not None and (bottom.start, bottom.end) == ((8.0, 0.0), (52.0, 0.0))


def test_corners_rounder_than_the_sides(plan: Plan, refused: Refuse) -> None:
    (finding,) = refused(plan("rectangle", {"width": 60.0, "height": 40.0, "corner_radius": 20.0}))
    assert "leave no straight side" in finding.message and finding.limit == 20.0
