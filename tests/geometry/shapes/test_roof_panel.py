"""The shape roof_panel against closed forms."""

from collections.abc import Callable
from math import cos, radians

import pytest

from publisher.design import PartPlan
from publisher.geometry import Part, polygon

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]


def test_roof_slope_is_measured_on_its_underside(plan: Plan, drawn: Draw, treatment: Callable[..., object]) -> None:
    sizes = {"span": 130.0, "length": 140.0, "pitch": 45.0, "overhang": 0.0, "verge": 0.0}
    part = drawn(plan("roof_panel", sizes))
    assert polygon(part.outline).bounds == pytest.approx((0.0, 0.0, 140.0, 91.924), abs=5e-4)
    part = drawn(plan("roof_panel", sizes, (), (treatment("ridge", bevel=45.0),)))
    assert polygon(part.outline).bounds[3] == pytest.approx(
        91.924 + 5.0, abs=5e-4
    )  # the upper face, longer by t·tan 45°
    ridge = part.edge("ridge")
    assert ridge is not None and ridge.face == "inside" and ridge.bevel == 45.0
    assert ridge.nominal_start[1] == pytest.approx(91.924, abs=5e-4)
    assert ridge.start[1] == pytest.approx(96.924, abs=5e-4)
    shallow = drawn(plan("roof_panel", {**sizes, "pitch": 30.0, "overhang": 12.0, "verge": 8.0}))
    assert polygon(shallow.outline).bounds == pytest.approx((0.0, 0.0, 156.0, 65.0 / cos(radians(30.0)) + 12.0))
