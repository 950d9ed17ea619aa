from types import SimpleNamespace

import pytest

from publisher.joints.panels.facts import facts_of
from publisher.joints.panels.place import place_panels


def test_outside_and_inside_sizes_of_a_box(make: SimpleNamespace) -> None:
    plan = make.panels(
        "box", {"front": "long", "right": "short", "back": "long", "left": "short"}, "front.bottom",
        make.join("front.right", "right.left"), make.join("right.right", "back.left"),
        make.join("back.right", "left.left"),
    )  # fmt: skip
    walls = {"long": make.wall("long", 120, 50, thickness=4.0), "short": make.wall("short", 80, 50, thickness=4.0)}
    found = {f.name: f.value for f in facts_of(place_panels(plan, walls))}
    assert found == pytest.approx(
        {
            "box.panels": 4,
            "box.width": 120,
            "box.depth": 80,
            "box.height": 50,
            "box.inside_width": 112,
            "box.inside_depth": 72,
        }
    )


def test_no_inside_without_walls_on_both_sides(make: SimpleNamespace) -> None:
    plan = make.panels("screen", {"front": "w"}, "front.bottom")
    names = {f.name for f in facts_of(place_panels(plan, {"w": make.wall("w", 60, 40)}))}
    assert names == {"screen.panels", "screen.width", "screen.depth", "screen.height"}
    assert facts_of(place_panels(plan, {})) == ()
