"""The shape disc against closed forms."""

from collections.abc import Callable
from math import pi

import pytest

from publisher.design import PartPlan
from publisher.geometry import Part, area, path_length

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]


@pytest.mark.parametrize("radius", [1.0, 12.5, 92.0, 300.0, 2400.0])
def test_disc(plan: Plan, drawn: Draw, radius: float) -> None:
    part = drawn(plan("disc", {"radius": radius}))
    assert area(part.outline) == pytest.approx(pi * radius**2, rel=1e-12)
    assert path_length(part.outline) == pytest.approx(2.0 * pi * radius, rel=1e-12)
    (rim,) = part.edges
    assert (rim.name, rim.centre, rim.radius) == ("rim", (0.0, 0.0), radius)
