"""A layer that is the same when it is turned has a letter, and the one below the same: where what it carries tells the ways apart."""

from pathlib import Path

import pytest

from publisher import api
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
  low: {name: Low, board: foam, shape: rectangle, trace_allowance: 0.4 mm, with: {width: 100 mm, height: 60 mm}}
  middle: {name: Middle, board: foam, shape: rectangle, trace_allowance: 0.4 mm, with: {width: 80 mm, height: 60 mm}}
  high: {name: High, board: foam, shape: rectangle, trace_allowance: 0.4 mm, with: {width: 60 mm, height: 60 mm}}
assembly:
  pile: {stack: [%s]}
"""
STEPPED = "{part: low}, {part: middle, shift: [20 mm, 0 mm]}, {part: high, shift: [%s mm, 0 mm]}"


def turned(folder: Path, rows: str) -> dict[str, list[Mark]]:
    """Return the marks that say which way round, by part."""
    (folder / "spec.yaml").write_text(PILE % rows)
    design = work_out(api.read(folder))
    parts = as_glued(design, make_parts(design)[0])
    own = {part.id: [m for m in part.marks if m.name == "this way round on the layer below"] for part in parts}
    return {part: marks for part, marks in own.items() if marks}


def test_the_letter_lies_over_the_same_letter(tmp_path: Path) -> None:
    """The middle layer of 80 × 60 mm lies 20 mm to the right; its letter stands 5 mm inside one of its short sides, 15 mm from what it
    carries or, on the other side, under it: it stands at the free side."""
    found = turned(tmp_path, STEPPED % "20")
    assert set(found) == {"low", "middle"}
    (low,), (middle,) = found["low"], found["middle"]
    assert low.text == middle.text == "a"
    (x, y), (on_x, on_y) = middle.path.points[0], low.path.points[0]
    assert (on_x, on_y) == pytest.approx((x + 20.0, y))
    assert (x, y) == pytest.approx((5.0, 30.0))


@pytest.mark.parametrize(
    "rows",
    [
        pytest.param(STEPPED % "10", id="carries the next in its middle"),
        pytest.param("{part: low}, {part: middle, shift: [20 mm, 0 mm]}", id="carries nothing"),
        pytest.param("{part: low, count: 3}, {part: high, shift: [20 mm, 0 mm]}", id="lies on its own kind"),
    ],
)
def test_none_stands_where_every_way_is_as_true(rows: str, tmp_path: Path) -> None:
    assert turned(tmp_path, rows) == {}
