"""What a brush gets at."""

from collections.abc import Callable

import pytest
import shapely

from publisher.joints.building import reach
from publisher.joints.building.reach import BRUSH_REACH, closed_in

BOOKS = """
sizes: {{board: 5 mm}}
parts:
  floor: {{name: Floor, board: foam, shape: wall_panel, with: {{width: 200 mm, height: 200 mm}}}}
  wall: {{name: Wall, board: foam, shape: wall_panel, with: {{width: 150 mm, height: 100 mm}}}}
assembly:
  shelf:
    panels: {{floor: floor, one: wall, other: wall}}
    lies_on_table: floor
    joins:
      - {{place: one, stands_on: floor, edge: bottom, at: [100 mm, 100 mm]}}
      - {{place: other, stands_on: floor, edge: bottom, at: [100 mm, {at} mm]}}
"""


@pytest.mark.parametrize(("at", "gap"), [(100 - 5 - 15, 15.0), (100 - 5 - 40, None)])
def test_a_face_close_before_another_one(assembled: Callable, at: int, gap: float | None) -> None:
    subject = assembled(BOOKS.format(at=at))
    one, other = closed_in(subject, "shelf", ("floor", "one", "other"), ["wall"])
    assert other.by == ""  # it looks to the open
    assert one.by == ("" if gap is None else "other")
    assert gap is None or gap <= one.gap <= gap + BRUSH_REACH / 5.0
    assert [found.by for found in closed_in(subject, "shelf", ("floor", "one"), ["wall"])] == [""]


def test_of_a_large_face_spots_lie_all_over() -> None:
    """They were those of its lowest rows alone."""
    spots, apart = reach._spots(shapely.box(0.0, 0.0, 600.0, 400.0))
    assert apart > reach.LOOK_APART and 300 < len(spots) <= reach.MOST_SPOTS
    assert spots.max(axis=0)[1] > 400.0 - apart and spots.min(axis=0)[1] < apart
    small, near = reach._spots(shapely.box(0.0, 0.0, 60.0, 60.0))
    assert (near, len(small)) == (reach.LOOK_APART, 25)
