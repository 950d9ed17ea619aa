"""Which way round a layer lies, and a post in a round hole stands, is said in the step that puts it there, where a mark tells it."""

from collections.abc import Callable

import pytest

from publisher.joints.building import built_by_steps, laid_in_steps, put_into_in_steps
from publisher.joints.model import LaidSo, PutInto

PILE = """
sizes: {board: 5 mm}
parts:
  low: {name: Low, board: foam, shape: rectangle, with: {width: 100 mm, height: 60 mm}}
  middle: {name: Middle, board: foam, shape: rectangle, with: {width: 80 mm, height: 60 mm}}
  high: {name: High, board: foam, shape: rectangle, with: {width: 60 mm, height: 60 mm}}
assembly:
  pile: {stack: [{part: low}, {part: middle, shift: [20 mm, 0 mm]}, {part: high, shift: [20 mm, 0 mm]}]}
"""

DECK = """
sizes: {board: 5 mm}
parts:
  wall: {name: Wall, board: foam, shape: wall_panel, with: {width: 120 mm, height: 40 mm}}
  deck:
    name: Deck
    board: foam
    shape: wall_panel
    with: {width: 120 mm, height: 80 mm}
    openings: {hole: {kind: round_hole, diameter: 21 mm, centre: 60 mm, up: 40 mm}}
  post: {name: Post, board: foam, shape: rectangle, with: {width: 20 mm, height: 50 mm}}
assembly:
  jetty:
    panels: {front: wall, back: wall, deck: deck, post: post}
    stands_on: front.bottom
    joins:
      - {edges: [deck.bottom, front.top], joint: butt, runs_through: deck}
      - {edges: [deck.top, back.top], joint: butt, runs_through: deck}
      - {place: post, stands_on: deck, edge: bottom, opening: hole, turn: 30 deg}
"""


def test_a_layer_is_turned_in_the_step_that_lays_it(assembled: Callable) -> None:
    subject = assembled(PILE, "dry:pile 1 to 3", "pile 1 to 2", "pile 3")
    assert laid_in_steps(subject, built_by_steps(subject).additions) == (LaidSo(2, "middle", "low", "a"),)


@pytest.mark.parametrize("shift", ["0 mm", "20 mm"])
def test_a_post_is_turned_in_the_step_that_puts_it_into_its_hole(shift: str, assembled: Callable) -> None:
    moved = DECK.replace("centre: 60 mm", f"centre: 60 mm - {shift}")
    subject = assembled(moved, "jetty.front, jetty.back, jetty.deck", "jetty.post")
    assert put_into_in_steps(subject, built_by_steps(subject).additions) == (PutInto(2, "post", "deck", lined=True),)
    assert laid_in_steps(subject, built_by_steps(subject).additions) == ()


def test_a_post_in_an_opening_of_its_own_shape_is_pushed_in_and_one_on_a_face_is_not(assembled: Callable) -> None:
    square = DECK.replace(
        "{kind: round_hole, diameter: 21 mm, centre: 60 mm, up: 40 mm}",
        "{kind: window, width: 20.2 mm, height: 5.2 mm, centre: 60 mm, sill: 37.4 mm}",
    )
    subject = assembled(
        square.replace("turn: 30 deg", "turn: 0 deg"), "jetty.front, jetty.back, jetty.deck", "jetty.post"
    )
    assert put_into_in_steps(subject, built_by_steps(subject).additions) == (PutInto(2, "post", "deck"),)
    standing = assembled(
        square.replace("opening: hole, turn: 30 deg", "at: [60 mm, 40 mm]"),
        "jetty.front, jetty.back, jetty.deck",
        "jetty.post",
    )
    assert put_into_in_steps(standing, built_by_steps(standing).additions) == ()
