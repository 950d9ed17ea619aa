"""Knee braces, boards' strength and mass, and meeting sizes as the spec writes them."""

from collections.abc import Callable
from pathlib import Path

import pytest

from publisher.brief import read_brief
from publisher.design import Design, work_out

SPEC = """\
format: 2
title: Steps
version: 1.0.0
use: paste
sizes: {board: 5 mm, run: 40 mm}
boards: {foam: {thickness: board, sheets: [20 x 30 in]%s}}
parts: {step: {name: Step, board: foam, shape: rectangle, with: {width: 90 mm, height: 40 mm}}}
assembly:
  stair: {%s stack: [{part: step, count: 4, shift: [20 mm, 0 mm]}]}
meets: {%s}
"""

Work = Callable[..., Design]


@pytest.fixture
def worked(tmp_path: Path) -> Work:
    def work(board: str = "", brace: str = "", meets: str = "deck: stair.height") -> Design:
        folder = tmp_path / "steps"
        folder.mkdir(exist_ok=True)
        (folder / "spec.yaml").write_text(SPEC % (board, brace, meets))
        brief = read_brief(folder)
        assert brief.findings == ()
        return work_out(brief)

    return work


def test_a_board_says_its_strength_and_mass_or_nothing(worked: Work) -> None:
    (said,) = worked(", bending_strength: 0.5, areal_mass: 150").boards
    assert (said.bending_strength, said.areal_mass) == (0.5, 150.0)
    (unsaid,) = worked().boards
    assert (unsaid.bending_strength, unsaid.areal_mass) == (None, None)


@pytest.mark.parametrize("field", ["bending_strength: 0", "areal_mass: -3", "areal_mass: 2000000"])
def test_a_strength_or_mass_that_cannot_be_is_found_with_its_line(worked: Work, field: str) -> None:
    design = worked(f", {field}")
    (found,) = design.findings
    assert found.check == "design/board-measure"
    assert found.place is not None
    assert found.place.line == 6


@pytest.mark.parametrize(
    ("under", "numbers", "weak"),
    [("", (), False), (", under: all", (), False), (", under: weak", (), True), (", under: [9, 3, 9]", (3, 9), False)],
)
def test_a_stack_has_braces_under_all_steps_the_weak_ones_or_those_of_a_list(
    worked: Work, under: str, numbers: tuple[int, ...], weak: bool
) -> None:
    brace = worked(brace=f"brace: {{run: run, drop: run / 2{under}}},").stacks[0].brace
    assert brace is not None
    assert (brace.run, brace.drop, brace.under, brace.weak) == (40.0, 20.0, numbers, weak)
    assert worked().stacks[0].brace is None


def test_a_step_has_a_whole_number_from_1(worked: Work) -> None:
    design = worked(brace="brace: {run: run, drop: 20 mm, under: [0]},")
    assert [f.check for f in design.findings] == ["design/count-range"]
    assert design.stacks[0].brace is None


def test_a_brace_without_length_is_found(worked: Work) -> None:
    design = worked(brace="brace: {run: 0 mm, drop: 20 mm},")
    assert [f.check for f in design.findings] == ["design/brace"]
    assert design.stacks[0].brace is None


def test_meeting_sizes_keep_their_names_and_expressions(worked: Work) -> None:
    (meet,) = worked(meets="deck_height: stair.height + 2 * board").meets
    assert (meet.name, meet.amount.expression, meet.place.line) == ("deck_height", "stair.height + 2 * board", 10)
