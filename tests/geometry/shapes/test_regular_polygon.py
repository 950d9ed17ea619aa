"""The shape regular_polygon against closed forms."""

from collections.abc import Callable
from math import cos, dist, hypot, pi, sin

import pytest

from publisher.basics import Finding
from publisher.design import PartPlan
from publisher.geometry import Part, area, path_length

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]


@pytest.mark.parametrize("sides", [3, 4, 5, 6, 8, 12, 100])
def test_regular_polygon(plan: Plan, drawn: Draw, sides: int) -> None:
    part = drawn(plan("regular_polygon", {"sides": sides, "radius": 40.0}))
    assert area(part.outline) == pytest.approx(sides / 2.0 * 40.0**2 * sin(2.0 * pi / sides), rel=1e-12)
    assert path_length(part.outline) == pytest.approx(sides * 80.0 * sin(pi / sides), rel=1e-12)
    points = part.outline.outer.points
    assert all(hypot(*p) == pytest.approx(40.0) for p in points)
    assert min(y for _, y in points) == pytest.approx(-40.0 * cos(pi / sides))
    bottom = part.edges[0]
    assert bottom.name == "side_1" and bottom.start[1] == pytest.approx(bottom.end[1]) and bottom.end[0] > 0.0
    assert len(part.edges) == sides and dist(bottom.start, bottom.end) == pytest.approx(80.0 * sin(pi / sides))


@pytest.mark.parametrize("sides", [2, 101, 7.5])
def test_a_polygon_of_no_such_sides(plan: Plan, refused: Refuse, sides: float) -> None:
    (finding,) = refused(plan("regular_polygon", {"sides": sides, "radius": 40.0}))
    assert finding.check == ("design/count-range" if sides % 1 == 0 else "geometry/size-out-of-range")
    assert finding.value == sides
