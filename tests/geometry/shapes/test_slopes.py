"""How roof slopes meet."""

from math import acos, cos, degrees, radians

import pytest

from publisher.geometry.shapes.slopes import bevel_between


def test_slopes_that_meet_at_a_ridge() -> None:
    assert bevel_between(35.0, 35.0, 180.0) == pytest.approx(35.0)


@pytest.mark.parametrize("sides", [3, 4, 8])
def test_upright_walls_meet_at_the_mitre_of_their_polygon(sides: int) -> None:
    assert bevel_between(90.0, 90.0, 360.0 / sides) == pytest.approx(180.0 / sides)


def test_one_plane_has_no_bevel() -> None:
    assert bevel_between(30.0, 30.0, 0.0) == pytest.approx(0.0, abs=1e-6)


def test_a_hip_over_a_square_corner() -> None:
    assert bevel_between(45.0, 45.0) == pytest.approx(30.0)
    assert bevel_between(20.0, 60.0) == pytest.approx(degrees(acos(cos(radians(20.0)) * cos(radians(60.0)))) / 2.0)
