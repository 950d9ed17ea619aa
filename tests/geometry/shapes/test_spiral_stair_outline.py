"""The plan of a layer: where its core and its step's end lie."""

from math import atan2, cos, degrees, dist, hypot, pi, radians, sin

import pytest

from publisher.basics import polar
from publisher.geometry.paths.rings import Pen
from publisher.geometry.shapes.spiral_stair_outline import SpiralLayer, draw_core


def layer(sides: int = 0, straight: bool = False) -> SpiralLayer:
    return SpiralLayer(30.0, sides, 90.0, straight, radians(60.0), radians(30.0), 4.0)


@pytest.mark.parametrize("sides", [3, 5, 8])
def test_a_many_sided_core(sides: int) -> None:
    plan = layer(sides)
    assert plan.perimeter() == pytest.approx(2.0 * sides * 30.0 * sin(pi / sides))
    for k in range(sides):
        corner, middle = 2.0 * pi * k / sides, 2.0 * pi * (k + 0.5) / sides
        assert hypot(*plan.core_at(corner + 1e-12)) == pytest.approx(30.0)
        assert hypot(*plan.core_at(middle)) == pytest.approx(plan.inner()) == pytest.approx(30.0 * cos(pi / sides))


def test_a_round_core_is_as_far_everywhere() -> None:
    plan = layer()
    assert plan.inner() == 30.0 and plan.perimeter() == pytest.approx(60.0 * pi)
    assert hypot(*plan.core_at(1.0)) == pytest.approx(30.0)


def test_a_straight_end_lies_on_the_chord() -> None:
    plan = layer(straight=True)
    first, last = polar(90.0, 0.0), polar(90.0, plan.step)
    for at in (0.0, 0.3, plan.step / 2.0, plan.step):
        point = polar(plan.end_radius(at), at)
        assert dist(first, point) + dist(point, last) == pytest.approx(90.0)  # a sixth of a circle: the chord is R
    assert plan.least_end() == pytest.approx(90.0 * cos(radians(30.0)))


@pytest.mark.parametrize("straight", [True, False])
def test_the_notch_leaves_its_tip_at_half_a_right_angle(straight: bool) -> None:
    plan = layer(straight=straight)
    tip, corner = polar(plan.end_radius(plan.turn) - 4.0, plan.turn), plan.notch_corner()
    along = degrees(atan2(corner[1] - tip[1], corner[0] - tip[0]))
    assert along == pytest.approx(30.0 - 45.0)
    at = atan2(corner[1], corner[0])
    assert hypot(*corner) == pytest.approx(plan.end_radius(at))


def test_sides_are_counted_from_the_back_edge() -> None:
    plan = layer(6)
    pen = draw_core(Pen(plan.core_at(plan.step)), plan, plan.step, 2.0 * pi, (30.0, 0.0))
    assert [edge.name for edge in pen.edges] == [f"core_{k}" for k in range(1, 6)]
    assert all(edge.length == pytest.approx(30.0) for edge in pen.edges)
