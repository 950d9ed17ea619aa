"""All pictures of a building: each with its name, one view kept, a turn said by a sign."""

from collections.abc import Callable

import numpy as np

from publisher.joints.act_pictures.planned import _turning, best_sight
from publisher.joints.act_pictures.sight import LEAST_SEEN
from publisher.joints.assembled import Assembled
from publisher.joints.drawings import STACK_VIEW, View
from tests.joints.act_pictures.conftest import LID, WALLS, drawn, lines, scenes
from tests.joints.building.conftest import BOX, BRACED


def test_each_act_has_its_picture_and_what_is_laid_first_is_named_in_the_next(box: Assembled) -> None:
    found = drawn(box)
    assert list(found) == ["act:1:1", "act:1:2", "act:2:1"]
    letters = [[label.text for label in drawing.labels if label.text != "top"] for drawing in found.values()]
    assert letters[0][:2] == ["1 × A", "2 × B"] and letters[1][0] == "1 × A" and letters[2][0] == "1 × C"


def test_which_end_is_up_is_said_of_walls_once_for_each_part_and_of_no_lid(box: Assembled) -> None:
    found = drawn(box)
    said = [[label.text for label in drawing.labels].count("top") for drawing in found.values()]
    assert said == [2, 1, 0]
    assert [len(lines(drawing, "head")) for drawing in found.values()] == [1 + 3, 1 + 1, 1 + 1]  # the last is a turn
    assert [scene.tops for scene in scenes(box).values()] == [("front", "left", "right"), ("back",), ()]


def test_a_tipped_box_is_said_by_a_sign(box: Assembled) -> None:
    found = drawn(box)
    assert len(lines(found["act:1:2"], "cue")) == 1, "it still lies as it did"
    assert len(lines(found["act:2:1"], "cue")) == 2, "stood up for its lid"


def test_how_work_is_turned_is_said_by_what_is_done_with_it() -> None:
    """A half turn about a level line, a quarter away from how it stands, back to it, and a turn of the view alone."""
    still, half, quarter = np.eye(3), np.diag([1.0, -1.0, -1.0]), np.array([[1.0, 0, 0], [0, 0, -1.0], [0, 1.0, 0]])
    view, other = View(38.0, 24.0), View(-38.0, 24.0)
    assert _turning(None, (view, still)) == _turning((view, half), (view, half)) == ""
    assert _turning((view, still), (other, still)) == "turn round"
    assert _turning((view, still), (view, half)) == _turning((view, half), (view, still)) == "turn over"
    assert _turning((view, still), (view, quarter)) == "lay down"
    assert _turning((view, quarter), (view, still)) == "stand up"


def test_every_act_is_seen_and_a_view_that_shows_it_is_kept(box: Assembled) -> None:
    for scene in scenes(box).values():
        sight = best_sight(scene, None)
        assert sight.seen >= LEAST_SEEN
        assert best_sight(scene, sight.view).view == sight.view


def test_what_was_seen_as_it_stands_since_is_not_stood_up_again(assembled: Callable[..., Assembled]) -> None:
    """A step that waits shows what it leaves behind upright: before the lid comes nothing is turned any more."""
    cues = {}
    for wait in ("", ", wait: 24 h"):
        walls = f"  - {{title: Walls, say: Do it., stage: glue, adds: [{WALLS}]{wait}}}\n"
        lid = f"  - {{title: Lid, say: Do it., stage: glue, adds: [{LID}]}}\n"
        cues[wait] = len(lines(drawn(assembled(BOX, after=walls + lid))["act:2:1"], "cue"))
    assert list(cues.values()) == [2, 1]


def test_a_brace_is_seen_from_low_down_and_named(assembled: Callable[..., Assembled]) -> None:
    """From as high as layers are looked at, the step over it hides where it goes."""
    subject = assembled(BRACED, "stair")
    scene = list(scenes(subject).values())[-1]
    sight = best_sight(scene, STACK_VIEW)
    assert 0.0 < sight.view.above <= 20.0 and sight.good
    assert "3 × C" in [label.text for label in list(drawn(subject).values())[-1].labels]
