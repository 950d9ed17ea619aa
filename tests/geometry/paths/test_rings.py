"""Rings with runs: merging, exact areas, and the way back to curves."""

from math import pi

import pytest

from publisher.geometry import Region, area, path_length, run_points
from publisher.geometry.paths.curves import Curve
from publisher.geometry.paths.rings import Pen, circle, curves_of, oriented, reverse, ring_of, signed_area, straight

SQUARE = straight((((0.0, 0.0), "bottom"), ((4.0, 0.0), "right"), ((4.0, 4.0), "top"), ((0.0, 4.0), "left")))


def test_a_square_has_a_run_for_each_side() -> None:
    ring = ring_of(SQUARE)
    assert ring.points == ((0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (0.0, 4.0))
    assert [(run.name, run.first, run.last) for run in ring.runs] == [
        ("bottom", 0, 1),
        ("right", 1, 2),
        ("top", 2, 3),
        ("left", 3, 0),
    ]
    assert curves_of(ring) == SQUARE
    assert run_points(ring, ring.runs[3]) == ((0.0, 4.0), (0.0, 0.0))


def test_a_full_circle_is_two_runs_so_that_no_run_is_empty() -> None:
    ring = ring_of(circle((1.0, 2.0), 10.0, "rim"))
    assert [run.name for run in ring.runs] == ["rim", "rim"]
    assert all(run.first != run.last for run in ring.runs)
    assert sum(len(run_points(ring, run)) - 1 for run in ring.runs) == len(ring.points)


def test_neighbours_of_one_run_merge_also_over_the_first_point() -> None:
    half = Pen((2.0, 0.0)).line((4.0, 0.0), "bottom").line((4.0, 4.0), "side").line((0.0, 4.0), "side")
    ring = ring_of(half.line((0.0, 0.0), "side").line((2.0, 0.0), "bottom").curves)
    assert [(run.name, run.first, run.last) for run in ring.runs] == [("side", 1, 4), ("bottom", 4, 1)]
    assert run_points(ring, ring.runs[1]) == ((0.0, 0.0), (2.0, 0.0), (4.0, 0.0))


def test_specks_are_dropped() -> None:
    ring = ring_of((*SQUARE[:3], Curve("left", (0.0, 4.0), (0.0, 1e-8)), Curve("speck", (0.0, 1e-8), (0.0, 0.0))))
    assert len(ring.points) == 4 and "speck" not in [run.name for run in ring.runs]


def test_areas_count_arcs_as_arcs() -> None:
    rim = ring_of(circle((3.0, -1.0), 7.0, "rim"))
    bore = ring_of(circle((3.0, -1.0), 2.0, "bore", ccw=False))
    assert area(Region(rim, (bore,))) == pytest.approx(45.0 * pi, rel=1e-12)
    assert path_length(Region(rim, (bore,))) == pytest.approx(18.0 * pi, rel=1e-12)


def test_orientation() -> None:
    assert signed_area(SQUARE) == 16.0 and signed_area(reverse(SQUARE)) == -16.0
    assert oriented(reverse(SQUARE)) == SQUARE
    assert signed_area(oriented(SQUARE, hole=True)) == -16.0


def test_curves_come_back_from_rings_both_ways_round() -> None:
    for chain in (circle((0.0, 0.0), 9.0, "rim"), circle((0.0, 0.0), 9.0, "rim", ccw=False)):
        assert signed_area(curves_of(ring_of(chain))) == pytest.approx(signed_area(chain), rel=1e-12)
