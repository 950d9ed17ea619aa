"""A true design is never refused for the tool's own words: panels with bevels of any size, on papers small and large."""

import json
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.searches.profile import seeds
from tests.whole.conftest import Run

SPEC = """\
format: 2
title: Bay
version: 1.0.0
designer: Ebbwater Patterns
licence: CC-BY-NC-4.0
summary: Three walls of a bay.
use: trace
boards:
  foam: {{thickness: 5 mm, thickness_spread: 0.2 mm, faces: bare, sheets: [297 x 420 mm], knife_gap: 1 mm, edge_margin: 3 mm, grain: none}}
parts:
  wall: {{name: Wall, board: foam, shape: wall_panel, trace_allowance: 0.4 mm, with: {{width: {width} mm, height: {height} mm}}}}
  left: {{name: Left end, board: foam, shape: wall_panel, trace_allowance: 0.4 mm, with: {{width: {width} mm, height: {height} mm}}}}
  right: {{name: Right end, board: foam, shape: wall_panel, trace_allowance: 0.4 mm, with: {{width: {width} mm, height: {height} mm}}}}
assembly:
  bay:
    panels: {{front: wall, west: left, east: right}}
    stands_on: front.bottom
    joins:
      - {{edges: [front.right, east.left], joint: mitre, corner: 120 deg}}
      - {{edges: [front.left, west.right], joint: mitre, corner: 120 deg}}
"""


@pytest.mark.parametrize(
    ("width", "height", "paper"), [(60, 110, "a4"), (90, 50, "letter"), (80, 40, "a4"), (24, 96, "a3")]
)
def test_bevelled_walls_of_many_sizes_are_built(
    publisher: Callable[..., Run], tmp_path: Path, width: int, height: int, paper: str
) -> None:
    folder = tmp_path / "bay"
    folder.mkdir()
    (folder / "spec.yaml").write_text(SPEC.format(width=width, height=height), encoding="utf-8")
    run = publisher("build", folder, "--paper", paper, "--out", tmp_path / "out")
    assert run.code == 0, run.err
    assert "pages/" not in run.err
    assert "proved" in run.out


TOWER = """\
format: 2
title: Hexagonal tower
version: 1.0.0
designer: Ebbwater Patterns
licence: CC-BY-NC-4.0
use: trace
steps: [{title: Print and cut, stage: print, say: Print page 2 first., parts: [wall, facet]}]
sizes: {board: 5 mm, side: 60 mm, wall_height: 80 mm}
boards: {foam: {thickness: board, thickness_spread: 0.2 mm, sheets: [20 x 30 in]}}
parts:
  wall: {name: Wall, board: foam, shape: tower_panel, trace_allowance: 0.4 mm, with: {sides: 6, width: side, height: wall_height}}
  facet: {name: Spire facet, board: foam, shape: spire_facet, trace_allowance: 0.4 mm, with: {sides: 6, width: side, height: 90 mm}}
papers: [a4, letter]
assembly:
  whole: {things: {base: {assembly: tower}, roof: {assembly: spire, on_top_of: [base]}}}
"""
HEIGHTS, BOARDS = range(80, 151, 5), ("5 mm", "3/16 in")


def a_ring(name: str, part: str, foot: str) -> str:
    places = [f"{part}_{number}" for number in range(1, 7)]
    joins = [
        f"{{edges: [{a}.right, {b}.left], joint: mitre}}" for a, b in zip(places, places[1:] + places[:1], strict=True)
    ]
    panels = ", ".join(f"{place}: {part}" for place in places)
    return f"  {name}: {{panels: {{{panels}}}, stands_on: {places[0]}.{foot}, joins: [{', '.join(joins)}]}}\n"


@pytest.fixture
def tower(tmp_path: Path) -> Path:
    """A hexagonal tower with a spire on it; its height and board are set with the command."""
    folder = tmp_path / "tower"
    folder.mkdir()
    spec = TOWER + a_ring("tower", "wall", "bottom") + a_ring("spire", "facet", "base")
    (folder / "spec.yaml").write_text(spec, encoding="utf-8")
    return folder


@pytest.mark.parametrize("step", range(0, len(HEIGHTS), 5))
def test_a_tower_is_true_at_every_height(publisher: Callable[..., Run], tower: Path, step: int) -> None:
    sets = (f"wall_height={HEIGHTS[step]} mm", f"board={BOARDS[step % 2]}")
    run = publisher("check", tower, "--set", sets[0], "--set", sets[1])
    assert (run.code, run.err) == (0, "")


@pytest.mark.search
@seeds(1, 30)
def test_a_tower_of_any_height_is_built_on_both_papers(
    publisher: Callable[..., Run], tower: Path, tmp_path: Path, seed: int
) -> None:
    board, step = divmod(seed % 30, len(HEIGHTS))
    sets = (f"wall_height={HEIGHTS[step]} mm", f"board={BOARDS[board]}")
    run = publisher("build", tower, "--out", tmp_path / "out", "--set", sets[0], "--set", sets[1])
    assert (run.code, run.err) == (0, "")
    assert run.out.count("proved") == 2


