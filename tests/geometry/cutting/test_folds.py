"""Panels folded from one piece of board: outlines by hand, lines, letters, and what does not lie flat."""

from collections.abc import Callable
from itertools import pairwise
from math import sqrt
from pathlib import Path

import pytest

from publisher.basics import Finding, LineKind, Purpose
from publisher.brief import read_brief
from publisher.design import work_out
from publisher.geometry import Part, cut_pieces, make_parts, polygon
from publisher.geometry.cutting.folds import groove

Cut = Callable[..., tuple[tuple[Part, ...], tuple[Finding, ...]]]

SPEC = """\
format: 2
title: Box
version: 1.0.0
designer: Ebbwater Patterns
licence: CC-BY-NC-4.0
summary: A box.
use: trace
boards: {{foam: {{thickness: 5 mm, faces: paper_both, paper: 0.3 mm, sheets: [20 x 30 in]}}}}
parts:
{parts}
assembly:
  box:
    panels: {{{places}}}
    stands_on: {stands}
    joins:
{joins}
steps: [{{title: Build, stage: glue, say: Glue it., picture: {{whole: box}}}}]
"""
FRONT = "  front: {name: Front, board: foam, shape: wall_panel, with: {width: 60 mm, height: 40 mm}}"
SIDE = "  side: {name: Side, board: foam, shape: wall_panel, with: {width: 30 mm, height: 40 mm}}"
RING = (("front.right", "right.left"), ("right.right", "back.left"), ("back.right", "left.left"))
PLACES = "front: front, right: side, back: front, left: side"
LAST = "{edges: [left.right, front.left], joint: mitre}"


def fold(a: str, b: str, corner: float = 90) -> str:
    return f"{{edges: [{a}, {b}], joint: fold, corner: {corner:g} deg}}"


@pytest.fixture
def cut(tmp_path: Path) -> Cut:
    """What is cut from board for a small spec, with the findings of geometry; design has none but warnings."""

    def run(
        parts: tuple[str, ...], places: str, joins: tuple[str, ...], stands: str = "front.bottom"
    ) -> tuple[tuple[Part, ...], tuple[Finding, ...]]:
        folder = tmp_path / "box"
        folder.mkdir(exist_ok=True)
        rows = "\n".join(f"      - {join}" for join in joins)
        text = SPEC.format(parts="\n".join(parts), places=places, stands=stands, joins=rows)
        (folder / "spec.yaml").write_text(text)
        brief = read_brief(folder)
        assert brief.findings == ()
        design = work_out(brief)
        assert design.findings == ()
        drawn, found = make_parts(design)
        assert found == ()
        return cut_pieces(design, drawn)

    return run


def corners(part: Part) -> set[tuple[float, float]]:
    return {(round(x, 6) + 0.0, round(y, 6) + 0.0) for x, y in part.outline.outer.points}


def wrapper(cut: Cut) -> Part:
    (piece,), found = cut((FRONT, SIDE), PLACES, (*(fold(*pair) for pair in RING), LAST))
    assert found == ()
    return piece


@pytest.mark.keeps("geometry/fold-place")
def test_a_box_wrapper_is_one_strip_of_60_30_60_30_by_40(cut: Cut) -> None:
    piece = wrapper(cut)
    # the designer counts x from the first panel's left: folds at 60, 90 and 150 mm, the end at 180 mm
    assert corners(piece) == {(x, y) for x in (0.0, 60.0, 90.0, 150.0, 180.0) for y in (0.0, 40.0)}
    assert polygon(piece.outline).area == pytest.approx(180 * 40, abs=1e-3)
    assert (piece.id, piece.letter, piece.name, piece.count) == ("front_folded", "A", "Front + side", 1)
    assert piece.folded == ("front", "side")
    folds = [mark for mark in piece.marks if mark.kind is LineKind.FOLD]
    lines = sorted(sorted((round(x, 6), round(y, 6)) for x, y in mark.path.points) for mark in folds)
    assert lines == [[(x, 0.0), (x, 40.0)] for x in (60.0, 90.0, 150.0)]
    assert {(mark.text, mark.purpose) for mark in folds} == {("fold 90°", Purpose.BEND)}


def test_the_groove_is_two_bevels_wide(cut: Cut) -> None:
    # two bevels of 45° in board of 5 mm: 5 mm on either side of the fold
    (one,) = wrapper(cut).folds
    assert (one.corner, one.width) == (90.0, pytest.approx(10.0))
    assert groove(5.0, 120.0) == pytest.approx(10.0 / sqrt(3.0))  # tan 30°
    assert groove(5.0, 180.0) == 0.0


