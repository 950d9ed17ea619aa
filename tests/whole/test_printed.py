"""Parts shown by half a template, or by their sizes alone: proved from end to end, and fewer pages to print at true size."""

from collections.abc import Callable
from pathlib import Path

from publisher import api
from publisher.pipeline import compose_packs
from tests.whole.conftest import Run

SPEC = """\
format: 2
title: Lock platform
version: 1.0.0
use: trace
sizes: {board: 5 mm}
boards: {foam: {thickness: board, faces: paper_both, sheets: [20 x 30 in]}}
parts:
  base: {name: Base, board: foam, HALF shape: regular_polygon, trace_allowance: 0.4 mm, with: {sides: 8, radius: 130 mm}}
  wall: {name: Wall, board: foam, SIZES shape: wall_panel, count: 2, spare: 1, with: {width: 340 mm, height: 160 mm},
         openings: {gate: {kind: window, head: square, width: 30 mm, height: 50 mm, sill: 20 mm, centre: 80 mm},
                    port: {kind: round_hole, diameter: 12 mm, centre: 250 mm, up: 90 mm}}}
  sill: {name: Sill, board: foam, SIZES shape: rectangle, count: 2, with: {width: 480 mm, height: 30 mm}}
assembly: {platform: {stack: [{part: base, count: 2}]}}
tools: [craft_knife, steel_rule]
steps: [{title: Cut, stage: cut, say: Cut all., parts: [base, wall, sill]}]
"""


def folder(at: Path, half: str = "", sizes: str = "") -> Path:
    at.mkdir()
    (at / "spec.yaml").write_text(SPEC.replace("HALF", half).replace("SIZES", sizes), "utf-8")
    return at


def true_pages(design: Path) -> int:
    (pack,), _ = compose_packs(api.work(api.read(design), ""), ("a4",))
    return sum(page.true_size for page in pack.promises.pages)


def test_half_templates_and_sizes_save_pages(tmp_path: Path) -> None:
    whole = true_pages(folder(tmp_path / "whole"))
    half = true_pages(folder(tmp_path / "half", "printed: half,"))
    both = true_pages(folder(tmp_path / "both", "printed: half,", "printed: sizes,"))
    assert whole > half > both == 2, "the print check, and half of one template"


def test_packs_with_both_are_proved(tmp_path: Path, publisher: Callable[..., Run]) -> None:
    design = folder(tmp_path / "platform", "printed: half,", "printed: sizes,")
    run = publisher("build", design, "--paper", "a4", "--paper", "letter", "--out", tmp_path / "out")
    assert run.code == 0, run.err
    assert run.out.count(" proved ") + run.out.count(", proved") >= 2


def test_a_spec_that_asks_for_what_cannot_be_is_told_why(tmp_path: Path, publisher: Callable[..., Run]) -> None:
    design = folder(tmp_path / "wrong", "printed: sizes,", "printed: half,")
    run = publisher("check", design)
    assert run.code == 1
    for words in ("geometry/not-by-sizes", "it is no upright rectangle", "geometry/no-half", "differs left and right"):
        assert words in run.out + run.err
