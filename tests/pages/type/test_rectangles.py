"""Boxes and polygons."""

import pytest

from publisher.basics import Box
from publisher.pages.type.rectangles import as_polygon, box_round, moved, within


def test_a_box_and_its_polygon_have_the_same_bounds() -> None:
    assert as_polygon(Box(1, 2, 4, 8)).bounds == (1, 2, 4, 8)


def test_within_needs_all_four_sides() -> None:
    window = Box(0, 0, 10, 10)
    assert within(Box(0, 0, 10, 10), window)
    for outside in (Box(-0.1, 1, 5, 5), Box(1, -0.1, 5, 5), Box(1, 1, 10.1, 5), Box(1, 1, 5, 10.1)):
        assert not within(outside, window)


def test_moved_and_round() -> None:
    assert moved(Box(0, 0, 1, 2), 3, -4) == Box(3, -4, 4, -2)
    assert box_round([(3, 1), (0, 5), (2, -2)]) == Box(0, -2, 3, 5)
    with pytest.raises(ValueError):
        box_round([])
