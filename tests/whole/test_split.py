"""A quay whose sides and deck are longer than the board on sale: split where the spec says, and proved from end to end."""

import csv
import json
from collections.abc import Callable
from io import StringIO
from pathlib import Path

import pypdf
import pytest

from publisher.brief import read_brief
from publisher.geometry import area, polygon
from publisher.pipeline import work
from tests.whole.conftest import Run, everything

SPEC = """\
format: 2
title: Long quay
version: 1.0.0
use: trace
sizes: {board: 5 mm, length: 900 mm, height: 100 mm, deck_width: 80 mm, end: 10 mm, pencil: 0.4 mm, slot_play: 0.3 mm}
boards:
  foam: {thickness: board, faces: bare, sheets: [20 x 30 in], knife_gap: 1 mm, edge_margin: 3 mm, grain: none}
parts:
  side: {name: Quay side, board: foam, shape: wall_panel, trace_allowance: pencil, SIDE with: {width: length, height: height}}
  deck: {name: Deck, board: foam, shape: wall_panel, trace_allowance: pencil, DECK with: {width: length, height: deck_width}}
  rib: {name: Rib, board: foam, shape: wall_panel, trace_allowance: pencil, with: {width: deck_width, height: height}}
assembly:
  box:
    panels: {front: side, back: side, west: rib, east: rib, deck: deck}
    stands_on: front.bottom
    joins:
      - {edges: [front.left, west.right], joint: tab_and_slot, tabs_on: west, tabs: 2, inset: end, play: slot_play, loosest: 0.6 mm}
      - {edges: [west.left, back.right], joint: tab_and_slot, tabs_on: west, tabs: 2, inset: end, play: slot_play, loosest: 0.6 mm}
      - {edges: [front.right, east.left], joint: tab_and_slot, tabs_on: east, tabs: 2, inset: end, play: slot_play, loosest: 0.6 mm}
      - {edges: [east.right, back.left], joint: tab_and_slot, tabs_on: east, tabs: 2, inset: end, play: slot_play, loosest: 0.6 mm}
      - {edges: [deck.bottom, front.top], joint: butt, runs_through: deck}
      - {edges: [deck.top, back.top], joint: butt, runs_through: deck}
      - {edges: [deck.left, west.top], joint: butt, runs_through: deck, inset: end}
      - {edges: [deck.right, east.top], joint: butt, runs_through: deck, inset: end}
needs: [{fact: box.width, at_least: length, at_most: length}]
tools: [craft_knife, steel_rule, cutting_mat, pencil]
materials: [{name: white_glue}]
steps:
  - {title: Join the pieces, stage: cut, say: Glue the pieces edge to edge and the plates behind., parts: [side, deck], uses: [white_glue]}
  - {title: Stand it up, stage: glue, say: Glue the box., parts: [rib], uses: [white_glue], picture: {whole: box}}
papers: [a4, letter]
"""
SIDE = "split: {at: 440 mm, from: left, plate: 40 mm},"
DECK = "split: [{at: 300 mm, step: 20 mm, plate: 60 mm}, {at: 600 mm, step: 20 mm}],"
COUNTS = {
    "side_1": 2, "side_2": 2, "side_plate_1": 2, "deck_1": 1, "deck_2": 1, "deck_3": 1, "deck_plate_1": 1, "rib": 2,
}  # fmt: skip


def folder(at: Path, side: str = SIDE, deck: str = DECK) -> Path:
    at.mkdir()
    (at / "spec.yaml").write_text(SPEC.replace("SIDE", side).replace("DECK", deck), "utf-8")
    return at


@pytest.fixture
def quay(tmp_path: Path) -> Path:
    return folder(tmp_path / "long-quay")


