"""Ramps against Pythagoras."""

from collections.abc import Callable
from math import hypot

import pytest

from publisher.basics import Finding
from publisher.design import PartPlan
from publisher.geometry import Part, area

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]


def test_the_deck_is_as_long_as_the_slope(plan: Plan, drawn: Draw) -> None:
    side = drawn(plan("ramp_side", {"run": 120.0, "rise": 50.0, "toe": 4.0}))
    deck = drawn(plan("ramp_deck", {"run": 120.0, "rise": 50.0, "width": 60.0, "battens": 5}))
    slope, long_edge = side.edge("slope"), deck.edge("bottom")
    assert slope is not None and long_edge is not None
    assert slope.nominal_length == pytest.approx(hypot(120.0, 50.0)) == pytest.approx(long_edge.nominal_length)
    assert long_edge.nominal_length == pytest.approx(130.0)  # 5-12-13
    assert area(side.outline) == pytest.approx(120.0 * 4.0 + 120.0 * 50.0 / 2.0)
    places = [mark.path.points[0][0] for mark in deck.marks]
    assert places == pytest.approx([130.0 * k / 6.0 for k in range(1, 6)])


def test_ramps_that_are_none(plan: Plan, refused: Refuse) -> None:
    assert "slope of" in refused(plan("ramp_side", {"run": 120.0, "rise": 1.0}))[0].message
    assert "slope of" in refused(plan("ramp_deck", {"run": 10.0, "rise": 100.0, "width": 50.0}))[0].message
