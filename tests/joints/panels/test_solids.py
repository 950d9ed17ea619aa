from dataclasses import replace
from math import radians, tan
from types import SimpleNamespace

import numpy as np
import pytest

from publisher.joints.panels.solids import corners_of, face_pair


def test_without_bevels_both_faces_are_alike(make: SimpleNamespace) -> None:
    wall = make.wall("w", 100, 50)
    pair = face_pair(wall, wall.outline.outer.points)
    assert pair.inside is pair.outside


def test_a_bevel_sets_the_inside_face_back_by_t_tan(make: SimpleNamespace) -> None:
    wall = make.wall("w", 100, 50)
    bevelled = replace(
        wall, edges=tuple(replace(e, bevel=30.0) if e.name in ("left", "top") else e for e in wall.edges)
    )
    back = 5 * tan(radians(30))
    inside = face_pair(bevelled, wall.outline.outer.points).inside
    assert inside == pytest.approx(np.array([(back, 0), (100, 0), (100, 50 - back), (back, 50 - back)]))


def test_bevelled_slanting_corners_meet(make: SimpleNamespace) -> None:
    triangle = make.polygon("t", [(0, 0), (60, 0), (30, 40)])
    bevelled = replace(triangle, edges=tuple(replace(e, bevel=45.0) for e in triangle.edges))
    inside = face_pair(bevelled, triangle.outline.outer.points).inside
    # all sides 5 mm inwards: inradius 15 (area 1200, perimeter 160) becomes 10, so it shrinks by a third about the incentre
    assert np.ptp(inside[:, 0]) == pytest.approx(40)
    assert inside[:, 1].min() == pytest.approx(5)


def test_corners_lie_on_both_faces(make: SimpleNamespace) -> None:
    corners = corners_of(make.wall("w", 100, 50))
    assert corners.shape == (8, 3)
    assert set(corners[:, 2]) == {0.0, -5.0}
