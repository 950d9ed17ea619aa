"""Boards: thickness as measured, and everything else that belongs to them."""

from collections.abc import Callable
from typing import Any

import pytest

FULL = (
    "boards: {foam: {thickness: 3/16 in, thickness_spread: 0.2 mm, faces: paper_both, sheets: [20 x 30 in, 297 x 420 mm], "
    "knife_gap: 1 mm, edge_margin: 3 mm, grain: along}}"
)


def test_a_board(tried: Callable[..., Any]) -> None:
    design = tried(FULL).design
    assert design.findings == ()
    board = design.board("foam")
    assert (board.thickness, board.spread, board.knife_gap, board.edge_margin) == (4.7625, 0.2, 1.0, 3.0)
    assert (board.faces, board.grain) == ("paper_both", "along")
    assert [(s.label, s.width) for s in board.sheets] == [("20 x 30 in", 508.0), ("297 x 420 mm", 297.0)]


def test_grain_keeps_parts_from_lying_askew_unless_they_say_otherwise(tried: Callable[..., Any]) -> None:
    assert {part.turning for part in tried(FULL).design.parts} == {"half"}
    assert {part.turning for part in tried("").design.parts} == {"any"}
    free = "parts: {wall: {board: foam, shape: wall_panel, turning: any}, slab: {board: foam, shape: disc}}"
    assert [part.turning for part in tried(f"{FULL}\n{free}").design.parts] == ["any", "half"]


@pytest.mark.parametrize("thickness", ["0 mm", "-5 mm", "100.1 mm", "board - board"])
def test_a_board_that_cannot_be_is_one_finding(thickness: str, tried: Callable[..., Any]) -> None:
    bad = tried(f"boards: {{foam: {{thickness: {thickness}, sheets: [20 x 30 in]}}}}")
    assert bad.found == ["design/board-thickness"]
    assert bad.design.findings[0].value is not None
    assert bad.design.parts == ()


def test_a_zero_board_from_the_command_line_says_so(tried: Callable[..., Any]) -> None:
    assert tried("", "", (("board", "0 mm"),)).found == ["design/board-thickness"]


def test_a_board_without_a_thickness(tried: Callable[..., Any]) -> None:
    assert tried("boards: {foam: {sheets: [20 x 30 in]}}").found == ["design/board-thickness"]


@pytest.mark.parametrize("field", ["thickness_spread: 3 mm", "edge_margin: -1 mm", "knife_gap: 101 mm"])
def test_measures_that_cannot_be(field: str, tried: Callable[..., Any]) -> None:
    assert tried(f"boards: {{foam: {{thickness: 5 mm, {field}, sheets: [20 x 30 in]}}}}").found == [
        "design/board-measure"
    ]


def test_paper_belongs_to_papered_boards_and_is_thin(tried: Callable[..., Any]) -> None:
    board = "boards: {{foam: {{thickness: 5 mm, faces: {faces}, paper: {paper}, sheets: [20 x 30 in]}}}}"
    good = tried(board.format(faces="paper_one", paper="0.3 mm")).design
    assert (good.findings, good.board("foam").paper) == ((), 0.3)
    assert tried(FULL).design.board("foam").paper == 0.0
    for faces, paper, says in (("bare", "0.3 mm", "the board is bare"), ("paper_both", "1.3 mm", "between 0 and 1.25")):
        (finding,) = tried(board.format(faces=faces, paper=paper)).design.findings
        assert finding.check == "design/board-measure"
        assert says in finding.message
