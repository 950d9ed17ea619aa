"""Paths as lines of the geometry library, and back."""

import pytest
import shapely

from publisher.basics import circle, polyline
from publisher.geometry.paths import line_string, lines_left


def test_a_closed_path_comes_back_to_its_start() -> None:
    assert line_string(circle((1.0, 2.0), 5.0)).is_ring
    assert line_string(polyline(((0.0, 0.0), (3.0, 4.0)))).length == 5.0
    assert line_string(polyline(((3.0, 4.0),))) == shapely.Point(3.0, 4.0)


def test_what_is_left_of_a_line_is_in_pieces() -> None:
    area = shapely.box(0.0, 0.0, 10.0, 10.0).difference(shapely.box(4.0, 0.0, 6.0, 10.0))
    left = list(lines_left(shapely.LineString([(-5.0, 5.0), (15.0, 5.0)]), area))
    assert sorted(path.points for path in left) == [((0.0, 5.0), (4.0, 5.0)), ((6.0, 5.0), (10.0, 5.0))]
    assert [*lines_left(shapely.LineString([(20.0, 5.0), (15.0, 5.0)]), area)] == []


def test_a_closed_line_that_is_cut_once_stays_one_piece() -> None:
    ring = line_string(polyline(((2.0, 2.0), (8.0, 2.0), (8.0, 8.0), (2.0, 8.0)), closed=True))
    (left,) = lines_left(ring, shapely.box(0.0, 0.0, 7.0, 10.0))
    assert left.length == pytest.approx(16.0) and not left.closed
