"""Closed paths drawn edge by edge: exact areas, and the way they run."""

from math import pi

import numpy as np
import pytest

from publisher.basics import circle
from publisher.geometry import Region, area, path_length
from publisher.geometry.paths.rings import Pen, next_of, one_before, oriented, signed_area, straight

SQUARE = straight((((0.0, 0.0), "bottom"), ((4.0, 0.0), "right"), ((4.0, 4.0), "top"), ((0.0, 4.0), "left")))


def test_a_square_has_a_line_for_each_side() -> None:
    assert SQUARE.points == ((0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (0.0, 4.0))
    assert [edge.name for edge in SQUARE.edges] == ["bottom", "right", "top", "left"]
    assert SQUARE.edges[3].end == (0.0, 0.0)


def test_a_pen_draws_edge_by_edge() -> None:
    pen = Pen((0.0, 0.0)).line((8.0, 0.0), "chord").arc((0.0, 0.0), (4.0, 0.0), 4.0, "bow")
    assert pen.at == (0.0, 0.0) and signed_area(pen.path()) == pytest.approx(8.0 * pi)
    assert Pen((0.0, 0.0)).along(pen.edges).path() == pen.path()


def test_areas_count_arcs_as_arcs() -> None:
    rim = circle((3.0, -1.0), 7.0, "rim")
    bore = circle((3.0, -1.0), 2.0, "bore", ccw=False)
    assert area(Region(rim, (bore,))) == pytest.approx(45.0 * pi, rel=1e-12)
    assert path_length(Region(rim, (bore,))) == pytest.approx(18.0 * pi, rel=1e-12)


def test_orientation() -> None:
    back = SQUARE.reversed()
    assert signed_area(SQUARE) == 16.0 and signed_area(back) == -16.0
    assert oriented(back) == SQUARE
    assert signed_area(oriented(SQUARE, hole=True)) == -16.0


def test_a_ring_goes_on_from_its_last_place_to_its_first() -> None:
    ring = np.arange(12.0).reshape(4, 3)
    assert (next_of(ring) == np.roll(ring, -1, axis=0)).all() and (one_before(ring) == np.roll(ring, 1, axis=0)).all()
    flags = np.array([True, False, False])
    assert next_of(flags).tolist() == [False, False, True] and one_before(flags).tolist() == [False, True, False]
