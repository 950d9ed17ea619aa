from dataclasses import replace
from math import cos, radians, sin
from random import Random
from types import SimpleNamespace

import numpy as np
import pytest

from publisher.joints.panels.place import PanelAssembly, place_panels
from publisher.joints.panels.settle import _let_down
from tests.searches.profile import seeds


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


def upright(found: PanelAssembly) -> bool:
    return [round(float(v), 9) for v in found.panels[0].frame.outward] == [0, -1, 0]


@pytest.mark.parametrize("deep", (10.0, 90.0))  # one holds by its weight; the other falls over, as is said of it there
@pytest.mark.parametrize("joint", ("butt", "mitre"))
def test_a_flap_on_a_wall_lays_nobody_down(make: SimpleNamespace, deep: float, joint: str) -> None:
    plan = make.panels("wall", {"a": "w", "r": "flap"}, "a.bottom", make.join("r.bottom", "a.top", joint))
    found = place_panels(plan, {"w": make.wall("w", 100, 60), "flap": make.wall("flap", 100, deep)})
    assert upright(found)


def test_a_slope_of_a_tent_that_is_too_short_to_stand_on_is_a_coping(make: SimpleNamespace) -> None:
    plan = make.panels("wall", {"a": "w", "r": "strip"}, "a.bottom", make.join("r.top", "a.top"))
    assert upright(place_panels(plan, {"w": make.wall("w", 100, 60), "strip": make.wall("strip", 100, 10)}))
    assert not upright(place_panels(plan, {"w": make.wall("w", 100, 60), "strip": make.wall("strip", 100, 90)}))


def test_a_folded_sign_stands_on_both_of_its_ends(make: SimpleNamespace) -> None:
    plan = make.panels("sign", {"a": "w", "b": "w"}, "a.bottom", make.join("a.top", "b.bottom", corner=40.0))
    found = place_panels(plan, {"w": make.wall("w", 40, 60)})
    assert float(found.panels[0].frame.outward[2]) == pytest.approx(sin(radians(20)))
    butted = replace(plan, joins=(make.join("a.top", "b.bottom", "butt", 40.0),))
    assert upright(place_panels(butted, {"w": make.wall("w", 40, 60)}))


@pytest.mark.search
@seeds(30, 3000)
def test_walls_stand_as_they_are_said_to(make: SimpleNamespace, seed: int) -> None:
    """One to three walls on their bottoms, in a line or round corners, perhaps with a strip along the top of the first."""
    dice = Random(seed)
    heights = [dice.uniform(20, 90) for _ in range(dice.randint(1, 3))]
    parts = {f"w{i}": make.wall(f"w{i}", dice.uniform(20, 150), height) for i, height in enumerate(heights)}
    joins = [
        replace(
            make.join(f"w{i}.right", f"w{i + 1}.left", corner=dice.choice((180.0, 180.0, dice.uniform(60, 300)))),
            flush=(f"w{i}", "bottom"),
        )
        for i in range(len(heights) - 1)
    ]
    if dice.random() < 0.6:
        parts["strip"] = make.wall("strip", 100, dice.uniform(6, 120))
        joins.append(make.join(f"strip.{dice.choice(('bottom', 'left'))}", "w0.top", dice.choice(("butt", "mitre"))))
    plan = make.panels("walls", {name: name for name in parts}, f"w{0}.bottom", *joins)
    assert upright(place_panels(plan, parts))


@pytest.mark.parametrize("sides", range(3, 25))
def test_a_ring_that_lies_level_stays_so_whatever_hair_its_corners_are_off(sides: int) -> None:
    """With a corner just in the middle between front and back, a hair of height over a hair of depth was taken for a slope."""
    dice = np.random.default_rng(sides)
    turns = 2.0 * np.pi * (np.arange(sides) + 0.5) / sides
    ring = 100.0 * np.column_stack([np.sin(turns), 1.0 - np.cos(turns), np.zeros(sides)])
    ring -= (0.0, ring[:, 1].min(), 0.0)
    for _ in range(40):
        points = ring + dice.uniform(-1e-13, 1e-13, ring.shape)
        assert abs(_let_down(points, 0.0, float(points[:, 1].max()))) < 1e-7
