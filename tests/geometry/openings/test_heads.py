"""Heads of openings."""

from collections.abc import Callable
from math import pi

import pytest

from publisher.basics import Finding
from publisher.design import OpeningPlan, PartPlan
from publisher.geometry import Part, area

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]
Open = Callable[..., OpeningPlan]
WALL: dict[str, float | str] = {"width": 140.0, "height": 80.0}


def test_a_round_head_stands_inside_the_overall_height(plan: Plan, drawn: Draw, opening: Open) -> None:
    window = opening("w", "window", width=20.0, height=30.0, sill=25.0, head="round")
    part = drawn(plan("wall_panel", WALL, (window,)))
    assert area(part.outline) == pytest.approx(140.0 * 80.0 - (20.0 * 20.0 + pi * 100.0 / 2.0), rel=1e-12)
    head = next(run for run in part.outline.holes[0].runs if run.name == "w.head")
    assert head.centre == (70.0, 45.0) and head.radius == 10.0  # in the middle of the panel, if it does not say
    assert max(y for _, y in part.outline.holes[0].points) == pytest.approx(55.0)
