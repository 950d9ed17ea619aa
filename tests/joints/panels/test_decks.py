"""What carries a level panel: what stands under it, and what its edges are glued to, if that stands without it."""

from dataclasses import replace
from math import hypot
from types import SimpleNamespace

import pytest

from publisher.design import FaceSeat, Figure, Join
from publisher.geometry import Opening
from publisher.joints.assembled import Assembled
from publisher.joints.panels import Deck

NAMES = ("front", "right", "back", "left")


def box(make: SimpleNamespace, *more: Join, joint: str = "mitre", deep: float = 100.0, **places: str) -> Assembled:
    """Four walls in a ring, 200 × 100, a deck joined to the front one's top, and what else there is."""
    ring = [make.join(f"{a}.right", f"{b}.left") for a, b in zip(NAMES, (*NAMES[1:], NAMES[0]), strict=True)]
    walls = {"front": "long", "right": "short", "back": "long", "left": "short", "deck": "deck"}
    plan = make.panels(
        "box", walls | places, "front.bottom", *ring, make.join("front.top", "deck.bottom", joint), *more
    )
    parts = (
        make.wall("long", 200, 60),
        make.wall("short", 100, 60),
        make.wall("deck", 200, deep),
        make.wall("rib", 200, 20),
    )
    made: Assembled = make.assembled(make.design(panels=(plan,)), *parts)
    return made


def deck_of(subject: Assembled) -> Deck:
    (deck,) = subject.panels[0].decks
    return deck


def test_walls_all_round_carry_it_over_the_shorter_span(make: SimpleNamespace) -> None:
    deck = deck_of(box(make))
    assert deck.panel.name == "deck"
    assert deck.weakest.way == "span"
    assert deck.weakest.length == pytest.approx(90.0, abs=0.3)


def test_what_reaches_beyond_the_walls_overhangs(make: SimpleNamespace) -> None:
    beyond = [one for one in deck_of(box(make, deep=130.0)).bendings if one.way == "beyond"]
    assert [one.length for one in beyond] == [pytest.approx(30.0, abs=0.3)]


def test_a_rib_that_hangs_under_the_deck_carries_nothing(make: SimpleNamespace) -> None:
    """It would halve the span, and stands on nothing but the deck itself."""
    hung = make.join("deck.bottom", "rib.top", "butt", inset=50.0)
    assert deck_of(box(make, hung, rib="rib")).weakest.length == pytest.approx(90.0, abs=0.3)


def test_an_edge_that_is_glued_to_a_wall_is_held(make: SimpleNamespace) -> None:
    """Two walls 100 mm apart and a floor between them, 30 mm up, joined to both by its edges alone."""
    plan = make.panels(
        "stall", {"front": "wall", "right": "side", "back": "wall", "floor": "floor"}, "front.bottom",
        make.join("front.right", "right.left"), make.join("right.right", "back.left"),
        make.join("front.bottom", "floor.bottom", "butt", inset=30.0),
    )  # fmt: skip
    parts = make.wall("wall", 150, 60), make.wall("side", 100, 60), make.wall("floor", 150, 95)
    (deck,) = make.assembled(make.design(panels=(plan,)), *parts).panels[0].decks
    assert deck.bendings  # the wall that its edge is glued to holds it: nothing lies under it


def test_what_lies_on_the_table_is_no_deck(make: SimpleNamespace) -> None:
    plan = make.panels(
        "tray", {"front": "wall", "floor": "floor"}, "front.bottom", make.join("front.bottom", "floor.bottom")
    )
    subject = make.assembled(make.design(panels=(plan,)), make.wall("wall", 100, 20), make.wall("floor", 100, 80))
    assert subject.panels[0].decks == ()


def test_nobody_stands_on_a_strip_that_is_narrower_than_half_a_base(make: SimpleNamespace) -> None:
    subject = box(make)
    wide = replace(subject.design, figure=Figure(250.0, 30.0, assumed=False))
    assert make.assembled(wide, *subject.parts).panels[0].decks == ()


def in_sockets(make: SimpleNamespace, play: float, face: str = "inside") -> Assembled:
    """A deck of 300 × 200 with a post 12 wide in an opening at each of its corners, 20 mm in."""
    spots = [(x, y) for x in (20.0, 280.0) for y in (20.0, 180.0)]
    rings = tuple(
        tuple((x + a * (6.0 + play / 2.0), y + b * (2.5 + play / 2.0)) for a, b in ((-1, -1), (-1, 1), (1, 1), (1, -1)))
        for x, y in spots
    )
    rim = [(0, 0), (300, 0), (300, 200), (0, 200)]
    deck = make.polygon("deck", rim, ("bottom", "right", "top", "left"), holes=rings)
    sockets = tuple(
        Opening(f"s{i}", "window", hole, 12.0, 5.0, 10.0, 50.0) for i, hole in enumerate(deck.outline.holes)
    )
    deck = replace(deck, openings=sockets)
    places = {"deck": "deck"} | {f"p{i}": "post" for i in range(4)}
    seats = tuple(
        FaceSeat(f"p{i}", "deck", face, "top", None, 0.0, None, make.here, f"s{i}")  # type: ignore[arg-type]
        for i in range(4)
    )
    plan = replace(make.panels("stage", places, "deck."), seats=seats)
    made: Assembled = make.assembled(make.design(panels=(plan,)), deck, make.wall("post", 12, 50))
    return made


def test_posts_in_openings_with_play_carry_a_deck_as_those_without(make: SimpleNamespace) -> None:
    """They touch nothing: glue fills the play. In the middle it spans from corner to corner."""
    tight, loose = deck_of(in_sockets(make, 0.0)), deck_of(in_sockets(make, 0.3))
    assert loose.weakest.length == pytest.approx(tight.weakest.length, abs=1.0)
    assert loose.stress(loose.weakest) == pytest.approx(tight.stress(tight.weakest), rel=0.03)
    longest = max(one.length for one in loose.bendings if one.way == "span")
    assert (
        hypot(248.0, 155.0) < longest < hypot(272.0, 165.0)
    )  # across the corners of two posts, near ones and far ones


def test_a_deck_whose_end_goes_into_an_opening_of_a_wall_is_held_there(make: SimpleNamespace) -> None:
    ring = ((29.8, 37.3), (29.8, 42.7), (130.2, 42.7), (130.2, 37.3))
    wall = make.polygon(
        "wall", [(0, 0), (160, 0), (160, 60), (0, 60)], ("bottom", "right", "top", "left"), holes=(ring,)
    )
    wall = replace(wall, openings=(Opening("slot", "window", wall.outline.holes[0], 100.4, 5.4, 10.0, 50.0),))
    seat = FaceSeat("deck", "front", "outside", "bottom", None, 0.0, None, make.here, "slot")
    plan = replace(make.panels("shelf", {"front": "wall", "deck": "deck"}, "front.bottom"), seats=(seat,))
    deck = deck_of(make.assembled(make.design(panels=(plan,)), wall, make.wall("deck", 100, 35)))
    assert max(one.length for one in deck.bendings if one.way == "beyond") == pytest.approx(30.0, abs=0.2)
