"""The work of a design, counted by hand: two walls with a slot each, glued once, and a pile of three layers."""

from dataclasses import replace
from types import SimpleNamespace

import pytest

from publisher.basics import Pose
from publisher.design import BracePlan, PanelPlan, ThingPlan, WholePlan
from publisher.joints.effort import effort_of
from publisher.joints.model import Labour, StackLayer
from publisher.joints.put_together import put_together

NOTHING = Labour(1, 1, 0, 0, 0, 0, 0, 0)


def test_copies_openings_and_joints_are_counted_over_all_copies_and_uses(make: SimpleNamespace) -> None:
    wall, disc = make.wall("wall", 120, 50), make.disc()
    wall = replace(wall, count=2, spare=1)
    join = make.join("front.right", "side.left")
    design = make.design(panels=(make.panels("box", {"front": "wall", "side": "wall"}, "front.bottom", join),))
    layers = tuple(StackLayer(disc.id, Pose(), 5.0 * n, 5.0, "pile", n + 1) for n in range(3))
    joined = replace(put_together(design, (wall,)), layers=(("pile", layers),))
    effort = effort_of(design, (wall, replace(disc, count=3)), joined)
    assert (effort.kinds, effort.pieces, effort.joints) == (2, 6, 1 + 2)
    assert effort.openings == 3 * len(wall.outline.holes) + 3 * len(disc.outline.holes)


def test_what_is_glued_in_an_assembly_counts_as_often_as_it_stands_and_things_on_what_carries_them(
    make: SimpleNamespace,
) -> None:
    """A lid on two walls are two joints, one that lifts off none; two such boxes carry a third: three times two, and two more."""
    part = make.wall("wall", 120, 50)
    boards = dict.fromkeys(("front", "back", "lid"), "wall")
    plan = make.panels("box", boards, "front.bottom", rests=(("lid", ("front.top", "front.left", "back.top")),))

    def joints(plan: PanelPlan, *things: ThingPlan) -> int:
        whole = (WholePlan("all", things, make.here),) if things else ()
        design = make.design(panels=(plan,))
        joined = put_together(design, (part,), drawn=False)
        return effort_of(replace(design, wholes=whole), (part,), joined).joints

    assert joints(plan) == 2
    assert joints(replace(plan, rests=(replace(plan.rests[0], loose=True),))) == 0
    on = [ThingPlan(name, "box", (), (0.0, 0.0), 0.0, False, make.here) for name in ("west", "east")]
    top = ThingPlan("top", "box", ("west", "east"), (0.0, 0.0), 0.0, False, make.here)
    assert joints(plan, *on, top) == 3 * 2 + 2
    assert joints(plan, *on, replace(top, lifts_off=True)) == 3 * 2


def test_a_split_part_is_glued_along_its_seams_in_every_copy_but_the_spare_ones(make: SimpleNamespace) -> None:
    wall = replace(make.wall("wall", 120, 50), count=2, spare=1)
    design = make.design()
    plan = SimpleNamespace(id="wall", count=2)
    joined = replace(put_together(design, (wall,), drawn=False), seamed=(("wall", 3),))
    assert effort_of(replace(design, parts=(plan,)), (wall,), joined).joints == 2 * 3


@pytest.mark.parametrize(("loose", "glued"), [(True, 2), (False, 3)])
def test_a_section_that_lifts_off_is_not_glued_and_a_brace_is_glued_twice(
    loose: bool, glued: int, make: SimpleNamespace
) -> None:
    """Two layers on two layers: each pair is glued, and one pair on the other unless it lifts off."""
    disc, knee = make.disc(), replace(make.wall("knee", 40, 25), count=3, spare=1)
    low = make.stack("s_low", (disc.id, 2, 0.0, (0, 0)))
    top = replace(make.stack("s_top", (disc.id, 2, 0.0, (0, 0)), on="s_low"), loose=loose)
    plain = make.design(stacks=(low, top))
    joined = put_together(plain, (disc,), drawn=False)
    assert effort_of(plain, (disc,), joined).joints == glued
    braced = replace(plain, stacks=(replace(low, brace=BracePlan(40.0, 25.0, (), False, make.here, "knee")), top))
    assert effort_of(braced, (disc, knee), joined).joints == glued + 3 * 2


@pytest.mark.parametrize(
    ("changes", "difficulty"),
    [
        ({"pieces": 40, "openings": 8}, "easy"),
        ({"pieces": 41}, "moderate"),
        ({"openings": 9}, "moderate"),
        ({"bevels": 1}, "moderate"),
        ({"bevels": 9}, "demanding"),
        ({"bends": 1}, "demanding"),
        ({"openings": 41}, "demanding"),
        ({"pieces": 101}, "demanding"),
    ],
)
def test_difficulty_follows_from_counts_alone(changes: dict[str, int], difficulty: str) -> None:
    assert replace(NOTHING, **changes).difficulty == difficulty


def test_hours_are_the_stated_rates() -> None:
    """80 + 3 kinds at 10 + 20 pieces at 3 + 16 openings at 3 + 14 joints at 5 minutes are 288: five hours, and seven with care."""
    assert Labour(3, 20, 16, 0, 0, 0, 0, 14).hours == (5, 7)
    assert NOTHING.hours == (2, 3)  # 93 minutes: never a range of nothing
