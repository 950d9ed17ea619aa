"""Ruins: the same seed, the same break, between two heights."""

from collections.abc import Callable

import pytest

from publisher.basics import Finding
from publisher.design import PartPlan
from publisher.geometry import Part, area
from publisher.geometry.shapes.ruin import SeededNumbers

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]


WALL: dict[str, float | str] = {"width": 140.0, "height": 90.0, "least_height": 30.0}


def test_park_and_millers_check() -> None:
    """CACM 31 (1988), with the factor of 1993: ten thousand steps from 1 end at 399268537."""
    numbers = SeededNumbers(0)
    numbers.state = 1
    for _ in range(10_000):
        numbers.next()
    assert numbers.state == 399268537


def test_the_break_stays_between_its_heights(plan: Plan, drawn: Draw) -> None:
    breaks = set()
    for seed in range(20):
        part = drawn(plan("ruin", {**WALL, "seed": seed}))
        heights = [y for _, y in part.outline.outer.points if y > 0.0]
        assert min(heights) >= 30.0 and max(heights) <= 90.0
        bottom = part.edge("bottom")
        assert bottom is not None and bottom.nominal_length == 140.0
        assert 140.0 * 30.0 <= area(part.outline) <= 140.0 * 90.0
        assert part == drawn(plan("ruin", {**WALL, "seed": seed}))
        breaks.add(part.outline)
    assert len(breaks) == 20


@pytest.mark.parametrize(
    ("bad", "says"),
    [
        ({"least_height": 89.0}, "nothing to break"),
        ({"stone_length": 80.0}, "too long"),
        ({"stone_height": 61.0}, "one stone"),
    ],
)
def test_ruins_that_cannot_be(bad: dict[str, float], says: str, plan: Plan, refused: Refuse) -> None:
    assert says in refused(plan("ruin", {**WALL, **bad}))[0].message
