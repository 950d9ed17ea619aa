import numpy as np
import pytest

from publisher.joints.panels.space import STEEP, crossed, joined, line_of, planes_of, standing, stands


def test_a_panel_stands_upright_facing_the_front() -> None:
    frame = standing(line_of((0, 0), (100, 0), 0.0))
    assert frame.point((0, 0), 0.0) == pytest.approx([0, 0, 0])
    assert frame.point((100, 40), 0.0) == pytest.approx([100, 0, 40])
    assert frame.point((50, 0), 5.0) == pytest.approx([50, 5, 0])  # the inside face lies behind
    assert frame.outward == pytest.approx([0, -1, 0])


@pytest.mark.parametrize("edge", [((0, 0), (100, 0)), ((100, 0), (100, 60)), ((100, 60), (0, 60)), ((0, 60), (0, 0))])
def test_a_panel_can_stand_on_any_edge(edge: tuple[tuple[float, float], tuple[float, float]]) -> None:
    frame = standing(line_of(*edge, 0.0))
    assert [frame.point(p, 0.0)[2] for p in edge] == pytest.approx([0, 0])
    assert frame.point((50, 30), 0.0)[2] > 0
    assert np.linalg.det(frame.axes) == pytest.approx(1)


@pytest.mark.parametrize(
    ("corner", "outward"),
    [
        (90.0, (1.0, 0.0, 0.0)),
        (180.0, (0.0, -1.0, 0.0)),
        (120.0, (0.8660254, -0.5, 0.0)),
        (60.0, (0.8660254, 0.5, 0.0)),
    ],
)
def test_the_next_panel_turns_by_the_inside_angle(corner: float, outward: tuple[float, float, float]) -> None:
    a = standing(line_of((0, 0), (100, 0), 0.0))
    right, left = line_of((100, 0), (100, 60), 0.0), line_of((0, 60), (0, 0), 0.0)
    b = joined(a, right, left, corner)
    assert b.outward == pytest.approx(outward)
    assert b.point((0, 0), 0.0) == pytest.approx([100, 0, 0])
    assert b.point((0, 60), 0.0) == pytest.approx([100, 0, 60])


def test_a_matrix_carries_a_point_and_a_frame_brings_it_back() -> None:
    frame = joined(
        standing(line_of((0, 0), (80, 0), 0.0)), line_of((80, 0), (80, 50), 0.0), line_of((0, 50), (0, 0), 5.0), 70.0
    )
    matrix = np.array(frame.matrix()).reshape(3, 4)
    point = np.array([12.0, 34.0, -5.0])
    carried = frame.carry(point[None, :])[0]
    assert matrix @ np.append(point, 1.0) == pytest.approx(carried)
    assert frame.back(carried[None, :])[0] == pytest.approx(point)


def test_rows_are_crossed_as_numpy_does_and_planes_hold_their_points() -> None:
    rows = np.array([[1.0, 2.0, 3.0], [-4.0, 0.5, 2.0], [0.0, 0.0, 7.0]])
    others = np.array([[0.5, -1.0, 2.0], [3.0, 3.0, 1.0], [1.0, 0.0, 4.0]])
    assert (crossed(rows, others) == np.cross(rows, others)).all()
    p, q, r = planes_of(rows, others).T
    x, y, z = others.T
    assert p * x + q * y + r == pytest.approx(z)
    assert rows[:, 0] + rows[:, 2] * p == pytest.approx(0.0) and rows[:, 1] + rows[:, 2] * q == pytest.approx(0.0)


def test_what_leans_far_lies_and_does_not_stand() -> None:
    assert stands(1.0) and stands(STEEP + 0.01)
    assert not any(map(stands, (STEEP, 0.0, -1.0)))
