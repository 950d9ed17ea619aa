from math import cos, radians, sin
from types import SimpleNamespace

import pytest

from publisher.joints.panels.place import place_panels


def tent(make: SimpleNamespace, corner: float) -> object:
    """Two slopes that meet at a ridge and stand on their eaves."""
    return make.panels("tent", {"a": "slope", "b": "slope"}, "a.bottom", make.join("a.top", "b.top", corner=corner))


@pytest.mark.parametrize("corner", (60.0, 90.0, 140.0))
def test_a_tent_stands_on_both_of_its_eaves(make: SimpleNamespace, corner: float) -> None:
    found = place_panels(tent(make, corner), {"slope": make.wall("slope", 80, 50)})
    half = radians(corner / 2)
    dip = 5.0 * sin(half)  # the eaves are cut square: the tent stands on their inner sides
    for panel in found.panels:
        for x in (0, 80):
            assert float(panel.frame.point((x, 0), 0)[2]) == pytest.approx(dip)
            assert float(panel.frame.point((x, 0), 5.0)[2]) == pytest.approx(0, abs=1e-9)
        # the drawn faces meet at the ridge, 50 mm up the slope
        ridge = panel.frame.point((40, 50), 0)
        assert (float(ridge[1]), float(ridge[2])) == pytest.approx((50 * sin(half), dip + 50 * cos(half)))


def test_a_tent_of_unlike_slopes_stands_on_both_sides(make: SimpleNamespace) -> None:
    plan = make.panels("tent", {"a": "low", "b": "high"}, "a.bottom", make.join("a.top", "b.top", corner=80.0))
    found = place_panels(plan, {"low": make.wall("low", 80, 40), "high": make.wall("high", 80, 70)})
    for panel in found.panels:
        lowest = min(float(panel.frame.point((40, 0), depth)[2]) for depth in (0.0, 5.0))
        assert lowest == pytest.approx(0, abs=1e-6)


def test_what_stands_already_is_not_turned(make: SimpleNamespace) -> None:
    plan = make.panels("corner", {"a": "w", "b": "w"}, "a.bottom", make.join("a.right", "b.left", corner=70.0))
    found = place_panels(plan, {"w": make.wall("w", 60, 40)})
    assert [round(float(v), 9) for v in found.panels[0].frame.outward] == [0, -1, 0]


def test_a_wall_alone_stands_upright(make: SimpleNamespace) -> None:
    found = place_panels(make.panels("screen", {"a": "w"}, "a.bottom"), {"w": make.wall("w", 60, 40)})
    assert [round(float(v), 9) for v in found.panels[0].frame.outward] == [0, -1, 0]
