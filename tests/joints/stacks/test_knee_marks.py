"""Where braces are glued, on the template of the step: the same place on all, with the steps where not all have one."""

from pathlib import Path

import pytest

from publisher import api
from publisher.basics import Purpose
from publisher.design import work_out
from publisher.geometry import Part, make_parts
from publisher.joints import as_glued
from publisher.joints.stacks.knee_marks import _ranges

STAIR = """format: 2
title: Stair
version: 1.0.0
use: trace
sizes: {board: 5 mm}
boards: {foam: {thickness: board, sheets: [20 x 30 in]}}
parts:
  step:
    {name: Step, board: foam, shape: spiral_stair_layer, trace_allowance: 0.4 mm,
     with: {core_radius: 30 mm, reach: 92 mm, step_angle: 40 deg, turn: 20 deg}}
assembly:
  stair: {brace: {run: 40 mm, drop: 20 mm, under: %s}, stack: [{part: step, count: 12, turn: 20 deg}]}
"""


def glued(folder: Path, under: str) -> dict[str, Part]:
    (folder / "spec.yaml").write_text(STAIR % under)
    design = work_out(api.read(folder))
    return {part.id: part for part in as_glued(design, make_parts(design)[0])}


def test_braces_are_counted_and_their_seat_is_on_the_step(tmp_path: Path) -> None:
    parts = glued(tmp_path, "[6, 7, 8, 11]")
    assert parts["stair_brace"].count == 4
    own = [mark for mark in parts["step"].marks if mark.name == "seat of a brace"]
    assert [mark.text for mark in own] == ["", "B, below steps 6-8, 11", "prick its corners through"]
    xs, ys = zip(*own[0].path.points, strict=True)
    # its own step spans from 0° to 40°, the one below to 20°: the brace runs out from the core at 30°
    assert (min(xs), max(xs)) == pytest.approx((30 * 0.866 - 1.25, 70 * 0.866 + 1.25), abs=0.8)
    assert (min(ys), max(ys)) == pytest.approx((30 * 0.5 - 2.17, 70 * 0.5 + 2.17), abs=0.8)
    assert own[0].purpose is Purpose.LAP


def test_where_no_step_is_weak_no_brace_is_cut(tmp_path: Path) -> None:
    parts = glued(tmp_path, "weak")
    assert "stair_brace" not in parts
    assert not [mark for mark in parts["step"].marks if mark.name == "seat of a brace"]


def test_numbers_that_follow_each_other_are_a_range() -> None:
    assert _ranges((9, 4, 8, 7, 12)) == "4, 7-9, 12"
