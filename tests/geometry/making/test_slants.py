"""Edges cut to a slope: what is left of a panel, against plain geometry."""

from collections.abc import Callable
from dataclasses import replace
from math import radians, tan

import pytest

from publisher.basics import Finding
from publisher.design import EdgeTreatment, PartPlan
from publisher.geometry import Part, area, polygon

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]
Treat = Callable[..., EdgeTreatment]
SIDE: dict[str, float | str] = {"width": 24.0, "height": 45.0}


@pytest.mark.parametrize(("slant", "left", "right"), [(30.0, 0.0, 1.0), (-30.0, 1.0, 0.0)])
def test_a_slanted_bottom_edge_keeps_its_lower_end(
    plan: Plan, drawn: Draw, treatment: Treat, slant: float, left: float, right: float
) -> None:
    part = drawn(plan("rectangle", SIDE, (), (replace(treatment("bottom"), slant=slant),)))
    rise = 24.0 * tan(radians(30.0))
    assert area(part.outline) == pytest.approx(24.0 * 45.0 - 24.0 * rise / 2.0)
    assert polygon(part.outline).bounds == pytest.approx((0.0, 0.0, 24.0, 45.0))
    lengths = {name: edge.nominal_length for name in ("left", "right") if (edge := part.edge(name))}
    assert lengths == {"left": pytest.approx(45.0 - left * rise), "right": pytest.approx(45.0 - right * rise)}


@pytest.mark.parametrize(
    ("shape", "sizes", "edge", "slant"),
    [
        ("rectangle", SIDE, "bottom", 62.0),  # 24·tan 62° = 45.1: nothing is left of the right edge
        ("disc", {"radius": 20.0}, "rim", 10.0),
        ("gable_wall", {"span": 80.0, "eaves": 30.0, "pitch": 45.0}, "right_slope", 80.0),
    ],
)
def test_an_edge_that_cannot_be_cut_is_refused(
    plan: Plan, refused: Refuse, treatment: Treat, shape: str, sizes: dict[str, float | str], edge: str, slant: float
) -> None:
    found = refused(plan(shape, sizes, (), (replace(treatment(edge), slant=slant),)))
    assert found and found[0].check in ("geometry/edge-lost", "geometry/curved-edge", "geometry/unknown-edge")
