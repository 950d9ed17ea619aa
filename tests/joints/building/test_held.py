"""What holds what."""

from collections.abc import Callable

from publisher.joints.building.held import holds_of
from publisher.joints.building.movers import movers_of
from tests.joints.building.conftest import BOX


def test_panels_hang_on_those_they_are_joined_to_or_stand_on_the_table(assembled: Callable) -> None:
    subject = assembled(BOX)
    holds = holds_of(subject, "box", movers_of(subject, "box"))
    assert holds["left"].table and holds["left"].held_by(frozenset())
    assert not holds["lid"].table and not holds["lid"].held_by(frozenset({"left"}))
    assert holds["lid"].held_by(frozenset({"left", "front"}))
    assert holds["lid"].any_of == {"front", "back"} and holds["lid"].all_of == set()


def test_a_layer_lies_on_the_one_below_and_a_thing_on_what_carries_it(assembled: Callable) -> None:
    more = """
  pile: {stack: [{part: lid, count: 3}]}
  yard: {things: {step: {assembly: pile}, house: {assembly: box, on_top_of: [step]}}}
"""
    subject = assembled(BOX + more)
    pile = holds_of(subject, "pile", movers_of(subject, "pile"))
    assert [pile[f"layer_{n}"].all_of for n in (1, 2, 3)] == [set(), {"layer_1"}, {"layer_2"}]
    yard = holds_of(subject, "yard", movers_of(subject, "yard"))
    assert (yard["house"].all_of, yard["house"].table) == ({"step"}, False)
    assert (yard["step"].all_of, yard["step"].table) == (set(), True)
