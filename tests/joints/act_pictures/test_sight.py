"""How much of what is added, and of the place where it goes, is seen."""

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import shapely

from publisher.joints.act_pictures.planned import best_sight
from publisher.joints.act_pictures.sight import BEHIND, LEAST_SEEN, depth_at, look, seen_of_face
from publisher.joints.assembled import Assembled
from publisher.joints.drawings import View
from tests.joints.act_pictures.conftest import scenes
from tests.joints.building.conftest import BRACED


def test_no_more_is_hidden_than_the_areas_of_what_stands_before_it(box: Assembled) -> None:
    """By exact areas of faces, where the sight counts points and depths."""
    for scene in scenes(box).values():
        sight = best_sight(scene, None)
        own = shapely.transform(shapely.union_all(np.array(sight.new.areas)), lambda p, by=sight.shift: p + by[:2])
        standing = shapely.union_all(np.array(sight.there.areas))
        beside = shapely.difference(own, standing).area / own.area
        assert max(LEAST_SEEN, beside - 0.05) <= sight.seen <= 1.0


def test_what_stands_behind_a_wall_is_not_seen(box: Assembled) -> None:
    """Seen square from the front, the far side of a box is hidden by the near one, its twin."""
    scene = scenes(box)["act:1:2"]
    upright = replace(scene.turned(scene.turn.T), moves=False)
    assert look(upright, View(0.0, 0.0)).seen < 0.1
    assert look(upright, View(180.0, 0.0)).seen > 0.98


def test_of_a_face_only_what_nothing_hides_is_named(box: Assembled) -> None:
    """Whatever is left of a face lies on it, and no point of it is behind anything else."""
    for scene in scenes(box).values():
        sight = best_sight(scene, None)
        for main in sight.there.main:
            area = sight.there.areas[main]
            seen = seen_of_face(sight, sight.there, main, np.zeros(3))
            assert seen.is_empty or shapely.covers(area.buffer(1e-6), seen)
            if seen.is_empty or seen.area > 0.999 * area.area:
                continue
            x, y = shapely.get_coordinates(shapely.maximum_inscribed_circle(seen, tolerance=0.3))[0]
            p, q, r = sight.there.planes[main]
            depth = depth_at(sight.new, np.array([[x, y]]), sight.shift)[0]
            assert depth <= p * x + q * y + r + BEHIND + 1e-6


def test_a_layer_shows_where_the_next_one_lies_and_no_brace(assembled: Callable[..., Assembled]) -> None:
    """A brace is glued to the underside: its line on the upper face was taken for its place, on a step that has none."""
    laid = scenes(assembled(BRACED, "stair"))["act:1:2"]
    assert [mark.name for mark in laid.before[-1].part.marks].count("seat of a brace") == 3
    assert len(look(laid, View(28.0, 34.0)).there_marks) == 2, "its front edge, and what it covers"
