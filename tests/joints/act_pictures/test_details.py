"""Joints that are small on paper."""

from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest

from publisher.joints.act_pictures.details import JOINT_SHOWN, SMALL_JOINT, detail_scale, detailed, joints_of
from publisher.joints.act_pictures.planned import best_sight
from publisher.joints.act_pictures.scene import Solid
from publisher.joints.assembled import Assembled
from publisher.joints.panels import PanelFrame
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


@pytest.mark.parametrize(("long", "found"), [(96.0, 2), (95.0, 0)])
def test_the_ends_of_a_strip_show_how_it_lies(make: SimpleNamespace, long: float, found: int) -> None:
    """A strip of 12 mm on a board: the middle of each end, inside its thickness; nothing of one a little less narrow, nor of one that
    hangs in the air."""
    board, strip = make.wall("board", 200, 60), make.wall("strip", long, 12)
    flat = PanelFrame(np.eye(3), np.zeros(3))
    below, above = (
        Solid("board", board, flat),
        Solid("strip", strip, PanelFrame(np.eye(3), np.array([50.0, 20.0, 5.0]))),
    )
    spots = joints_of((above,), (below,))
    assert [spot.size for spot in spots] == [12.0] * found
    assert sorted(tuple(spot.middle) for spot in spots) == [(50.0, 26.0, 2.5), (146.0, 26.0, 2.5)][:found]
    floating = Solid("strip", strip, PanelFrame(np.eye(3), np.array([50.0, 20.0, 8.0])))
    assert joints_of((floating,), (below,)) == ()
    tape = Solid("tape", replace(strip, letter=""), above.frame)
    assert joints_of((tape,), (below,)) == (), "tape has no face up"
