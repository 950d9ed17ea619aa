"""Straight ways out of an assembly."""

from collections.abc import Callable

import numpy as np
import pytest

from publisher.joints.building.movers import movers_of
from publisher.joints.building.ways import Ways, moved, ways_of
from tests.joints.building.conftest import BOX

UP, DOWN = (0.0, 0.0, 1.0), (0.0, 0.0, -1.0)
TO_FRONT, TO_BACK = (0.0, -1.0, 0.0), (0.0, 1.0, 0.0)


def along(ways: Ways, way: tuple[float, float, float]) -> int:
    return int(np.argmax(ways.out @ np.array(way)))


def hits(ways: Ways, name: str, way: tuple[float, float, float]) -> set[str]:
    others = [i for i in range(len(ways.movers)) if i != ways.names[name]]
    return {ways.movers[i].name for i in ways.in_the_way(along(ways, way), [ways.names[name]], others)}


def test_what_stands_in_the_way_of_an_end_with_tabs_in_closed_slots(assembled: Callable) -> None:
    ways = ways_of(movers_of(assembled(BOX), "box"))
    assert hits(ways, "left", TO_FRONT) == {"front"} and hits(ways, "left", TO_BACK) == {"back"}
    assert hits(ways, "left", UP) == {"front", "back", "lid"}  # its tabs under the tops of their slots
    assert hits(ways, "left", DOWN) == {"front", "back"}
    assert hits(ways, "front", TO_FRONT) == set()
    assert hits(ways, "front", TO_BACK) == {"left", "right", "back"}
    assert hits(ways, "lid", UP) == set()
    assert hits(ways, "lid", TO_BACK) == set()


def test_opposite_ways_say_the_same_the_other_way_round(assembled: Callable) -> None:
    ways = ways_of(movers_of(assembled(BOX), "box"))
    every = range(len(ways.movers))
    for way in range(0, len(ways.out), 2):
        assert ways.out[way] == pytest.approx(-ways.out[way + 1])
        assert (ways.room(way, every, every) == ways.room(way + 1, every, every).T).all()


def test_how_far_something_goes_before_it_meets_something(assembled: Callable) -> None:
    ways = ways_of(movers_of(assembled(BOX), "box"))
    left, right = ways.names["left"], ways.names["right"]
    to_right = along(ways, tuple(ways.movers[right].panels[0].frame.outward))
    room = float(ways.room(to_right, [left], [right])[0, 0])
    assert room == pytest.approx(
        120.0 - 2 * 10.0 - 2 * 5.0
    )  # both ends stand 10 mm from those of the sides, 5 mm thick
    near = Ways((moved(ways.movers[left], 15.0 * ways.out[to_right]), ways.movers[right]), ways.out)
    assert float(near.room(to_right, [0], [1])[0, 0]) == pytest.approx(room - 15.0)


def test_a_lip_narrower_than_foam_gives_does_not_count(assembled: Callable) -> None:
    front, lid = (m for m in movers_of(assembled(BOX), "box") if m.name in ("front", "lid"))
    ways = ways_of((front, lid))
    for over, stands_in_the_way in ((0.4, False), (0.6, True)):
        beside = moved(lid, np.array([0.0, -80.0 + over, -20.0]))  # in front of the face of the front, which is at 0
        there = Ways((front, beside), ways.out)
        assert bool(there.in_the_way(along(there, UP), [1], [0])) is stands_in_the_way
        assert bool(there.in_the_way(along(there, DOWN), [1], [0])) is stands_in_the_way
