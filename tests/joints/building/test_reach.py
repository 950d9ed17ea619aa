"""What a brush gets at."""

from collections.abc import Callable

import pytest

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
