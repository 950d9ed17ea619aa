"""What steps add, one after another."""

from collections.abc import Callable

import numpy as np

from publisher.joints.building.additions import built_by_steps
from publisher.joints.building.sites import sites_of
from tests.joints.building.conftest import BOX, BRACED

COURT = """
sizes: {board: 5 mm}
parts:
  front: {name: Front, board: foam, shape: wall_panel, with: {width: 120 mm, height: 60 mm}}
  back: {name: Back, board: foam, shape: wall_panel, with: {width: 120 mm, height: 60 mm}}
  end: {name: End, board: foam, shape: wall_panel, with: {width: 80 mm, height: 60 mm}}
  stub: {name: Short end, board: foam, shape: wall_panel, with: {width: 40 mm, height: 60 mm}}
assembly:
  court:
    panels: {front: front, back: back, end: end, stub: stub}
    stands_on: front.bottom
    joins:
      - {edges: [front.right, end.left], joint: butt, runs_through: front}
      - {edges: [end.right, back.left], joint: butt, runs_through: back}
      - {edges: [stub.right, front.left], joint: tab_and_slot, tabs_on: stub, tabs: 2, inset: 40 mm, play: 0.3 mm}
"""
"""A court between a front and a back, and a short end that has tabs in the front alone."""


def test_alike_parts_that_go_in_alike_are_one_act(assembled: Callable) -> None:
    building = built_by_steps(assembled(BOX, "box.front, box.left, box.right, box.back", "box.lid"))
    assert building.blocked == () and building.unheld == () and building.looked_at == 5
    first, ends, back, lid = building.additions
    assert (first.how, first.added, first.ways, first.way) == ("laid", ("front",), (), None)
    assert (ends.step, ends.number, ends.added, ends.before) == (1, 2, ("left", "right"), ("front",))
    assert (ends.part, ends.ways) == ("end", ((0.0, -1.0, 0.0),))
    assert (back.added, back.way) == (("back",), (0.0, -1.0, 0.0))
    assert (lid.step, lid.number, lid.way) == (2, 1, (0.0, 0.0, -1.0))


def test_an_end_after_both_sides_is_blocked(assembled: Callable) -> None:
    building = built_by_steps(assembled(BOX, "box.front, box.left, box.back, box.right, box.lid"))
    (blocked,) = building.blocked
    assert (blocked.names, blocked.by, blocked.there) == (("right",), ("front",), ("front", "left", "back"))
    assert next(a for a in building.additions if a.added == ("right",)).ways == ()


def test_what_is_joined_before_travels_as_one(assembled: Callable) -> None:
    building = built_by_steps(assembled(BOX, "box.front, box.left with box.right with box.back, box.lid"))
    assert building.blocked == () and building.unheld == ()
    both = building.additions[1]
    assert both.together and both.added == ("left", "right", "back") and both.way == (0.0, -1.0, 0.0)


def test_a_lid_on_nothing_is_found(assembled: Callable) -> None:
    building = built_by_steps(assembled(BOX, "box.left, box.lid, box.front, box.right, box.back"))
    assert [(lost.name, lost.lacks) for lost in building.unheld] == [("lid", ("front", "back"))]


def test_a_try_is_taken_apart_again(assembled: Callable) -> None:
    building = built_by_steps(
        assembled(BOX, "dry:box.front, box.left", "box.front, box.left, box.right, box.back, box.lid")
    )
    assert [(a.trial, a.before, a.added) for a in building.additions][:3] == [
        (True, (), ("front",)),
        (True, ("front",), ("left",)),
        (False, (), ("front",)),
    ]


def test_layers_go_on_one_another_and_a_thing_must_have_been_built(assembled: Callable) -> None:
    more = """
  pile: {stack: [{part: lid}, {part: lid, count: 2, turn: 15 deg}]}
  yard: {things: {step: {assembly: pile}, other: {assembly: pile, at: [300 mm, 0 mm]}, house: {assembly: box, on_top_of: [step]}}}
"""
    building = built_by_steps(assembled(BOX + more, "pile", "yard.step, yard.house, yard.other", "box"))
    first, layers, *_ = building.additions
    assert (first.times, first.added, first.how) == (2, ("layer_1",), "laid")
    assert (layers.added, layers.turn, layers.one_on_another) == (("layer_2", "layer_3"), 15.0, True)
    (unbuilt,) = building.unheld
    assert (unbuilt.unbuilt, unbuilt.name, unbuilt.lacks) == (True, "house", ("box",))


def test_what_goes_in_by_two_moves_is_pressed_home_last(assembled: Callable) -> None:
    """Between front and back the short end comes down, and then goes into its slots."""
    building = built_by_steps(assembled(COURT, "court.front, court.end, court.back, court.stub"))
    assert building.blocked == () and building.unheld == ()
    stub = building.additions[-1]
    assert (stub.added, stub.ways) == (("stub",), ((0.0, 0.0, -1.0), (0.0, -1.0, 0.0)))
    assert stub.way == (0.0, -1.0, 0.0)


WINDING = """
sizes: {board: 5 mm}
parts:
  plinth: {name: Plinth, board: foam, shape: disc, with: {radius: 60 mm}}
  step: {name: Step, board: foam, shape: spiral_stair_layer, with: {core_radius: 15 mm, reach: 60 mm, step_angle: 40 deg, turn: 20 deg}}
assembly:
  pile: {stack: [{part: plinth}, {part: step, count: 6, turn: 20 deg}]}
"""


def test_the_first_of_layers_that_wind_is_an_act_of_its_own(assembled: Callable) -> None:
    """Added all at once, a picture showed six steps on the plinth and not that each is turned."""
    building = built_by_steps(assembled(WINDING, "pile"))
    plinth, first, others = building.additions
    assert (plinth.added, first.added) == (("layer_1",), ("layer_2",))
    assert (len(others.added), others.turn) == (5, 20.0)


def test_braces_go_in_at_once_each_towards_the_core(assembled: Callable) -> None:
    """The second went in aslant, by an axis of the first: two acts of one part, with two ways."""
    subject = assembled(BRACED, "stair")
    *_, braces = built_by_steps(subject).additions
    assert braces.added == ("brace_7", "brace_8", "brace_12") and len(braces.before) == 13
    frame = sites_of(subject)["stair"].movers["brace_7"].panels[0].frame
    assert np.allclose(frame.axes.T @ np.array(braces.way), (-1, 0, 0), atol=1e-6), (
        "its upright side is its own left one"
    )
