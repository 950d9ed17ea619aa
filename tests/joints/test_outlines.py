from math import dist
from types import SimpleNamespace

import numpy as np
import pytest
import shapely

from publisher.basics import Point, Pose
from publisher.joints.outlines import bridged, coarse, corners, move, pieces, united, whole_polygon


def test_a_notch_is_filled_with_the_arc_that_it_interrupts(make: SimpleNamespace) -> None:
    plain, notched = make.stair_layer(), make.stair_layer(notch_at=15.0)
    assert shapely.Polygon(notched.outline.outer.points).area < whole_polygon(notched).area
    assert whole_polygon(notched).area == pytest.approx(whole_polygon(plain).area, abs=0.05)


def test_a_tab_is_bridged_by_its_edge(make: SimpleNamespace) -> None:
    runs = [
        ("left", [(0.0, 0.0), (10.0, 0.0)]),
        ("left.tab", [(10.0, 0.0), (10.0, -5.0), (20.0, -5.0), (20.0, 0.0)]),
        ("left", [(20.0, 0.0), (40.0, 0.0)]),
        ("top", [(40.0, 0.0), (40.0, 30.0), (0.0, 30.0), (0.0, 0.0)]),
    ]
    ring = make.ring(*[(name, points, None, 0.0) for name, points in runs])
    flat = bridged(ring, lambda name: name.endswith(".tab"))
    assert shapely.Polygon(flat.points).area == pytest.approx(40 * 30)
    assert bridged(ring, lambda name: name == "none") is ring


def test_a_coarse_keeps_corners_and_stays_near(make: SimpleNamespace) -> None:
    ring = make.stair_layer().outline.outer
    points, corner = coarse(ring, most_turn=5.0, sagitta=0.05)
    assert len(points) < 0.6 * len(ring.points)
    away = shapely.hausdorff_distance(shapely.LinearRing(points), shapely.LinearRing(ring.points), densify=0.01)
    assert away < 0.06
    assert sum(corner) == 4  # both ends of the rim and both roots of the step
    assert {(92.0, 0.0), (30.0, 0.0)} <= {p for p, c in zip(points, corner, strict=True) if c}


def test_two_arcs_of_one_circle_share_their_points_wherever_they_begin(make: SimpleNamespace) -> None:
    """The rim of one stair layer on that of another, turned by 21.3°: all points between the ends of both stretches are shared."""
    step, turned = make.stair_layer().outline.outer, make.stair_layer().outline.outer.placed(Pose(0.0, 0.0, 21.3))
    shared, apart = (
        _in_both(
            coarse(step, most_turn=5.0, sagitta=0.05, north=north)[0],
            coarse(turned, most_turn=5.0, sagitta=0.05, north=north)[0],
        )
        for north in (33.0, None)
    )
    assert shared > 30 and apart < 5
    points, corner = coarse(step, most_turn=5.0, sagitta=0.05, north=33.0)
    away = shapely.hausdorff_distance(shapely.LinearRing(points), shapely.LinearRing(step.points), densify=0.01)
    assert away < 0.06 and sum(corner) == 4


def _in_both(a: tuple[Point, ...], b: tuple[Point, ...]) -> int:
    return sum(min(dist(p, q) for q in b) < 1e-9 for p in a)


def test_a_finely_flattened_circle_has_no_corners(make: SimpleNamespace) -> None:
    assert not any(corners(make.disc().outline.outer.points))
    assert all(corners(((0, 0), (10, 0), (10, 10), (0, 10))))


def test_a_pose_moves_a_polygon_as_it_moves_points() -> None:
    pose, corners_ = Pose(5.0, -2.0, 33.0, True), ((0.0, 0.0), (10.0, 0.0), (10.0, 4.0))
    moved = shapely.get_coordinates(move(shapely.Polygon(corners_), pose))[:-1]
    assert moved == pytest.approx(np.array(pose.apply_all(corners_)))


def test_slivers_and_lines_are_no_pieces() -> None:
    mixed = shapely.GeometryCollection(
        [shapely.box(0, 0, 5, 5), shapely.box(0, 0, 5, 0.001), shapely.LineString([(0, 0), (1, 1)])]
    )
    assert pieces(mixed).equals(shapely.box(0, 0, 5, 5))
    assert pieces(shapely.LineString([(0, 0), (1, 1)])).is_empty


def test_areas_are_united_without_lines_and_dust() -> None:
    """A line, and a triangle of 1e-10 mm², as two flattenings of an arc leave them between two squares."""
    left, right = shapely.box(0, 0, 10, 10), shapely.box(5, 0, 20, 10)
    dust = shapely.Polygon([(30, 0), (30.00001, 0), (30, 0.00001)])
    both = united([shapely.GeometryCollection([left, shapely.LineString([(0, 0), (50, 50)])]), right, dust])
    assert both.equals(shapely.box(0, 0, 20, 10))
    assert united([]).is_empty
