"""What holds what."""

from collections.abc import Callable

from publisher.joints.building.held import holds_of
from publisher.joints.building.movers import movers_of
from tests.joints.building.conftest import BOX


def test_panels_hang_on_those_they_are_joined_to_or_stand_on_the_table(assembled: Callable) -> None:
    subject = assembled(BOX)
    holds = holds_of(subject, "box", movers_of(subject, "box"))
    assert holds["left"].table and holds["left"].lacks(frozenset({"right"})) == ()
    assert not holds["lid"].table
    assert holds["lid"].lacks(frozenset()) == ()  # the first lies on the table as it likes
    assert holds["lid"].lacks(frozenset({"left"})) == ("back", "front")
    assert holds["lid"].lacks(frozenset({"left", "front"})) == ()


def test_a_layer_lies_on_the_one_below_and_a_thing_on_what_carries_it(assembled: Callable) -> None:
    more = """
  pile: {stack: [{part: lid, count: 3}]}
  yard: {things: {step: {assembly: pile}, house: {assembly: box, on_top_of: [step]}}}
"""
    subject = assembled(BOX + more)
    pile = holds_of(subject, "pile", movers_of(subject, "pile"))
    assert pile["layer_3"].lacks(frozenset({"layer_1"})) == ("layer_2",)
    assert pile["layer_1"].lacks(frozenset({"layer_2"})) == ()
    yard = holds_of(subject, "yard", movers_of(subject, "yard"))
    assert yard["house"].lacks(frozenset()) == ("step",)
    assert yard["step"].lacks(frozenset({"house"})) == ()
