"""Points along many lines at once, and dots that areas cover, against the same done one by one."""

import numpy as np
import pytest
import shapely

from publisher.basics import Pose
from publisher.proof.measuring.strewn import along, filled_dots, placed_lines, tried


def test_points_lie_along_their_lines_no_farther_apart_than_asked() -> None:
    points = np.array([(0.0, 0.0), (3.0, 0.0), (3.0, 4.0), (10.0, 10.0), (10.0, 11.0)])
    strewn, line, far = along(points, np.array([0, 3, 5]), 0.5)
    assert line.tolist() == [0] * 14 + [1] * 2
    assert far[line == 0] == pytest.approx(np.arange(14) * 0.5 + 0.25)  # of both stretches, one behind the other
    assert strewn[0] == pytest.approx((0.25, 0.0)) and strewn[6] == pytest.approx((3.0, 0.25))
    assert strewn[line == 1] == pytest.approx(np.array([(10.0, 10.25), (10.0, 10.75)]))


def test_no_line_has_no_points() -> None:
    strewn, line, far = along(np.zeros((1, 2)), np.array([0, 1]), 0.5)
    assert (len(strewn), len(line), len(far)) == (0, 0, 0)


def test_a_ring_inside_another_of_its_shape_is_a_hole_and_of_another_shape_is_none() -> None:
    outer = [(0.0, 0.0), (6.0, 0.0), (6.0, 6.0), (0.0, 6.0)]
    inner = [(2.0, 2.0), (4.0, 2.0), (4.0, 4.0), (2.0, 4.0)]
    points, starts = np.array(outer + inner), np.array([0, 4, 8])
    for shapes, covered in (((0, 0), 36 - 4), ((0, 1), 36)):
        dots = set(filled_dots(points, starts, np.array(shapes), 8, 8).tolist())
        assert len(dots) == covered
        assert (3 * 8 + 3 in dots) == (covered == 36)


def test_lines_are_parted_and_one_of_no_length_keeps_its_points() -> None:
    lines = shapely.linestrings([[(0.0, 0.0), (5.0, 0.0)], [(3.0, 3.0), (3.0, 3.0)], [(0.0, 1.0), (0.0, 2.0)]])
    points, owner = tried(lines, 2.0)
    assert np.diff(points[owner == 0][:, 0]) == pytest.approx([5 / 3] * 3)
    assert points[owner == 1].tolist() == [[3.0, 3.0], [3.0, 3.0]]
    assert points[owner == 2].tolist() == [[0.0, 1.0], [0.0, 2.0]]
    assert len(tried(lines[:0], 2.0)[0]) == 0


def test_lines_are_placed_all_at_once_as_one_by_one() -> None:
    pose = Pose(20.0, -3.0, 31.0, mirrored=True)
    lines = (((0.0, 0.0), (5.0, 2.0)), ((1.0, 1.0), (2.0, 7.0), (9.0, 9.0)))
    points, owner = placed_lines(pose, lines)
    assert owner.tolist() == [0, 0, 1, 1, 1]
    assert points == pytest.approx(np.array([point for line in lines for point in pose.apply_all(line)]))
    assert placed_lines(pose, ())[0].shape == (0, 2)
