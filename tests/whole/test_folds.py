"""A box folded from one strip, from the spec to proved packs on both papers."""

import json
from collections.abc import Callable
from pathlib import Path

import pypdf

from tests.whole.conftest import Run

SPEC = """\
format: 2
title: Toll box
version: 1.0.0
designer: Ebbwater Patterns
licence: CC-BY-NC-4.0
summary: A box of {box.height} whose four walls are one strip.
use: trace
sizes: {board: 5 mm, long: 60 mm, wide: 30 mm}
boards:
  foam: {thickness: board, thickness_spread: 0.2 mm, faces: paper_both, paper: 0.3 mm, sheets: [20 x 30 in], knife_gap: 1 mm}
parts:
  front: {name: Front, board: foam, shape: wall_panel, trace_allowance: 0.4 mm, with: {width: long, height: 40 mm}}
  side: {name: Side, board: foam, shape: wall_panel, trace_allowance: 0.4 mm, with: {width: wide, height: 40 mm}}
assembly:
  box:
    panels: {front: front, right: side, back: front, left: side}
    stands_on: front.bottom
    joins:
      - {edges: [front.right, right.left], joint: fold, corner: 90 deg}
      - {edges: [right.right, back.left], joint: fold, corner: 90 deg}
      - {edges: [back.right, left.left], joint: fold, corner: 90 deg}
      - {edges: [left.right, front.left], joint: mitre}
steps:
  - {title: Cut the strip, stage: cut, say: Cut it., parts: [front, side], picture: {part: front}}
  - {title: Fold it, stage: glue, say: Fold it., picture: {whole: box}}
"""


def build(text: str, tmp_path: Path, publisher: Callable[..., Run]) -> tuple[Run, Path]:
    folder = tmp_path / "toll-box"
    folder.mkdir()
    (folder / "spec.yaml").write_text(text)
    return publisher("build", folder, "--out", tmp_path / "out"), tmp_path / "out" / "toll-box"


def test_a_folded_box_is_proved_on_both_papers(tmp_path: Path, publisher: Callable[..., Run]) -> None:
    run, out = build(SPEC, tmp_path, publisher)
    assert run.code == 0, run.err
    assert "A4 paper" in run.out and "Letter paper" in run.out and run.out.count("proved (") == 2
    facts = json.loads((out / "toll-box-1.0.0-foam-5mm-a4.json").read_text())
    (piece,) = facts["parts"]
    assert (piece["letter"], piece["name"], piece["count"]) == ("A", "Front + side", 1)
    assert sorted({edge["to"][0] for edge in piece["outline"][0]["edges"]}) == [0, 60, 90, 150, 180]
    # joints know the parts in their places
    assert next(f["value"] for f in facts["facts"] if f["name"] == "box.height") == 40
    for paper, wide in (("a4", "10.0 mm (0.39 in)"), ("letter", "0.39 in (10.0 mm)")):
        pages = pypdf.PdfReader(out / f"toll-box-1.0.0-foam-5mm-{paper}.pdf").pages
        words = " ".join(" ".join(page.extract_text() for page in pages).split())
        assert words.count("fold 90°") == 3
        assert f"V-groove from inside, {wide} wide" in words
    assert 'id="fold"' in (out / "cut-files/standard/part-a-front_folded.svg").read_text()


def test_a_ring_of_folds_and_bare_foam_are_told(tmp_path: Path, publisher: Callable[..., Run]) -> None:
    text = SPEC.replace("joint: mitre", "joint: fold").replace("paper_both, paper: 0.3 mm", "bare")
    run, out = build(text, tmp_path, publisher)
    assert run.code == 1
    assert "spec.yaml:22:" in run.err and "closes a ring" in run.err and "bare foam breaks" in run.err
    assert not out.exists()