def test_each_field_has_its_letter_and_only_the_glued_ends_keep_theirs(cut: Cut) -> None:
    piece = wrapper(cut)
    fields = sorted((m.path.points[0][0], m.text) for m in piece.marks if m.name == "field")
    assert [text for _, text in fields] == ["A Front", "B Side", "A Front", "B Side"]
    for (x, _), (low, high) in zip(fields, pairwise((0, 60, 90, 150, 180)), strict=True):
        assert low < x < high
    letters = [(mark.text, mark.path.points[0][0] < 60) for mark in piece.marks if mark.purpose is Purpose.MATCH]
    assert sorted(letters) == [("b", False), ("b", True)]
    assert all(x < 60 or x > 150 for mark in piece.marks if mark.purpose is Purpose.BEVEL for x, _ in mark.path.points)
    assert {edge.name: edge.bevel for edge in piece.edges if edge.bevel} == {"front.left": 45.0, "side_2.right": 45.0}
    assert {text for edge in piece.edges for text in edge.matches} == {"b"}


def test_four_walls_about_a_floor_make_a_cross(cut: Cut) -> None:
    floor = "  floor: {name: Floor, board: foam, shape: wall_panel, with: {width: 60 mm, height: 30 mm}}"
    joins = (
        fold("floor.bottom", "front.bottom"),
        fold("floor.right", "right.bottom"),
        fold("floor.top", "back.bottom"),
        fold("floor.left", "left.bottom"),
    )
    places = "floor: floor, front: front, right: side, back: front, left: side"
    (piece,), found = cut((floor, FRONT, SIDE), places, joins, "floor.bottom")
    assert found == ()
    assert polygon(piece.outline).bounds == pytest.approx((-40.0, -40.0, 100.0, 70.0), abs=1e-5)
    assert polygon(piece.outline).area == pytest.approx(60 * 30 + 2 * 60 * 40 + 2 * 30 * 40, abs=1e-3)
    assert piece.name == "Floor + front + side"


def test_windows_come_along_and_stay_holes(cut: Cut) -> None:
    window = "openings: {eye: {kind: window, head: square, width: 10 mm, height: 12 mm, centre: 12 mm, sill: 15 mm}}"
    side = SIDE.replace("}}", f"}}, {window}}}")
    (piece,), found = cut((FRONT, side), "front: front, right: side", (fold(*RING[0]),))
    assert found == ()
    assert len(piece.outline.holes) == len(piece.openings) == 1
    # 12 mm from the side's left end, which is 60 mm from the front's
    xs, ys = zip(*piece.openings[0].ring.points, strict=True)
    assert (min(xs), max(xs), min(ys), max(ys)) == pytest.approx((67.0, 77.0, 15.0, 27.0))
    assert polygon(piece.outline).area == pytest.approx(90 * 40 - 120, abs=1e-3)


def test_two_alike_pieces_are_one_plan_with_a_count(cut: Cut) -> None:
    joins = (fold(*RING[0]), "{edges: [right.right, back.left], joint: mitre}", fold(*RING[2]), LAST)
    (piece,), found = cut((FRONT, SIDE), PLACES, joins)
    assert found == ()
    assert piece.count == 2
    assert corners(piece) == {(x, y) for x in (0.0, 60.0, 90.0) for y in (0.0, 40.0)}


@pytest.mark.breaks("geometry/fold-place")
def test_edges_of_two_lengths_do_not_fold(cut: Cut) -> None:
    low = SIDE.replace("height: 40", "height: 38")
    pieces, (finding,) = cut((FRONT, low), "front: front, right: side", (fold(*RING[0]),))
    assert finding.check == "geometry/fold-place"
    assert "40.0 mm (1.57 in)" in finding.message and "38.0 mm (1.50 in)" in finding.message
    assert (finding.value, finding.limit) == (38.0, 40.0)
    assert finding.place is not None and finding.place.line == 17
    assert {piece.id for piece in pieces} == {"front", "side"}


def test_panels_that_touch_beside_their_fold_do_not_fold(cut: Cut) -> None:
    # flaps on two neighbouring walls touch along x = 60 mm in the flat: one cut too few
    lids = (
        "  lid: {name: Lid, board: foam, shape: wall_panel, with: {width: 60 mm, height: 20 mm}}",
        "  flap: {name: Flap, board: foam, shape: wall_panel, with: {width: 30 mm, height: 20 mm}}",
    )
    joins = (fold(*RING[0]), fold("front.top", "lid.bottom"), fold("right.top", "flap.bottom"))
    places = "front: front, right: side, lid: lid, flap: flap"
    _, (finding,) = cut((FRONT, SIDE, *lids), places, joins)
    assert finding.check == "geometry/fold-place"
    assert "lie over each other" in finding.message
