"""Posts in openings, by hand: where they stand, and how their openings are measured."""

from dataclasses import replace
from math import hypot
from types import SimpleNamespace
from typing import Any

import pytest

from publisher.design import FaceSeat
from publisher.geometry import Opening
from publisher.joints.assembled import Assembled
from publisher.joints.panels.posts import PostFound

Corners = tuple[tuple[float, float], ...]


def box(x: float, y: float, wide: float, high: float) -> Corners:
    a, b = wide / 2, high / 2
    return ((x - a, y - b), (x - a, y + b), (x + a, y + b), (x + a, y - b))


def posted(make: SimpleNamespace, ring: Corners, *joins: Any, **said: Any) -> Assembled:
    """A wall of 100 × 60 with an opening, and a post 20 wide and 40 high in it."""
    wall = make.polygon(
        "wall", [(0, 0), (100, 0), (100, 60), (0, 60)], ("bottom", "right", "top", "left"), holes=(ring,)
    )
    (hole,) = wall.outline.holes
    wall = replace(wall, openings=(Opening("socket", "window", hole, 20.0, 5.0, 10.0, 50.0),))
    seat = FaceSeat("post", "front", "outside", "bottom", None, 0.0, None, make.here, "socket")
    plan = make.panels("hut", {"front": "wall", "post": "post"}, "front.bottom", *joins)
    plan = replace(plan, seats=(replace(seat, **said),))
    return make.assembled(make.design(panels=(plan,)), wall, make.wall("post", 20, 40))


def found(subject: Assembled) -> PostFound:
    (post,) = subject.panels[0].posts
    return post


@pytest.mark.parametrize("face", ["outside", "inside"])
def test_a_post_ends_level_with_the_other_face_in_the_middle_of_its_opening(make: SimpleNamespace, face: str) -> None:
    """The wall stands with its outside on y = 0 and its inside on y = 5; the post sticks out of one of them by 35 mm."""
    subject = posted(make, box(30, 40, 20.4, 5.4), face=face)
    post = subject.panels[0].assembly.panel("post")
    assert post is not None
    corner = post.frame.origin  # of its foot
    foot = 5.0 if face == "outside" else 0.0
    assert corner[1] == pytest.approx(foot)
    assert abs(corner[0] - 30.0) == pytest.approx(10.0)
    one = found(subject)
    assert (one.round, one.across, one.along, one.wide) == (False, 5.4, 20.4, 20.0)
    assert (one.askew, one.off) == (pytest.approx(0.0, abs=1e-6), pytest.approx(0.0, abs=1e-9))


def test_a_turned_post_changes_the_sides_and_a_slanting_one_is_askew(make: SimpleNamespace) -> None:
    across = found(posted(make, box(30, 30, 5.4, 20.4), turn=90.0))
    assert (across.across, across.along) == (pytest.approx(5.4), pytest.approx(20.4))
    assert found(posted(make, box(30, 30, 20.4, 5.4), turn=12.0)).askew == pytest.approx(12.0)


def test_an_opening_that_is_not_there_or_has_another_form(make: SimpleNamespace) -> None:
    assert posted(make, box(30, 30, 20.4, 5.4), opening="sockel").panels[0].posts == ()
    pointed = ((20.0, 20.0), (20.0, 30.0), (30.0, 40.0), (40.0, 30.0), (40.0, 20.0))
    assert found(posted(make, pointed)).round is None


def test_a_post_that_joins_hold_elsewhere_is_off(make: SimpleNamespace) -> None:
    subject = posted(make, box(30, 30, 20.4, 5.4), make.join("front.right", "post.left"))
    assert found(subject).off > 10.0


def test_a_round_opening_has_a_diameter(make: SimpleNamespace) -> None:
    wide = hypot(20.0, 5.0) + 0.4
    ring = make.ring(("socket", make.arc((30.0, 30.0), wide / 2, 0, 360)[::-1], (30.0, 30.0), wide / 2))
    subject = posted(make, box(30, 30, 1, 1))
    wall = next(part for part in subject.parts if part.id == "wall")
    wall = replace(wall, outline=replace(wall.outline, holes=(ring,)), openings=())
    plan = subject.design.panels[0]
    again = make.assembled(make.design(panels=(plan,)), wall, make.wall("post", 20, 40))
    one = found(again)
    assert (one.round, one.across, one.askew) == (True, pytest.approx(wide), 0.0)
