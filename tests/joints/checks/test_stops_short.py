"""Boards that end a little before what they were to reach: a foot over its floor, a roof over a wall, a floor between walls."""

from pathlib import Path

import pytest

from publisher.basics import Finding
from tests.reference.solids import build

BANK = """sizes: {{board: 5 mm}}
parts:
  base: {{name: Base, board: foam, shape: rectangle, with: {{width: 120 mm, height: 70 mm}}}}
  wall: {{name: Wall, board: foam, shape: wall_panel, with: {{width: 120 mm, height: 70 mm}}}}
  buttress: {{name: Buttress, board: foam, shape: buttress, with: {{foot: 26 mm, head: 12 mm, height: 60 mm}}}}
assembly:
  bank:
    panels: {{base: base, wall: wall, prop: buttress}}
    lies_on_table: base
    joins:
      - {{place: wall, stands_on: base, edge: bottom, at: [60 mm, 50 mm]}}
      - {{place: prop, stands_on: wall, edge: back, at: [60 mm, {up} mm], turn: 270 deg}}
"""

STOREY = """sizes: {{board: 5 mm}}
parts:
  wall: {{name: Wall, board: foam, shape: wall_panel, with: {{width: 100 mm, height: 70 mm}}}}
  floor: {{name: Floor, board: foam, shape: rectangle, with: {{width: {wide} mm, height: 60 mm}}}}
assembly:
  store:
    panels: {{front: wall, right: wall, back: wall, left: wall, floor: floor}}
    stands_on: front.bottom
    corners: equal
    joins:
      - {{edges: [front.right, right.left], joint: mitre}}
      - {{edges: [right.right, back.left], joint: mitre}}
      - {{edges: [back.right, left.left], joint: mitre}}
      - {{edges: [left.right, front.left], joint: mitre}}
      - {{place: floor, stands_on: back, face: inside, edge: top, at: [50 mm, 40 mm], turn: 180 deg}}
"""

STALL = """sizes: {{board: 5 mm}}
parts:
  floor: {{name: Floor, board: foam, shape: rectangle, with: {{width: 100 mm, height: 80 mm}}}}
  wall: {{name: Wall, board: foam, shape: wall_panel, with: {{width: 80 mm, height: 60 mm}}}}
  knee: {{name: Knee, board: foam, shape: knee_brace, with: {{run: 25 mm, drop: 25 mm}}}}
  roof: {{name: Roof, board: foam, shape: rectangle, with: {{width: 100 mm, height: 60 mm}}}}
assembly:
  stall:
    panels: {{floor: floor, wall: wall, knee: knee, roof: roof}}
    lies_on_table: floor
    joins:
      - {{place: wall, stands_on: floor, edge: bottom, at: [50 mm, 40 mm]}}
      - {{place: roof, rests_on: [wall.top]}}
      - {{place: knee, stands_on: wall, edge: core, at: [40 mm, {up} mm], turn: {turn} deg}}
"""


def found(text: str, folder: Path, check: str) -> list[Finding]:
    return [f for f in build(text, folder).findings if f.check == check]


@pytest.mark.keeps("joints/stops-short")
@pytest.mark.parametrize("up", [30, 36, 30.5])
def test_a_foot_on_its_floor_one_that_ends_a_board_over_it_and_play_pass(tmp_path: Path, up: float) -> None:
    assert not found(BANK.format(up=up), tmp_path, "joints/stops-short")


@pytest.mark.breaks("joints/stops-short")
@pytest.mark.parametrize("up", [32, 33, 35])
def test_a_buttress_that_ends_over_its_floor_is_found(tmp_path: Path, up: float) -> None:
    (one,) = found(BANK.format(up=up), tmp_path, "joints/stops-short")
    assert one.value == pytest.approx(up - 30)
    assert f"prop.bottom of bank ends up to {up - 30}.00 mm" in one.message
    assert "before base, and nothing joins the two" in one.message
    assert one.place is not None
    assert one.place.line > 1


@pytest.mark.parametrize(("wide", "edges"), [(90, ()), (89, ()), (85, ("right", "left")), (70, ())])
def test_a_floor_that_was_cut_too_short_hangs_between_its_walls(
    tmp_path: Path, wide: float, edges: tuple[str, ...]
) -> None:
    told = [f.message for f in found(STOREY.format(wide=wide), tmp_path, "joints/stops-short")]
    assert len(told) == len(edges)
    assert all(any(f"floor.{edge} of store" in message for message in told) for edge in edges)


@pytest.mark.keeps("joints/props-nothing")
def test_a_knee_under_the_roof_props_it(tmp_path: Path) -> None:
    assert not found(STALL.format(up=47.5, turn=270), tmp_path, "joints/props-nothing")


@pytest.mark.breaks("joints/props-nothing")
@pytest.mark.parametrize(("up", "turn"), [(47.5, 90), (44.5, 270), (30, 270)])
def test_a_knee_upside_down_or_too_low_props_nothing(tmp_path: Path, up: float, turn: float) -> None:
    (one,) = found(STALL.format(up=up, turn=turn), tmp_path, "joints/props-nothing")
    assert "knee.top of stall lies against nothing" in one.message
