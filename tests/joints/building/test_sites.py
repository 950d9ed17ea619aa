"""Assemblies as they are built."""

from collections.abc import Callable

from publisher.joints.building.sites import sites_of
from tests.joints.building.conftest import BOX


def test_what_is_not_held_is_said(assembled: Callable) -> None:
    more = "\n  yard: {things: {one: {assembly: box}, other: {assembly: box, on_top_of: [one]}}}\n"
    sites = sites_of(assembled(BOX + more))
    box, yard = sites["box"], sites["yard"]
    assert (box.times, box.stack, yard.made_of) == (2, False, {"one": "box", "other": "box"})
    assert box.lacking(["lid"], []) == []  # the first lies on the table with any face that is outermost
    assert box.lacking(["lid"], ["left"]) == [("lid", ("front", "back"), False)]
    assert box.lacking(["lid"], ["left", "front"]) == []
    assert box.lacking(["back", "lid"], ["left"]) == []
    assert yard.lacking(["other"], []) == [("other", ("one",), True)]
