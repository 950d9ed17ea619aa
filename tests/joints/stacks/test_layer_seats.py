"""Where the next layer lies is drawn on the one below: once, where nothing else says it."""

from pathlib import Path

import pytest

from publisher import api
from publisher.basics import LineKind
from publisher.design import work_out
from publisher.geometry import Mark, make_parts
from publisher.joints import as_glued

PILE = """format: 2
title: Pile
version: 1.0.0
use: trace
sizes: {board: 5 mm}
boards: {foam: {thickness: board, sheets: [20 x 30 in]}}
parts:
  wide: {name: Wide, board: foam, shape: rectangle, trace_allowance: 0.4 mm, with: {width: 100 mm, height: 60 mm}}
  narrow: {name: Narrow, board: foam, shape: rectangle, trace_allowance: 0.4 mm, with: {width: 70 mm, height: 60 mm}}
assembly:
  pile: {stack: [%s]}
"""


def seats(folder: Path, rows: str) -> dict[str, list[Mark]]:
    """Return the marks of seats by part."""
    (folder / "spec.yaml").write_text(PILE % rows)
    design = work_out(api.read(folder))
    parts = as_glued(design, make_parts(design)[0])
    return {part.id: [mark for mark in part.marks if mark.name == "seat of the next layer"] for part in parts}


@pytest.mark.parametrize("copies", [1, 3])
def test_a_shifted_layer_has_its_outline_and_its_letter_on_the_one_below(tmp_path: Path, copies: int) -> None:
    found = seats(tmp_path, f"{{part: wide, count: {copies}}}, {{part: narrow, shift: [30 mm, 0 mm]}}")
    outline, letter = found["wide"]
    assert (outline.kind, outline.path.closed, letter.text) == (LineKind.GLUE, True, "B")
    xs, ys = zip(*outline.path.points, strict=True)
    assert (min(xs), max(xs), min(ys), max(ys)) == pytest.approx((30.0, 100.0, 0.0, 60.0), abs=0.01)
    assert found["narrow"] == []


@pytest.mark.parametrize(
    "rows",
    [
        pytest.param("{part: wide, count: 3}", id="outline on outline"),
        pytest.param("{part: narrow}, {part: wide}", id="covered all over"),
        pytest.param(
            "{part: wide}, {part: narrow}, {part: wide}, {part: narrow, shift: [30 mm, 0 mm]}", id="in two places"
        ),
    ],
)
def test_none_is_drawn_where_it_would_say_nothing_or_too_much(tmp_path: Path, rows: str) -> None:
    assert seats(tmp_path, rows) == {"wide": [], "narrow": []}
