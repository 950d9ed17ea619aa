"""Lids with lips in rooms, and caps over boxes, by lengths that follow from the plan by hand."""

from dataclasses import replace
from types import SimpleNamespace

import pytest

from publisher.design import FitPlan, ThingPlan, WholePlan
from publisher.geometry import Part
from publisher.joints.assembled import Assembled
from publisher.joints.budget import meetings_of
from publisher.joints.checks.falls_over import falls_over
from publisher.joints.checks.room_fit import DOES_NOT_GO_IN
from publisher.joints.checks.tips_over import tips_over
from publisher.joints.put_together import assemble
from publisher.joints.wholes import LIFT_PLAY, lips_of

SPREAD = 0.2  # mm, of the board of these tests
ROOM = (100.0, 60.0)


def frame(make: SimpleNamespace, name: str, wide: float, deep: float, rim: float = 5.0) -> Part:
    """A layer with a room of these sizes and a rim of board round it, about the origin."""
    x, y = wide / 2, deep / 2
    hole = make.hole(((-x, -y), (-x, y), (x, y), (x, -y)), "room")
    part: Part = make.rectangle(name, -x - rim, -y - rim, x + rim, y + rim)
    return replace(part, outline=replace(part.outline, holes=(hole,)), template=replace(part.template, holes=(hole,)))


def block(make: SimpleNamespace, name: str, wide: float, deep: float) -> Part:
    part: Part = make.rectangle(name, -wide / 2, -deep / 2, wide / 2, deep / 2)
    return part


def lid(make: SimpleNamespace, lip: Part, box: Part, lid_wide: float = 112.0, lifts_off: bool = True) -> Assembled:
    """Six layers of a box, and a lid on it whose lowest layer is ``lip``."""
    cover = block(make, "cover", lid_wide, lid_wide - 40.0)
    stacks = (
        make.stack("box", (box.id, 6, 0.0, (0, 0))),
        make.stack("top", (lip.id, 1, 0.0, (0, 0)), ("cover", 1, 0.0, (0, 0))),
    )
    things = (
        ThingPlan("b", "box", (), (0, 0), 0.0, False, make.here),
        ThingPlan("t", "top", ("b",), (0, 0), 0.0, lifts_off, make.here),
    )
    design = replace(make.design(stacks=stacks), wholes=(WholePlan("all", things, make.here),))
    made = assemble(design, (lip, box, cover))[0]
    return replace(made, meetings=meetings_of(made))


@pytest.mark.parametrize(("wide", "deep", "play"), [(98.0, 59.5, 0.5), (99.0, 58.0, 1.0), (90.0, 40.0, 10.0)])
def test_the_play_is_the_lesser_of_both_ways(make: SimpleNamespace, wide: float, deep: float, play: float) -> None:
    made = lid(make, block(make, "lip", wide, deep), frame(make, "frame", *ROOM))
    (found,) = lips_of(made.things[0])
    assert found.play == pytest.approx(play)


@pytest.mark.parametrize(
    ("play", "said"),
    [(LIFT_PLAY + SPREAD, []), (LIFT_PLAY + SPREAD - 0.01, [0.99]), (0.0, [0.0]), (-0.4, [-0.4]), (-4.9, [-4.9]), (-5.1, [])],
)  # fmt: skip
def test_a_lip_needs_its_play_and_one_that_is_too_long_is_an_error(
    make: SimpleNamespace, play: float, said: list[float]
) -> None:
    """At the limit it goes in; less than a board too long it was to go in and stands on the rim; what is longer rests there."""
    made = lid(make, block(make, "lip", ROOM[0] - play, 50.0), frame(make, "frame", *ROOM))
    assert [one.value for one in DOES_NOT_GO_IN.run(made, DOES_NOT_GO_IN).findings] == [pytest.approx(v) for v in said]


def test_a_cap_over_a_box_needs_it_too(make: SimpleNamespace) -> None:
    made = lid(make, frame(make, "skirt", 110.5, 72.0), frame(make, "frame", *ROOM), lid_wide=122.0)
    (found,) = DOES_NOT_GO_IN.run(made, DOES_NOT_GO_IN).findings
    assert found.value == pytest.approx(0.5) and "play of t, which lifts off, in b" in found.message


def test_what_is_glued_or_stands_flush_or_has_a_fit_of_its_own_needs_none(make: SimpleNamespace) -> None:
    tight, box = block(make, "lip", ROOM[0], 50.0), frame(make, "frame", *ROOM)
    assert lips_of(lid(make, tight, box, lifts_off=False).things[0]) == ()
    flush = lid(make, block(make, "lip", ROOM[0] + 10.0, ROOM[1] + 10.0), box)  # a plate of the size of the box
    assert lips_of(flush.things[0]) == ()
    made = lid(make, tight, box)
    fit = FitPlan("lip", "frame.inside", None, "lip.width", 0.0, 0.25, None, make.here)
    said = meetings_of(replace(made, design=replace(made.design, fits=(fit,))))
    assert made.meetings and not any(meeting.name.startswith("lift.") for meeting in said)


def test_a_lid_that_only_ever_lies_on_a_box_need_not_stand_on_its_lip(make: SimpleNamespace) -> None:
    """On the table a figure at the edge of the cover tips it over its lip; it is never there."""
    made = lid(make, block(make, "lip", 40.0, 40.0), frame(make, "frame", *ROOM), lid_wide=110.0)
    alone = replace(made, design=replace(made.design, wholes=()), things=())
    assert [one.subject for one in tips_over.run(alone, tips_over).findings] == ["top"]
    assert tips_over.run(made, tips_over).findings == () == falls_over.run(made, falls_over).findings
