"""What a step glues edge to edge, and how far what it lays on reaches over walls, follows from where boards stand."""

from collections.abc import Callable

import pytest

from publisher.joints.building import (
    built_by_steps,
    ends_in_steps,
    levels_in_steps,
    lines_in_steps,
    past_ends_in_steps,
    reaches_in_steps,
)
from publisher.joints.model import EndsAt, InLine, LevelAt
from tests.joints.building.conftest import BOX

STALL = """
sizes: {board: 5 mm}
parts:
  back: {name: Back, board: foam, shape: wall_panel, with: {width: 120 mm, height: 60 mm}}
  left: {name: Left, board: foam, shape: wall_panel, with: {width: 80 mm, height: 60 mm}}
  right: {name: Right, board: foam, shape: wall_panel, with: {width: 80 mm, height: 60 mm}}
  wing: {name: Wing, board: foam, shape: wall_panel, with: {width: 70 mm, height: 60 mm}}
  lid: {name: Lid, board: foam, shape: rectangle, with: {width: WIDE, height: DEEP}}
assembly:
  stall:
    panels: {back: back, left: left, right: right, wing: wing, lid: lid}
    stands_on: back.bottom
    joins:
      - {edges: [right.right, back.left], joint: butt, runs_through: back}
      - {edges: [back.right, left.left], joint: butt, runs_through: back}
      - {edges: [right.left, wing.right], joint: mitre, corner: 180 deg}
      - {place: lid, rests_on: [back.top, left.top, right.top]}
"""


def stall(wide: str, deep: str) -> str:
    """Return a stall of three walls with a lid of this size, 120 × 80 mm over its outsides."""
    return STALL.replace("WIDE", wide).replace("DEEP", deep)


def test_which_board_ends_is_said_in_the_step_that_glues_both(assembled: Callable) -> None:
    subject = assembled(stall("130 mm", "90 mm"), "stall.back, stall.left", "stall.right, stall.wing, stall.lid")
    additions = built_by_steps(subject).additions
    assert ends_in_steps(subject, additions) == (EndsAt(1, "left", "back"), EndsAt(2, "right", "back"))
    (line,) = lines_in_steps(subject, additions)
    assert (line.step, line.part, line.other) == (InLine(2, "right", "wing").step, "right", "wing")


def test_tabs_and_slots_say_enough_and_a_try_says_nothing(assembled: Callable) -> None:
    every = "box.front, box.left, box.right, box.back, box.lid"
    subject = assembled(BOX, f"dry:{every}", every)
    assert ends_in_steps(subject, built_by_steps(subject).additions) == (EndsAt(2, "side", "lid"),)


@pytest.mark.parametrize(
    ("wide", "deep", "aside", "behind"), [("130 mm", "90 mm", 5.0, 5.0), ("114 mm", "80 mm", -3.0, 0.0)]
)
def test_a_lid_reaches_as_far_over_the_outsides_as_it_is_larger(
    wide: str, deep: str, aside: float, behind: float, assembled: Callable
) -> None:
    """The lid lies with its middle over that of 120 mm between the outsides, and of 80 mm from the back to the ends of both ends."""
    subject = assembled(stall(wide, deep), "stall.back, stall.left, stall.right, stall.wing, stall.lid")
    found = {one.wall: one.far for one in reaches_in_steps(subject, built_by_steps(subject).additions)}
    assert found["back"] == pytest.approx(behind)
    assert (found["left"], found["right"]) == (pytest.approx(aside), pytest.approx(aside))


def test_of_two_alike_that_end_at_each_other_the_letters_say_where(assembled: Callable) -> None:
    """A pinwheel of walls: each runs through at one end and ends at the other."""
    text = """
sizes: {board: 5 mm}
parts:
  long: {name: Long, board: foam, shape: wall_panel, with: {width: 120 mm, height: 60 mm}}
  short: {name: Short, board: foam, shape: wall_panel, with: {width: 90 mm, height: 60 mm}}
assembly:
  ring:
    panels: {front: long, right: short, back: long, left: short}
    stands_on: front.bottom
    joins:
      - {edges: [front.right, right.left], joint: butt, runs_through: front}
      - {edges: [right.right, back.left], joint: butt, runs_through: right}
      - {edges: [back.right, left.left], joint: butt, runs_through: back}
      - {edges: [left.right, front.left], joint: butt, runs_through: left}
"""
    subject = assembled(text, "ring.front, ring.right, ring.back, ring.left")
    found = ends_in_steps(subject, built_by_steps(subject).additions)
    assert {(one.part, one.at) for one in found} == {("long", "short"), ("short", "long")}
    first, second = (one.marks for one in found)
    assert first and second and not {*first} & {*second}


