"""A true design is never refused for the tool's own words: panels with bevels of any size, on papers small and large."""

from collections.abc import Callable
from pathlib import Path

import pytest

from tests.whole.conftest import Run

SPEC = """\
format: 2
title: Bay
version: 1.0.0
designer: Ebbwater Patterns
licence: CC-BY-NC-4.0
summary: Three walls of a bay.
use: trace
boards:
  foam: {{thickness: 5 mm, thickness_spread: 0.2 mm, faces: bare, sheets: [297 x 420 mm], knife_gap: 1 mm, edge_margin: 3 mm, grain: none}}
parts:
  wall: {{name: Wall, board: foam, shape: wall_panel, trace_allowance: 0.4 mm, with: {{width: {width} mm, height: {height} mm}}}}
  left: {{name: Left end, board: foam, shape: wall_panel, trace_allowance: 0.4 mm, with: {{width: {width} mm, height: {height} mm}}}}
  right: {{name: Right end, board: foam, shape: wall_panel, trace_allowance: 0.4 mm, with: {{width: {width} mm, height: {height} mm}}}}
assembly:
  bay:
    panels: {{front: wall, west: left, east: right}}
    stands_on: front.bottom
    joins:
      - {{edges: [front.right, east.left], joint: mitre, corner: 120 deg}}
      - {{edges: [front.left, west.right], joint: mitre, corner: 120 deg}}
"""


@pytest.mark.parametrize(("width", "height", "paper"), [(60, 110, "a4"), (90, 50, "letter"), (24, 96, "a3")])
def test_bevelled_walls_of_many_sizes_are_built(
    publisher: Callable[..., Run], tmp_path: Path, width: int, height: int, paper: str
) -> None:
    folder = tmp_path / "bay"
    folder.mkdir()
    (folder / "spec.yaml").write_text(SPEC.format(width=width, height=height), encoding="utf-8")
    run = publisher("build", folder, "--paper", paper, "--out", tmp_path / "out")
    assert run.code == 0, run.err
    assert "pages/" not in run.err
    assert "proved" in run.out
