from collections.abc import Callable
from pathlib import Path

import pytest

from publisher.basics import Finding
from publisher.brief import read_brief
from publisher.pipeline import work

SPEC = """\
format: 2
title: Corner
version: 1.0.0
use: paste
sizes: {board: 5 mm, row: 4 mm}
boards: {foam: {thickness: board, sheets: [20 x 30 in]}}
parts:
  one: {name: One, board: foam, shape: wall_panel, with: {width: 100 mm, height: 60 mm},
        surface: {pattern: brick, with: {length: 12 mm, height: row}}}
  other: {name: Other, board: foam, shape: wall_panel, with: {width: 80 mm, height: 60 mm},
          surface: {pattern: PATTERN, with: {length: 12 mm, height: HEIGHT}}}
assembly:
  corner:
    panels: {front: one, side: other}
    stands_on: front.bottom
    joins: [{edges: [front.right, side.left], joint: mitre}]
"""


@pytest.fixture
def found(tmp_path: Path) -> Callable[[str, str], tuple[Finding, ...]]:
    def run(pattern: str, height: str) -> tuple[Finding, ...]:
        folder = tmp_path / "corner"
        folder.mkdir(exist_ok=True)
        (folder / "spec.yaml").write_text(SPEC.replace("PATTERN", pattern).replace("HEIGHT", height))
        return tuple(f for f in work(read_brief(folder)).findings if f.check.startswith("joints/"))

    return run


@pytest.mark.keeps("joints/rows-do-not-meet")
def test_rows_of_one_height_meet(found: Callable[[str, str], tuple[Finding, ...]]) -> None:
    assert found("brick", "row") == ()


@pytest.mark.breaks("joints/rows-do-not-meet")
def test_rows_of_two_heights_are_found_at_their_join(found: Callable[[str, str], tuple[Finding, ...]]) -> None:
    (finding,) = found("brick", "5 mm")
    assert finding.check == "joints/rows-do-not-meet"
    assert "rows of brick are 4.00 mm (0.16 in) high on front and 5.00 mm (0.20 in) on side" in finding.message
    assert "where front.right meets side.left" in finding.message
    assert finding.place is not None
    assert finding.place.line == 16
