"""One picture: what stands thin, what is added thick, held off along its way in, a small joint larger."""

from dataclasses import replace

import numpy as np
import pytest

from publisher.joints.act_pictures.details import CIRCLE
from publisher.joints.act_pictures.picture import ACT_HIGH, ACT_WIDE, _counted
from publisher.joints.act_pictures.scene import ActLabel
from publisher.joints.assembled import Assembled
from tests.joints.act_pictures.conftest import drawn, lines, scenes


def test_a_picture_fits_its_box_and_has_each_kind_of_line(box: Assembled) -> None:
    for drawing in drawn(box).values():
        assert 30.0 < drawing.width <= ACT_WIDE and 30.0 < drawing.height <= ACT_HIGH
        assert {"there", "there_contour", "added", "added_contour", "guide", "cue", "head"} <= {
            line.weight for line in drawing.lines
        }


def test_arrow_and_guide_lines_run_down_to_what_lies_on_the_bench(box: Assembled) -> None:
    """The walls go in level; one cannot push so on a bench: the box lies on its front, and they come from above."""
    for drawing in drawn(box).values():
        (shaft,) = [line for line in lines(drawing, "cue") if len(line) == 2]
        high, low = sorted(shaft, key=lambda point: -float(point[1]))
        assert abs(float(high[0] - low[0])) < 0.01
        tips = [head[0] for head in lines(drawing, "head") if abs(float(head[0][0] - low[0])) < 0.01]
        assert [float(tip[1]) < float(low[1]) for tip in tips] == [True]
        for line in lines(drawing, "guide"):
            assert np.ptp(line[:, 0]) < 0.01 < np.ptp(line[:, 1])


def test_a_small_joint_is_drawn_larger_in_a_ringed_circle(box: Assembled) -> None:
    found = drawn(box)
    rings = [line for line in lines(found["act:1:1"], "ring") if np.allclose(line[0], line[-1])]
    radii = sorted(float(np.ptp(line[:, 0]) / 2) for line in rings)
    assert len(radii) == 2 and radii[1] == pytest.approx(CIRCLE, abs=0.05) and radii[0] < 0.6 * CIRCLE
    assert len(lines(found["act:2:1"], "ring")) == 1, "a lid lies on whole edges: only the axis of the sign for tipping"


def test_a_label_of_several_may_stand_on_any_of_them(box: Assembled) -> None:
    walls = next(scene for scene in scenes(box).values() if len(scene.added) > 1)
    one = walls.added[0]
    twins = (one, replace(one, name="twin"))
    assert _counted(ActLabel("2 × A", one.name), twins) == {one.name, "twin"}
    assert _counted(ActLabel("1 × A", one.name), twins) == {one.name}  # the other one is not counted with it
    assert _counted(ActLabel("tape", one.name), twins) == {one.name}


def test_lines_from_labels_are_drawn(box: Assembled) -> None:
    """Every label that stands off what it names has its line."""
    assert any(lines(drawing, "leader") for drawing in drawn(box).values())
