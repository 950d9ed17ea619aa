"""How what is added is said."""

from collections.abc import Callable

from publisher.joints.building.orders import Group, order_of
from publisher.joints.building.sites import sites_of
from publisher.joints.building.words import called, item_of, items_of
from tests.joints.building.conftest import BOX


def test_items_as_a_spec_says_them(assembled: Callable) -> None:
    sites = sites_of(assembled(BOX + "\n  pile: {stack: [{part: lid, count: 3}]}\n"))
    box, pile = sites["box"], sites["pile"]
    assert item_of(box, ("left", "right")) == "box.left with box.right"
    assert item_of(pile, ("layer_2", "layer_3")) == "pile 2 to 3"
    assert item_of(pile, ("layer_3",)) == "pile 3"
    assert item_of(pile, ("brace_1", "brace_2")) == "pile.braces"
    order = order_of(box)
    assert order is not None
    assert items_of(box, order) == ("box.front", "box.left", "box.right", "box.back", "box.lid")
    assert items_of(box, tuple(Group((name,)) for name in box.movers)) == ("box",)
    assert items_of(pile, order_of(pile) or ()) == ("pile",)
    assert called(("front", "layer_3", "brace_12")) == "front, layer 3, brace 12"
