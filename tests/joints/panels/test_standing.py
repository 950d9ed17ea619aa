from types import SimpleNamespace

import pytest

from publisher.joints.panels.place import boards_of, place_panels
from publisher.joints.panels.solids import foot_of, weight_of


def test_foot_and_weight_of_a_corner(make: SimpleNamespace) -> None:
    """Two walls of 60 mm, 5 mm thick, that meet at a corner: the hull of their feet is the corner's, cut off askew."""
    plan = make.panels("corner", {"a": "w", "b": "w"}, "a.bottom", make.join("a.right", "b.left"))
    found = place_panels(plan, {"w": make.wall("w", 60, 40)})
    assert foot_of(boards_of(found.boards)).bounds == pytest.approx((0, 0, 60, 60))
    # middles of the boards at (30, 2.5) and (57.5, 30)
    assert weight_of(boards_of(found.boards), lambda part: 1.0) == pytest.approx((43.75, 16.25))