SHED = """
sizes: {board: 5 mm}
parts:
  front: {name: Front, board: foam, shape: wall_panel, with: {width: 120 mm, height: 40 mm}}
  back: {name: Back, board: foam, shape: wall_panel, with: {width: 120 mm, height: 90 mm}}
  side: {name: Side, board: foam, shape: wall_panel, with: {width: 70 mm, height: 35 mm}}
  roof: {name: Roof, board: foam, shape: rectangle, with: {width: 130 mm, height: 110 mm}}
assembly:
  shed:
    panels: {front: front, back: back, near: side, far: side, roof: roof}
    stands_on: front.bottom
    joins:
      - {edges: [front.right, near.left], joint: butt, runs_through: front, flush: END}
      - {edges: [back.left, near.right], joint: butt, runs_through: back, flush: bottom}
      - {edges: [back.right, far.left], joint: butt, runs_through: back, flush: bottom}
      - {edges: [front.left, far.right], joint: butt, runs_through: front, flush: END}
      - {place: roof, rests_on: [front.top, back.top]}
"""
"""A shed whose roof leans on the square edges of a low wall and a high one, its sides lower than both."""


def test_a_roof_that_leans_on_square_edges_reaches_as_far_as_its_rim_is_past_the_outside(assembled: Callable) -> None:
    """Its underside goes from the outer rim of the low wall to the inner one of the high wall: 50 mm up over 65 mm. The rim under its upper
    edge lies in the plane of the high wall's outside, and 130 mm of roof lie over 120 mm of walls."""
    subject = assembled(SHED.replace("END", "bottom"), "shed.front, shed.near, shed.far, shed.back, shed.roof")
    additions = built_by_steps(subject).additions
    reaches = {one.wall: one.far for one in reaches_in_steps(subject, additions)}
    assert reaches["back"] == pytest.approx(0.0, abs=1e-6)
    assert reaches["front"] == pytest.approx(110.0 - (50.0**2 + 65.0**2) ** 0.5 * 70.0 / 65.0, abs=1e-6)
    ends = {(one.wall, one.far) for one in past_ends_in_steps(subject, additions)}
    assert ends == {("front", 5.0), ("back", 5.0)}


def test_which_ends_of_unequal_edges_are_level_is_said_once_for_all(assembled: Callable) -> None:
    every = "shed.front, shed.near, shed.far, shed.back, shed.roof"
    subject = assembled(SHED.replace("END", "bottom"), every)
    assert levels_in_steps(subject, built_by_steps(subject).additions) == (
        LevelAt(1, ("back", "front", "side"), "foot"),
    )
    shelf = """
sizes: {board: 5 mm}
parts:
  back: {name: Back, board: foam, shape: wall_panel, with: {width: 120 mm, height: 60 mm}}
  one: {name: One, board: foam, shape: wall_panel, with: {width: 40 mm, height: 30 mm}}
  other: {name: Other, board: foam, shape: wall_panel, with: {width: 40 mm, height: 30 mm}}
assembly:
  shelf:
    panels: {back: back, left: one, right: other}
    stands_on: back.bottom
    joins:
      - {edges: [right.right, back.left], joint: butt, runs_through: back, flush: top}
      - {edges: [back.right, left.left], joint: butt, runs_through: back, flush: top}
"""
    hung = assembled(shelf, "shelf.back, shelf.left, shelf.right")
    assert levels_in_steps(hung, built_by_steps(hung).additions) == (LevelAt(1, ("back", "one", "other"), "top"),)


def test_edges_as_long_as_each_other_are_level_and_need_no_words(assembled: Callable) -> None:
    subject = assembled(stall("130 mm", "90 mm"), "stall.back, stall.left, stall.right, stall.wing, stall.lid")
    additions = built_by_steps(subject).additions
    assert levels_in_steps(subject, additions) == ()
    assert past_ends_in_steps(subject, additions) == ()
