"""Poses and boxes: exact quarter turns, mirrors first, then turn, then shift."""

from math import cos, radians, sin

import pytest
from hypothesis import given
from hypothesis import strategies as st

from publisher.basics import Box, Pose


def test_a_quarter_turn_is_exact() -> None:
    assert Pose(10.0, 20.0, 90.0).apply((3.0, 4.0)) == (6.0, 23.0)
    assert Pose(0.0, 0.0, 450.0).apply((1.0, 0.0)) == (0.0, 1.0)
    assert Pose(0.0, 0.0, -90.0).apply((1.0, 0.0)) == (0.0, -1.0)


def test_mirroring_comes_before_turning() -> None:
    assert Pose(0.0, 0.0, 90.0, mirrored=True).apply((1.0, 0.0)) == (0.0, -1.0)
    assert Pose(5.0, 0.0, 0.0, mirrored=True).apply((1.0, 2.0)) == (4.0, 2.0)


@given(st.floats(-500, 500), st.floats(-500, 500), st.floats(-720, 720), st.floats(-100, 100), st.floats(-100, 100))
def test_all_points_as_one_by_one_and_as_by_hand(x: float, y: float, turn: float, px: float, py: float) -> None:
    pose = Pose(x, y, turn)
    a = radians(turn)
    by_hand = (px * cos(a) - py * sin(a) + x, px * sin(a) + py * cos(a) + y)
    assert pose.apply((px, py)) == pytest.approx(by_hand, abs=1e-9)
    assert pose.apply_all(((px, py),))[0] == pose.apply((px, py))


def test_a_box_knows_its_sides() -> None:
    box = Box(1.0, 2.0, 11.0, 7.0)
    assert (box.width, box.height) == (10.0, 5.0)
    assert box.grown(1.0) == Box(0.0, 1.0, 12.0, 8.0)
    assert box.corners() == ((1.0, 2.0), (11.0, 2.0), (11.0, 7.0), (1.0, 7.0))


def test_carrying_a_point_to_a_point() -> None:
    pose = Pose.carrying((3.0, 1.0), (-2.0, 7.0), 40.0, mirrored=True)
    assert pose.apply((3.0, 1.0)) == pytest.approx((-2.0, 7.0)) and (pose.turn, pose.mirrored) == (40.0, True)
