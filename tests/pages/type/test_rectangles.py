"""Boxes and polygons."""

from publisher.basics import Box
from publisher.pages.type.rectangles import as_polygon


def test_a_box_and_its_polygon_have_the_same_bounds() -> None:
    assert as_polygon(Box(1, 2, 4, 8)).bounds == (1, 2, 4, 8)
