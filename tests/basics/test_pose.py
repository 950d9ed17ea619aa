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


def test_a_box_reaches_out_of_a_room_by_its_farthest_side() -> None:
    room = Box(0, 0, 10, 10)
    assert room.beyond(room) == 0
    assert Box(1, 2, 5, 5).beyond(room) == -1
    for outside in (Box(-0.5, 1, 5, 5), Box(1, -0.5, 5, 5), Box(1, 1, 10.5, 5), Box(1, 1, 5, 10.5)):
        assert outside.beyond(room) == 0.5


def test_boxes_overlap_by_what_they_share_and_stand_apart_by_the_gap() -> None:
    box = Box(0, 0, 10, 6)
    assert box.common(Box(8, -1, 20, 3)) == Box(8, 0, 10, 3)
    assert (box.overlap(Box(8, -1, 20, 3)), box.overlap(Box(10, 0, 12, 2)), box.overlap(Box(13, 2, 15, 4))) == (
        2,
        0,
        -3,
    )
    assert box.overlap(Box(4, 1, 5, 1)) == 0  # a line has no width


def test_a_box_is_moved_laid_round_points_and_taken_apart() -> None:
    assert Box(0, 0, 1, 2).moved(3, -4) == Box(3, -4, 4, -2)
    assert Box.round(((3, 1), (0, 5), (2, -2))).sides == (0, -2, 3, 5)
    with pytest.raises(ValueError):
        Box.round(())
