"""A buttress and a wall with a door, put upside down by the turn of their edges."""

from pathlib import Path

import pytest

from publisher.basics import Finding
from tests.joints.checks.test_stops_short import BANK
from tests.reference.solids import build

ID = "joints/stands-on-its-head"

CELL = """sizes: {{board: 5 mm}}
parts:
  floor: {{name: Floor, board: foam, shape: rectangle, with: {{width: 120 mm, height: 90 mm}}}}
  wall: {{name: Wall, board: foam, shape: wall_panel, with: {{width: 120 mm, height: 60 mm}}}}
  cross:
    name: Cross wall
    board: foam
    shape: wall_panel
    with: {{width: 50 mm, height: 60 mm}}
    openings: {{{opening}}}
assembly:
  cell:
    panels: {{floor: floor, wall: wall, cross: cross}}
    lies_on_table: floor
    joins:
      - {{place: wall, stands_on: floor, edge: bottom, at: [60 mm, 60 mm]}}
      - {{place: cross, stands_on: wall, edge: left, at: [60 mm, 30 mm], turn: {turn} deg}}
"""
DOOR = "gap: {kind: door, width: 20 mm, height: 40 mm}"
HOLE = "gap: {kind: window, width: 20 mm, height: 40 mm, sill: 10 mm}"


def found(text: str, folder: Path) -> list[Finding]:
    return [f for f in build(text, folder).findings if f.check == ID]


@pytest.mark.keeps(ID)
def test_what_stands_on_its_foot_passes(tmp_path: Path) -> None:
    assert not found(BANK.format(up=30), tmp_path)
    assert not found(CELL.format(opening=DOOR, turn=270), tmp_path)


def test_a_wall_that_looks_the_same_both_ways_up_may_stand_either_way(tmp_path: Path) -> None:
    assert not found(CELL.format(opening=HOLE, turn=90), tmp_path)


@pytest.mark.breaks(ID)
def test_a_buttress_upside_down_is_told_how_to_turn(tmp_path: Path) -> None:
    text = BANK.format(up=30).replace("turn: 270 deg", "turn: 90 deg")
    (one,) = found(text, tmp_path)
    assert one.message == "prop of bank stands on its head"
    assert one.hint == "turn it by 180 deg: turn: 270 deg"
    assert one.place is not None
    lines = (tmp_path / "piece" / "spec.yaml").read_text(encoding="utf-8").splitlines()
    assert "place: prop" in lines[one.place.line - 1]


@pytest.mark.breaks(ID)
def test_a_door_that_hangs_from_above_is_found(tmp_path: Path) -> None:
    (one,) = found(CELL.format(opening=DOOR, turn=90), tmp_path)
    assert one.message == "cross of cell stands on its head"
