"""What is done to parts is promised from the steps."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any

from publisher.joints import does_key
from publisher.joints.promised_acts import SIGNS, done_by, needed_by


def test_each_act_names_its_parts_and_how_many_are_taken(demo: Callable[..., Any]) -> None:
    house = demo("toll-house")
    done = {one.key: one for one in house.joined.done}
    gable = next(part for part in house.parts if part.id == "gable")
    traced = done["step:1:does:trace:gable"]
    assert (traced.act, traced.letter, traced.count) == ("trace", "A", gable.count + gable.spare)
    assert traced.rings[0] == gable.outline.outer.points
    assert {one.act for one in done.values()} <= set(SIGNS)
    assert (done["step:2:does:press:gable"].right, done["step:2:does:press:gable"].wrong) == (1, 1)


def test_a_step_is_called_by_its_own_place(demo: Callable[..., Any]) -> None:
    design = demo("toll-house").design
    assert does_key(design, design.steps[2], "cut_outlines") == "step:3:does:cut_outlines"


def test_a_step_needs_its_parts_with_their_counts(demo: Callable[..., Any]) -> None:
    house = demo("toll-house")
    needed = {one.key: one.parts for one in needed_by(house.design, house.parts, house.joined)}
    assert needed["step:1:needs"] == (("A", 2), ("B", 2), ("C", 2))
    steps = tuple(replace(step, stage="paint") for step in house.design.steps)  # there only the words say how many
    painted = needed_by(replace(house.design, steps=steps), house.parts, house.joined)
    assert painted[0].parts == (("A", 0), ("B", 0), ("C", 0))


def test_a_step_without_parts_promises_nothing(demo: Callable[..., Any]) -> None:
    house = demo("toll-house")
    bare = replace(house.design, steps=tuple(replace(step, parts=()) for step in house.design.steps))
    assert done_by(bare, house.parts, house.joined) == ()
    needed = needed_by(bare, house.parts, house.joined)
    assert needed and all(one.uses and not one.parts for one in needed)  # what they use is needed all the same
