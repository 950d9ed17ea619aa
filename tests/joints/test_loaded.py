"""Decks of panels under things that stand on them."""

from pathlib import Path

import pytest

from publisher.joints.footing import GRAVITY, mass_of
from tests.reference.solids import Built, build

WIDE, BLOCK = 160.0, 100.0  # mm
TABLE = """sizes: {board: 5 mm}
parts:
  girder: {name: Girder, board: foam, shape: rectangle, with: {width: 200 mm, height: 40 mm}}
  deck: {name: Deck, board: foam, shape: rectangle, with: {width: 200 mm, height: 160 mm}}
  block: {name: Block, board: foam, shape: rectangle, with: {width: 100 mm, height: 100 mm}}
assembly:
  stage:
    panels: {deck: deck, near: girder, far: girder}
    stands_on: near.bottom
    joins:
      - {edges: [deck.bottom, near.top], joint: butt, runs_through: deck}
      - {edges: [deck.top, far.top], joint: butt, runs_through: deck}
"""


def loaded(folder: Path, layers: int, at: str = "[0 mm, 0 mm]") -> Built:
    """A deck 160 mm deep on two girders along its long sides, and on it a pile of so many blocks 100 × 100 mm."""
    things = f"things: {{stage: {{assembly: stage}}, pile: {{assembly: pile, on_top_of: [stage], at: {at}}}}}"
    return build(f"{TABLE}  pile: {{stack: [{{part: block, count: {layers}}}]}}\n  all: {{{things}}}\n", folder)


def fact(made: Built, name: str) -> float:
    return next(one.value for one in made.joined.facts if one.name == name)


def test_a_pile_bends_the_deck_it_stands_on_by_the_formula_of_a_beam(tmp_path: Path) -> None:
    """W over c mm of a clear length L bends it as W·(1 − c/(2·L)) in the middle does: with the figure F the factor is less by
    F/(F + W·(1 − c/(2·L))), the deck's own weight being 2 % of it."""
    made = loaded(tmp_path, 10)
    boards = {board.id: board for board in made.design.boards}
    figure = made.design.figure.mass * GRAVITY
    clear = fact(made, "stage.deck_span")
    pile = 10 * mass_of(made.parts["block"], boards) * GRAVITY * (1.0 - BLOCK / (2.0 * clear))
    alone = fact(made, "stage.deck_strength_factor")
    assert clear == pytest.approx(WIDE - 2 * 5.0, abs=0.3)
    assert fact(made, "all.deck_strength_factor") == pytest.approx(alone * figure / (figure + pile), rel=0.03)


def test_a_tower_breaks_a_deck_that_carries_figures_alone(tmp_path: Path) -> None:
    found = [one for one in loaded(tmp_path, 400).findings if one.check == "joints/deck-too-weak"]
    assert [one.subject for one in found] == ["all"]
    assert "stage.deck" in found[0].message
    assert not [one for one in loaded(tmp_path, 3).findings if one.check == "joints/deck-too-weak"]


def test_what_stands_over_a_support_is_no_load_between_them(tmp_path: Path) -> None:
    """Three girders, two of them 60 mm apart under the pile of 100: 50 of its 100 mm lie where nothing carries the deck."""
    stage = TABLE.replace("far: girder}", "far: girder, rib: girder, beam: girder}")
    joins = "".join(
        f"      - {{edges: [deck.bottom, {name}.top], joint: butt, runs_through: deck, inset: {inset} mm}}\n"
        for name, inset in (("rib", 50.0), ("beam", 105.0))
    )
    pile = "  pile: {stack: [{part: block, count: 10}]}\n"
    whole = "  all: {things: {stage: {assembly: stage}, pile: {assembly: pile, on_top_of: [stage]}}}\n"
    ribbed = build(stage + joins + pile + whole, tmp_path)
    assert fact(ribbed, "all.deck_span") == pytest.approx(fact(ribbed, "stage.deck_span"))
    assert fact(ribbed, "all.deck_strength_factor") > 1.3 * fact(loaded(tmp_path, 10), "all.deck_strength_factor")
