"""Stairs whose rows say another turn than the notch is cut for."""

from pathlib import Path

import pytest

from publisher.basics import Finding
from tests.reference.solids import build

STAIR = """sizes: {{board: 5 mm}}
parts:
  plinth: {{name: Plinth, board: foam, shape: disc, with: {{radius: 60 mm}}}}
  step:
    name: Step
    board: foam
    shape: spiral_stair_layer
    with: {{core_radius: 25 mm, reach: 60 mm, step_angle: 40 deg, turn: 20 deg, notch: {notch} mm}}
assembly:
  stair:
    stack:
      - {{part: plinth}}
{rows}
"""


def found(rows: str, folder: Path, notch: int = 3) -> list[Finding]:
    text = STAIR.format(rows="\n".join(f"      - {row}" for row in rows.split("; ")), notch=notch)
    return [f for f in build(text, folder).findings if f.check == "joints/notch-elsewhere"]


@pytest.mark.keeps("joints/notch-elsewhere")
@pytest.mark.parametrize(
    "rows",
    [
        "{part: step, count: 6, turn: 20 deg}",
        "{part: step, turn: 7 deg}; {part: step, count: 5, turn: 20 deg}",
        "{part: step, count: 6, turn: -340 deg}",
        "{part: step, count: 3, turn: 20 deg}; {part: step}; {part: step, count: 2, turn: 20 deg}",
    ],
)
def test_steps_at_their_notches_and_a_second_ply_pass(tmp_path: Path, rows: str) -> None:
    assert not found(rows, tmp_path)


def test_steps_without_a_notch_may_be_turned_as_one_likes(tmp_path: Path) -> None:
    assert not found("{part: step, count: 6, turn: 25 deg}", tmp_path, notch=0)


@pytest.mark.breaks("joints/notch-elsewhere")
@pytest.mark.parametrize(
    ("rows", "line"),
    [
        ("{part: step, count: 6, turn: 25 deg}", 1),
        ("{part: step, count: 6, turn: -20 deg}", 1),
        ("{part: step, count: 3, turn: 20 deg}; {part: step, turn: 25 deg}; {part: step, count: 2, turn: 20 deg}", 2),
    ],
)
def test_a_row_that_is_turned_otherwise_is_found_where_it_is_written(tmp_path: Path, rows: str, line: int) -> None:
    (one,) = found(rows, tmp_path)
    assert "whose notch is cut for 20°" in one.message
    assert one.place is not None
    text = (tmp_path / "piece" / "spec.yaml").read_text(encoding="utf-8").splitlines()
    assert text[one.place.line - 1].strip() == f"- {rows.split('; ')[line - 1]}"
