"""Joins of panels that cannot be built: each is told in words, at its line, and nothing is written."""

from collections.abc import Callable
from math import cos, radians, sin
from pathlib import Path

import pytest

from tests.whole.conftest import Run

Publisher = Callable[..., Run]

SPEC = """\
format: 2
title: Boxes
version: 1.0.0
designer: Ebbwater Patterns
licence: CC-BY-NC-4.0
summary: A box with a lid of paper-faced board, and a crate inside it.
use: trace
sizes: {board: 5 mm, long: 120 mm, wide: 80 mm}
boards:
  foam: {thickness: board, thickness_spread: 0.1 mm, faces: paper_both, paper: 0.3 mm, sheets: [20 x 30 in], knife_gap: 1 mm}
parts:
  wall: {name: Wall, board: foam, shape: wall_panel, with: {width: long, height: 60 mm}}
  end: {name: End, board: foam, shape: wall_panel, with: {width: wide, height: 60 mm}}
  rib: {name: Rib, board: foam, shape: wall_panel, with: {width: 100 mm, height: 40 mm}}
  cross_rib: {name: Cross rib, board: foam, shape: wall_panel, with: {width: 60 mm, height: 40 mm}}
assembly:
  box:
    panels: {front: wall, back: wall, left: end, right: end}
    stands_on: front.bottom
    joins:
      - {edges: [front.right, right.left], joint: rabbet, rabbet_on: front}
      - {edges: [right.right, back.left], joint: rabbet, rabbet_on: back}
      - {edges: [back.right, left.left], joint: rabbet, rabbet_on: back}
      - {edges: [left.right, front.left], joint: rabbet, rabbet_on: front}
  crate:
    panels: {one: rib, two: rib, west: cross_rib, east: cross_rib}
    stands_on: one.bottom
    joins:
      - {edges: [one.top, west.bottom], joint: cross_lap, at: [30 mm, 20 mm], play: 0.3 mm}
      - {edges: [one.top, east.bottom], joint: cross_lap, at: [70 mm, 20 mm], play: 0.3 mm}
      - {edges: [two.top, west.bottom], joint: cross_lap, at: [30 mm, 40 mm], play: 0.3 mm}
      - {edges: [two.top, east.bottom], joint: cross_lap, at: [70 mm, 40 mm], play: 0.3 mm}
steps: [{title: Build, stage: glue, say: Glue it., picture: {whole: crate}}]
"""
#: A box of four mitred walls, of which each case spoils one thing.
RING = """\
  tower:
    panels: {front: north, back: south, left: west, right: east}
    stands_on: front.bottom
    joins:
      - {edges: [front.right, right.left], joint: mitre, corner: 90 deg}
      - {edges: [right.right, back.left], joint: mitre, corner: 90 deg}
      - {edges: [back.right, left.left], joint: mitre, corner: 90 deg}
      - {edges: [left.right, front.left], joint: mitre, corner: 90 deg}
"""
WALL = "  {name}: {{with: {{width: {width}, height: 60 mm}}, name: {name} wall, board: foam, shape: wall_panel}}\n"
WALLS = (("north", "long"), ("south", "long"), ("west", "wide"), ("east", "wide"))


def folder_with(text: str, folder: Path) -> Path:
    made = folder / "boxes"
    made.mkdir()
    (made / "spec.yaml").write_text(text, encoding="utf-8")
    return made


def line_of(text: str, part: str) -> int:
    """Return the number of the line that holds some words."""
    return text[: text.index(part)].count("\n") + 1


def test_the_boxes_are_sound(publisher: Publisher, tmp_path: Path) -> None:
    run = publisher("build", folder_with(SPEC, tmp_path), "--paper", "a4", "--out", tmp_path / "out")
    assert run.code == 0, run.err
    assert "error" not in run.err
    assert (tmp_path / "out/boxes/boxes-1.0.0-foam-5mm-a4.pdf").exists()