SMALL_PAPER = """\
format: 2
title: Frame
version: 1.0.0
designer: Ebbwater Patterns
licence: CC-BY-NC-4.0
use: paste
steps: [{title: Print and cut, stage: print, say: Print page 2 first., parts: [frame]}]
boards: {foam: {thickness: 5 mm, thickness_spread: 0.2 mm, sheets: [20 x 30 in]}}
parts:
  frame:
    {name: Frame, board: foam, count: 1, shape: rectangle, with: {width: 180 mm, height: 120 mm},
     combine: [{cut: {shape: rectangle, with: {width: 160 mm, height: 100 mm}}, at: [10 mm, 10 mm]}]}
papers: [{name: small, width: 148 mm, height: 210 mm, margins: [6 mm, 6 mm, 6 mm, 6 mm]}]
"""


def test_words_of_a_tile_keep_off_the_square_on_small_paper(publisher: Callable[..., Run], tmp_path: Path) -> None:
    folder = tmp_path / "frame"
    folder.mkdir()
    (folder / "spec.yaml").write_text(SMALL_PAPER, encoding="utf-8")
    run = publisher("check", folder)
    assert (run.code, run.err) == (0, "")


TWO_BOARDS = """\
format: 2
title: Two boards
version: 1.0.0
designer: Ebbwater Patterns
licence: CC-BY-NC-4.0
summary: Walls of two boards.
use: trace
boards:
  thin_foam: {thickness: 3 mm, faces: paper_both, sheets: [20 x 30 in], thickness_spread: 0.2 mm}
  foam: {thickness: 5 mm, faces: paper_both, sheets: [20 x 30 in], thickness_spread: 0.2 mm}
parts:
  wall: {name: Wall, board: foam, count: 1, shape: wall_panel, trace_allowance: 0.4 mm, with: {width: 300 mm, height: 200 mm}}
  door: {name: Door, board: thin_foam, count: 1, shape: wall_panel, trace_allowance: 0.4 mm, with: {width: 250 mm, height: 180 mm}}
  sill: {name: Doorsillwithoutablankinitslongname, board: thin_foam, count: 1, shape: wall_panel, trace_allowance: 0.4 mm,
         with: {width: 250 mm, height: 20 mm}}
steps: [{title: Cut, stage: cut, say: Cut all., parts: [wall, door, sill]}]
tools: [craft_knife, steel_rule, cutting_mat, pencil]
papers: [a5]
"""


def test_boards_named_alike_and_names_wider_than_their_column_are_proved_on_small_paper(
    publisher: Callable[..., Run], tmp_path: Path
) -> None:
    """The name of one board ends with that of the other, the cover overflows to a page of its own, and columns break long words."""
    folder = tmp_path / "two"
    folder.mkdir()
    (folder / "spec.yaml").write_text(TWO_BOARDS, encoding="utf-8")
    run = publisher("build", folder, "--out", tmp_path / "out")
    assert run.code == 0, run.err
    (record,) = (tmp_path / "out" / "two").glob("two-*.json")
    kinds = [page["kind"] for page in json.loads(record.read_text("utf-8"))["pages"]]
    assert "about" in kinds and "proved" in run.out


@pytest.mark.parametrize("language", ["en", "de"])
def test_boards_of_any_name_and_sheet_are_built(publisher: Callable[..., Run], tmp_path: Path, language: str) -> None:
    """The name of a board is a word of ours that stands behind others elsewhere; one of its sheets is sold in centimetres."""
    boards = """\
  thin: {thickness: 3 mm, material: card, sheets: [A3]}
  paper: {thickness: 5 mm, sheets: [A3, 50 x 70 cm]}
parts:
  front: {name: Front, board: thin, count: 1, shape: rectangle, with: {width: 60 mm, height: 40 mm}}
  sign: {name: "Sign, high & low", board: paper, count: 2, shape: rectangle, with: {width: 30 mm, height: 20 mm}}
tools: [craft_knife]
materials: [{text: "Pins, 2 mm", count: 4}]
steps:
  - {title: Cut, stage: cut, say: Cut., parts: [front, sign], uses: [craft_knife]}
"""
    head, _, _ = SPEC.format(width=0, height=0).partition("  foam:")
    folder = tmp_path / "bay"
    folder.mkdir()
    (folder / "spec.yaml").write_text(f"{head}{boards}language: {language}\n", encoding="utf-8")
    run = publisher("build", folder, "--paper", "a4", "--out", tmp_path / "out")
    assert run.code == 0, run.err
    assert "not-translated" not in run.err
    assert "proved" in run.out


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_what_is_covered_with_tape_is_built(publisher: Callable[..., Run], tmp_path: Path, paper: str) -> None:
    """Beside another that is covered with paper: how wide the tape is, and how much of it, are numbers that were worked out."""
    hoods = "".join(
        f"  {cover}: {{name: {cover} hood, board: foam, count: 2, spare: 1, shape: curved_wall, "
        f"with: {{inner_radius: 90 mm, angle: {angle} deg, height: 60 mm, cut: none, covered: {cover}}}}}\n"
        for cover, angle in (("tape", 75), ("paper", 60))
    )
    head, _, _ = SPEC.format(width=0, height=0).partition("  foam:")
    steps = "steps:\n  - {title: Cut, stage: cut, say: Cut., parts: [tape, paper]}\n"
    foam = "  foam: {thickness: 3 mm, sheets: [A3]}\nparts:\n"
    folder = tmp_path / "bay"
    folder.mkdir()
    (folder / "spec.yaml").write_text(f"{head}{foam}{hoods}{steps}", encoding="utf-8")
    run = publisher("build", folder, "--paper", paper, "--out", tmp_path / "out")
    assert run.code == 0, run.err
