"""Ways in, of one straight move or of two."""

from collections.abc import Callable

import numpy as np
import pytest

from publisher.joints.building.legs import way_in
from publisher.joints.building.movers import movers_of
from publisher.joints.building.ways import Ways, moved, ways_of
from tests.joints.building.conftest import BOX


def test_it_goes_in_where_it_is_put_against_most(assembled: Callable) -> None:
    ways = ways_of(movers_of(assembled(BOX), "box"))
    (out,) = way_in(ways, ["back"], ["front", "left", "right"]).legs
    assert out == pytest.approx([0.0, 1.0, 0.0])
    (out,) = way_in(ways, ["lid"], ["front", "back", "left", "right"]).legs
    assert out == pytest.approx([0.0, 0.0, 1.0])


def test_what_stands_in_its_way_is_named(assembled: Callable) -> None:
    ways = ways_of(movers_of(assembled(BOX), "box"))
    found = way_in(ways, ["left"], ["front", "back"])
    assert found.legs == () and found.by == ("front",)


def test_two_moves_where_one_does_not_do(assembled: Callable) -> None:
    """An end goes up between two sides once it has been drawn out of the slots of one of them."""
    front, back, left = (m for m in movers_of(assembled(BOX), "box") if m.name in ("front", "back", "left"))
    apart = Ways((front, moved(back, np.array([0.0, 12.0, 0.0])), left), ways_of((front, back, left)).out)
    found = way_in(apart, ["left"], ["front", "back"])
    assert [list(np.round(leg, 6)) for leg in found.legs] == [[0.0, 1.0, 0.0], [0.0, 0.0, 1.0]]