def test_it_builds_and_proves_clean_on_both_papers(publisher: Callable[..., Run], quay: Path, tmp_path: Path) -> None:
    run = publisher("build", quay, "--out", tmp_path / "out")
    assert (run.code, run.out.count("proved")) == (0, 2)
    assert "error" not in run.err
    files = everything(tmp_path / "out" / "long-quay")
    parts = {name.rpartition("/")[2] for name in files if "/part-" in name}
    assert parts == {
        "part-a1-side_1.svg", "part-a2-side_2.svg", "part-a3-side_plate_1.svg", "part-b1-deck_1.svg", "part-b2-deck_2.svg",
        "part-b3-deck_3.svg", "part-b4-deck_plate_1.svg", "part-c-rib.svg",
    }  # fmt: skip
    facts = json.loads(files["long-quay-1.0.0-foam-5mm-a4.json"])
    assert {p["id"]: p["count"] for p in facts["parts"]} == COUNTS
    assert [b["pieces"] for b in facts["boards"]] == [sum(COUNTS.values())]
    rows = list(csv.reader(StringIO(files["cut-files/standard/cut-yield.csv"].decode())))
    assert {"A1", "A2", "A3", "B4"} <= {word for row in rows for cell in row for word in cell.split()}
    for paper in ("a4", "letter"):
        pdf = pypdf.PdfReader(tmp_path / "out" / "long-quay" / f"long-quay-1.0.0-foam-5mm-{paper}.pdf")
        pages = [" ".join(page.extract_text().split()) for page in pdf.pages]
        (cut_list,) = [page for page in pages if "Buy and cut" in page and "What to buy" in page]
        assert "Quay side, piece 1" in cut_list and "Plate behind A1 and A2" in cut_list
        assert any("glue to A2" in page for page in pages) and any("glue to A1" in page for page in pages)
        (needed,) = [page for page in pages if "You need now" in page]
        for words in ("A1", "A2", "A3", "Plate behind", "Deck, piece 3"):
            assert words in needed


def test_the_whole_stays_for_joints_and_the_pieces_are_cut(quay: Path) -> None:
    worked = work(read_brief(quay))
    assert [part.id for part in worked.parts] == ["side", "deck", "rib"]
    assert {piece.id: piece.count for piece in worked.pieces} == COUNTS
    assert worked.joined is not None and worked.needs is not None
    assert {p.part for _, panels in worked.joined.placed for p in panels} == {"side", "deck", "rib"}
    assert {row.part: row.count for row in worked.needs.cut_list} == COUNTS
    assert all(worked.joined.drawing(f"part:{piece.id}") for piece in worked.pieces)
    for part in worked.parts:
        own = [p for p in worked.pieces if part.id in (p.id, p.whole) and p.shape == part.shape]
        assert sum(area(p.outline) for p in own) == pytest.approx(area(part.outline), abs=1e-6)
        assert sum(polygon(p.outline).area for p in own) == pytest.approx(polygon(part.outline).area, abs=1e-6)


def test_without_a_split_the_finding_says_the_words_that_mend_it(publisher: Callable[..., Run], tmp_path: Path) -> None:
    """The words of the finding, written into the spec, build."""
    run = publisher("check", folder(tmp_path / "plain", "", ""))
    assert run.code == 1
    assert "[material/part-larger-than-sheets]" in run.out + run.err
    said = "split: {at: 450 mm, from: left, plate: 60 mm}"
    assert f"“{said}”" in run.out + run.err
    assert publisher("check", folder(tmp_path / "mended", f"{said},", f"{said},")).code == 0


@pytest.mark.parametrize(
    ("side", "says"),
    [
        ("split: {at: 15 mm},", "geometry/split-place"),
        ("split: {at: 1000 mm},", "geometry/split-outside"),
        ("split: {at: 450 mm, plate: 10 mm},", "design/split"),
        ("split: {at: 450 mm, from: top},", "spec.yaml:9"),
        ("split: {from: left},", "lacks “at”"),
        ("split: 450 mm,", "spec.yaml:9"),
    ],
)
def test_what_cannot_be_is_said_at_its_line(
    publisher: Callable[..., Run], tmp_path: Path, side: str, says: str
) -> None:
    run = publisher("check", folder(tmp_path / "bad", side))
    assert run.code == 1
    assert says in run.out + run.err and "spec.yaml:9" in run.out + run.err
