"""Hex tiles against the regular hexagon."""

from collections.abc import Callable
from math import sqrt

import pytest

from publisher.basics import Finding
from publisher.design import PartPlan
from publisher.geometry import Part, area

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]


@pytest.mark.parametrize("stands_on", ["corner", "side"])
def test_hexagon(stands_on: str, plan: Plan, drawn: Draw) -> None:
    """Across flats w: side w/√3, area √3/2·w² (regular-polygon tables)."""
    part = drawn(plan("hex_tile", {"across_flats": 60.4, "gap": 0.4, "stands_on": stands_on}))
    assert area(part.outline) == pytest.approx(sqrt(3.0) / 2.0 * 60.0**2)
    assert [edge.name for edge in part.edges] == [f"side{k}" for k in range(1, 7)]
    assert all(edge.nominal_length == pytest.approx(60.0 / sqrt(3.0)) for edge in part.edges)
    lowest = min(y for _, y in part.outline.outer.points)
    assert lowest == pytest.approx(-60.0 / sqrt(3.0) if stands_on == "corner" else -30.0)
