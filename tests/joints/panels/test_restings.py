from types import SimpleNamespace

import pytest

from publisher.joints.panels.place import place_panels
from publisher.joints.panels.restings import restings_of


def test_every_edge_that_is_rested_on_is_measured_where_both_stand(make: SimpleNamespace) -> None:
    plan = make.panels(
        "hut", {"f": "w", "r": "s", "k": "w", "lid": "top"}, "f.bottom",
        make.join("f.right", "r.left"), make.join("r.right", "k.left"),
        rests=(("lid", ("f.top", "k.top")),),
    )  # fmt: skip
    parts = {"w": make.wall("w", 60, 40), "s": make.wall("s", 30, 40), "top": make.wall("top", 50, 50)}
    front, back = restings_of(place_panels(plan, parts))
    assert (str(front.on), str(back.on)) == ("f.top", "k.top")
    assert (front.touch.length, front.touch.bare, front.touch.gap) == pytest.approx((60.0, 10.0, 0.0), abs=1.0)


def test_what_is_not_placed_is_not_measured(make: SimpleNamespace) -> None:
    plan = make.panels("hut", {"f": "w", "lid": "top"}, "f.bottom", rests=(("lid", ("gone.top",)),))
    assert restings_of(place_panels(plan, {"w": make.wall("w", 60, 40), "top": make.wall("top", 80, 50)})) == ()
