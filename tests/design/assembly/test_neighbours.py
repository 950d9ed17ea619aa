"""Which panels hang together."""

from publisher.design.assembly.neighbours import neighbours, reached


def test_neighbours_are_those_of_both_ends_as_often_as_they_meet() -> None:
    assert neighbours([("front", "left"), ("left", "back"), ("back", "left")]) == {
        "front": ["left"],
        "left": ["front", "back", "back"],
        "back": ["left", "left"],
    }


def test_reached_goes_round_a_ring_and_along_a_row_and_not_across_a_gap() -> None:
    near = neighbours([("a", "b"), ("b", "c"), ("c", "a"), ("c", "d"), ("far", "away")])
    assert reached("d", near) == {"a", "b", "c", "d"}
    assert reached("away", near) == {"far", "away"}
    assert reached("alone", near) == {"alone"}
