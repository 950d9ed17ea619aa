"""Joints that are small on paper."""

import pytest

from publisher.joints.act_pictures.details import JOINT_SHOWN, SMALL_JOINT, detail_scale, detailed, joints_of
from publisher.joints.act_pictures.planned import best_sight
from publisher.joints.assembled import Assembled
from tests.joints.act_pictures.conftest import scenes


def test_tabs_are_found_at_their_slots_and_whole_edges_are_no_small_joint(box: Assembled) -> None:
    walls, back, lid = (joints_of(scene.added, scene.before) for scene in scenes(box).values())
    # of two ends at one side: two tabs each and their slots, then the same at the other side
    assert len(walls) == len(back) == 8
    assert lid == ()


def test_a_joint_is_enlarged_only_where_it_is_small(box: Assembled) -> None:
    scene = scenes(box)["act:1:1"]
    sight, joints = best_sight(scene, None), joints_of(scene.added, scene.before)
    size = max(joint.size for joint in joints)
    assert detailed(sight, joints, 1.01 * SMALL_JOINT / size) is None
    small = detailed(sight, joints, 0.99 * SMALL_JOINT / size)
    assert small is not None
    assert detail_scale(small, 0.2) * small.size == pytest.approx(JOINT_SHOWN)
    assert detail_scale(small, 0.7) >= 1.4, "at least twice as large as in the whole"
