"""What is pencilled on a face that looks away is never drawn on the face that is seen: dashed, it stands beside the part."""

from dataclasses import replace

import numpy as np
import shapely

from publisher.basics import Box
from publisher.joints.act_pictures.paper_grid import grid_over
from publisher.joints.act_pictures.picture import act_picture
from publisher.joints.act_pictures.planned import best_sight
from publisher.joints.act_pictures.scene import ActScene
from publisher.joints.act_pictures.signs import Sheet
from publisher.joints.act_pictures.signs_behind import BEHIND_LONG, put_label_behind, put_up_behind
from publisher.joints.assembled import Assembled
from publisher.joints.drawings import Sketch
from tests.joints.act_pictures.conftest import scenes

PAPER = Box(0.0, 0.0, 70.0, 50.0)
PART = shapely.box(15.0, 15.0, 45.0, 35.0)


def sheet() -> Sheet:
    return Sheet(Sketch(), grid_over(PAPER), [])


def test_an_arrow_of_a_hidden_face_is_dashed_and_beside_its_part() -> None:
    made = sheet()
    assert put_up_behind(made, np.array([0.0, 1.0]), PART, PART, word=True)
    (shaft,) = made.sketch.lines["behind"]
    (tip,) = made.sketch.lines["head"]
    assert shaft.distance(PART) > 0.0 and tip.distance(PART) > 0.0 and shaft.distance(PART) < 5.0
    assert 0.6 * BEHIND_LONG < shaft.length < BEHIND_LONG
    ((word, x, y),) = made.sketch.labels
    assert word == "top" and not PART.contains(shapely.Point(x, y)) and "leader" not in made.sketch.lines


def test_it_is_left_out_where_every_place_beside_belongs_to_other_parts() -> None:
    made = sheet()
    assert not put_up_behind(made, np.array([0.0, 1.0]), PART, shapely.box(*PAPER.sides), word=True)
    assert not made.sketch.lines and not made.sketch.labels


def test_a_letter_of_a_hidden_face_stands_beside_with_a_dashed_line_to_its_place() -> None:
    made = sheet()
    at = shapely.Point(20.0, 16.0)
    assert put_label_behind(made, "c", at, PART)
    ((_, x, y),) = made.sketch.labels
    (line,) = made.sketch.lines["behind"]
    assert not PART.contains(shapely.Point(x, y)) and line.distance(at) < 0.01 and line.length > 3.0


def _drawn(scene: ActScene) -> Sketch:
    return act_picture(scene, best_sight(scene, None))


def test_the_gable_that_lies_on_its_outside_has_no_sign_on_its_inside(box: Assembled) -> None:
    """Whose outside bears a pattern; where both faces are alike its sign may be on either."""
    scene = scenes(box)["act:1:1"]
    differ, alike = (_drawn(replace(scene, letters=(), alike=frozenset(ids))) for ids in ((), ("side", "end")))
    assert differ.lines["behind"] and "behind" not in alike.lines


def test_a_letter_on_the_inside_is_dashed_where_the_outside_is_seen(box: Assembled) -> None:
    scene = scenes(box)["act:2:1"]
    assert scene.letters
    up, down = np.array([0.0, 0.0, 1.0]), np.array([0.0, 0.0, -1.0])
    seen, hidden = (
        _drawn(replace(scene, letters=tuple(replace(one, new_looks=looks) for one in scene.letters)))
        for looks in (up, down)
    )
    assert len(hidden.lines.get("behind", ())) > len(seen.lines.get("behind", ()))
