"""Braces as parts of a design: board, letter, count, and what keeps them from being one."""

from collections.abc import Callable
from pathlib import Path

import pytest

from publisher.brief import read_brief
from publisher.design import Design, work_out

SPEC = """\
format: 2
title: Steps
version: 1.0.0
use: trace
sizes: {board: 5 mm}
boards: {foam: {thickness: board, sheets: [20 x 30 in]}, card: {thickness: 2 mm, material: card, sheets: [20 x 30 in]}}
parts:
  %s: {name: Step, board: foam, shape: rectangle, trace_allowance: 0.4 mm, with: {width: 90 mm, height: 40 mm}}
assembly:
  stair: {brace: {run: 40 mm, drop: 20 mm, under: [4]%s}, stack: [{part: %s, count: 4, turn: 20 deg}]}
  pair: {things: {one: {assembly: stair, at: [0 mm, 0 mm]}, other: {assembly: stair, at: [300 mm, 0 mm]}}}
steps: [{title: Glue, stage: glue, say: x, parts: [stair_brace]}]
"""

Work = Callable[..., Design]


@pytest.fixture
def worked(tmp_path: Path) -> Work:
    def work(more: str = "", step: str = "step") -> Design:
        folder = tmp_path / "steps"
        folder.mkdir(exist_ok=True)
        (folder / "spec.yaml").write_text(SPEC % (step, more, step))
        brief = read_brief(folder)
        assert brief.findings == ()
        return work_out(brief)

    return work


def test_a_brace_is_a_part_of_the_board_of_its_steps(worked: Work) -> None:
    design = worked()
    assert design.findings == ()
    brace = design.parts[-1]
    assert (brace.id, brace.letter, brace.board, brace.thickness) == ("stair_brace", "B", "foam", 5.0)
    assert [(p.name, p.value) for p in brace.parameters] == [("run", 40.0), ("drop", 20.0)]
    assert (brace.count, brace.trace_allowance) == (2, 0.4)  # one for each time that the stair is built


def test_a_brace_may_be_of_another_board(worked: Work) -> None:
    brace = worked(", board: card").parts[-1]
    assert (brace.board, brace.thickness) == ("card", 2.0)


def test_a_board_that_is_not_there_is_found(worked: Work) -> None:
    (found, unknown) = worked(", board: cart").findings
    assert (found.check, unknown.check) == ("design/unknown-board", "design/unknown-part")
    assert "“cart”" in found.message and "card" in found.hint


def test_the_name_of_the_braces_is_taken_by_no_other_part(worked: Work) -> None:
    (found,) = worked("", "stair_brace").findings
    assert found.check == "design/name-taken"
    assert "“stair_brace”" in found.message
