"""Walls cut from the templates of a box, of thicker board: where they stand, by hand."""

from pathlib import Path

import numpy as np
import pytest

from publisher.joints.panels import boards_of, corners_of, foot_of, of_thicker_board, place_panels, thicker_board
from tests.reference.solids import Built, build

BOX = """
sizes: {{board: 5 mm}}
parts:
  long: {{name: Long, board: foam, shape: wall_panel, with: {{width: 100 mm, height: 40 mm}}}}
  short: {{name: Short, board: foam, shape: wall_panel, with: {{width: 60 mm, height: 40 mm}}}}
assembly:
  box:
    panels: {{front: long, right: short, back: long, left: short}}
    stands_on: front.bottom
    joins:
      - {{edges: [front.right, right.left], {first}}}
      - {{edges: [right.right, back.left], {second}}}
      - {{edges: [back.right, left.left], {third}}}
      - {{edges: [left.right, front.left], {fourth}}}
"""
LONG_RUN = {"first": "front", "second": "back", "third": "back", "fourth": "front"}
EACH_RUNS = {"first": "front", "second": "right", "third": "back", "fourth": "left"}
SHORTS = {"first": "right", "second": "right", "third": "left", "fourth": "left"}


def box(folder: Path, joint: str, names: dict[str, str]) -> Built:
    made = build(BOX.format(**{place: f"joint: {joint.format(name)}" for place, name in names.items()}), folder)
    assert made.parts, [str(found) for found in made.findings]
    return made


def outside(made: Built, by: float) -> list[float]:
    """How wide and deep the box is of board thicker by so much."""
    found = place_panels(*of_thicker_board(made.design.panels[0], made.parts, "foam", by))
    assert not found.unplaced
    low_x, low_y, high_x, high_y = foot_of(boards_of(found.boards)).bounds
    return [high_x - low_x, high_y - low_y]


@pytest.mark.parametrize("by", [-0.6, 0.0, 0.4])
@pytest.mark.parametrize(
    ("joint", "names", "grows"),
    [
        ("mitre", LONG_RUN, (0.0, 0.0)),
        ("butt, runs_through: {0}", LONG_RUN, (0.0, 2.0)),
        ("butt, runs_through: {0}", EACH_RUNS, (1.0, 1.0)),
        ("tab_and_slot, tabs_on: {0}, tabs: 1, inset: 10 mm, play: 0.3 mm", SHORTS, (0.0, 2.0)),
    ],
)
def test_a_box_is_as_large_as_its_parts_and_the_boards_that_they_stand_against(
    tmp_path: Path, joint: str, names: dict[str, str], grows: tuple[float, float], by: float
) -> None:
    assert outside(box(tmp_path, joint, names), by) == pytest.approx([100.0 + grows[0] * by, 60.0 + grows[1] * by])


def test_tabs_stay_in_the_middle_of_their_slots(tmp_path: Path) -> None:
    made = box(tmp_path, "tab_and_slot, tabs_on: {0}, tabs: 1, inset: 10 mm, play: 0.3 mm", SHORTS)
    found = place_panels(*of_thicker_board(made.design.panels[0], made.parts, "foam", 0.4))
    right = found.panel("right")
    assert right is not None
    xs = [right.frame.point((0.0, 0.0), depth)[0] for depth in (0.0, 5.4)]
    assert np.mean(xs) == pytest.approx(found.panels[0].frame.point((100.0, 0.0), 0.0)[0] - 12.5)


def test_other_boards_stay_as_they_are(tmp_path: Path) -> None:
    made = box(tmp_path, "mitre", LONG_RUN)
    assert thicker_board(made.parts, "card", 0.4) == made.parts
    assert thicker_board(made.parts, "foam", 0.4)["long"].thickness == pytest.approx(5.4)
    low, high = (np.ptp(corners_of(one["long"])[:, 2]) for one in (made.parts, thicker_board(made.parts, "foam", 0.4)))
    assert high - low == pytest.approx(0.4)