@pytest.mark.parametrize(
    ("old", "new", "at", "words"),
    [
        ("joint: cross_lap, at: [30 mm, 20 mm]", "joint: cros_lap, at: [30 mm, 20 mm]", "cros_lap", "cross_lap"),
        ("[30 mm, 20 mm], play: 0.3 mm", "[30 mm, 20 mm]", "[30 mm, 20 mm]", "does not say play"),
        ("[30 mm, 20 mm]", "[30 mm]", "at: [30 mm]", "at"),
        ("at: [30 mm,", "at: [130 mm,", "[130 mm, 20 mm]", "is crossed 130 mm from the left end of its edge"),
        ("[70 mm, 20 mm]", "[32 mm, 20 mm]", "[32 mm, 20 mm]", "two panels cross at one place of one.top"),
        (".top,", ".topp,", "[one.topp", "has no edge “topp”"),
        ("[one.top, west.bottom]", "[one.top, one.top]", "[one.top, one.top]", "the edge one.top is joined to itself"),
        ("[front.right, right.left]", "[front.right, front.right]", "[front.right, front.right]", "joined to itself"),
        ("[front.right, right.left]", "[front.right, front.left]", "[front.right, front.left]", "edges of one panel"),
        ("[right.right, back.left]", "[front.right, back.left]", "[front.right, back.left]", "joined twice"),
        ("faces: paper_both, paper: 0.3 mm, ", "", "rabbet_on: front", "keeps the outside paper, and the board foam is bare"),
        ("paper: 0.3 mm, ", "", "rabbet_on: front", "does not say how thick its paper is"),
        ("paper: 0.3 mm", "paper: 3 mm", "paper: 3 mm", "paper is 3"),
        ("rabbet_on: front}", "rabbet_on: back}", "rabbet_on: back}", "“back” is no place of this join"),
        ("joint: rabbet, rabbet_on: front", "joint: rabet, rabbet_on: front", "rabet", "rabbet"),
        ("joint: rabbet, rabbet_on: front", "joint: fold", "joint: fold", "fold"),
    ],
)  # fmt: skip
def test_a_join_that_cannot_be_is_told_at_its_line(
    publisher: Publisher, tmp_path: Path, old: str, new: str, at: str, words: str
) -> None:
    assert old in SPEC
    text = (
        SPEC.replace(old, new) if old in (".top,", "at: [30 mm,") else SPEC.replace(old, new, 1)
    )  # a part has two places
    run = publisher("build", folder_with(text, tmp_path), "--paper", "a4", "--out", tmp_path / "out")
    assert run.code == 1, run.err
    assert words in run.err
    assert f"spec.yaml:{line_of(text, at)}:" in run.err
    assert not (tmp_path / "out").exists()


@pytest.mark.parametrize(
    ("old", "new", "words"),
    [
        ("", "", ""),
        ("front.left], joint: mitre, corner: 90 deg", "front.left], joint: mitre, corner: 80 deg", "stand at 90.00° and not at the 80.00°"),
        ("south: {with: {width: long", "south: {with: {width: long + 3 mm", "left.right and front.left are 3.00 mm apart"),
        ("east: {with: {width: wide", "east: {with: {width: long", "left.right and front.left are 40.00 mm apart"),
    ],
)  # fmt: skip
def test_rings_that_cannot_close(publisher: Publisher, tmp_path: Path, old: str, new: str, words: str) -> None:
    parts = "".join(WALL.format(name=name, width=width) for name, width in WALLS)
    ring = SPEC.replace("assembly:\n", f"{parts}assembly:\n{RING}")
    assert old in ring
    text = ring.replace(old, new, 1)
    run = publisher("check", folder_with(text, tmp_path))
    said = run.err + run.out
    assert run.code == (1 if words else 0), said
    assert words in said
    if words:
        assert "[joints/ring-does-not-close]" in said
        last = line_of(text, "[left.right, front.left], joint: mitre")
        assert f"spec.yaml:{last}:" in said


def test_one_corner_that_is_written_in_a_ring_of_four_lets_the_others_follow(
    publisher: Publisher, tmp_path: Path
) -> None:
    """Walls of 120, 80, 120 and 80 mm with one corner of 80° are a parallelogram: 120 + 80 cos 80° wide, 80 sin 80° deep."""
    parts = "".join(WALL.format(name=name, width=width) for name, width in WALLS)
    ring = RING.replace(", corner: 90 deg", "").replace(
        "front.left], joint: mitre", "front.left], joint: mitre, corner: 80 deg"
    )
    run = publisher("check", folder_with(SPEC.replace("assembly:\n", f"{parts}assembly:\n{ring}"), tmp_path))
    assert run.code == 0, run.err + run.out
    wide, deep = 120 + 80 * cos(radians(80)), 80 * sin(radians(80))
    assert f"{wide:.1f} × {deep:.1f} × 60.0 mm" in run.out
