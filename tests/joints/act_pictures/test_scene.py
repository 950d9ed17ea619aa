"""Where what is added touches what stands."""

import numpy as np

from publisher.joints.act_pictures.scene import contacts, touching
from publisher.joints.assembled import Assembled
from tests.joints.act_pictures.conftest import scenes


def test_contacts_lie_on_both(box: Assembled) -> None:
    for scene in scenes(box).values():
        found = contacts(scene.added, scene.before)
        assert len(found) >= 3
        assert len(touching(found, scene.before)) == len(found) == len(touching(found, scene.added))


def test_what_is_far_off_touches_nothing(box: Assembled) -> None:
    scene = scenes(box)["act:1:1"]
    assert len(touching(scene.goal + np.array([0.0, 0.0, 200.0]), scene.before)) == 0
