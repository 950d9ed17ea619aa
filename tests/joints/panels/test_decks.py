"""What carries a level panel: what stands under it, and what its edges are glued to, if that stands without it."""

from dataclasses import replace
from types import SimpleNamespace

import pytest

from publisher.design import Figure, Join
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
