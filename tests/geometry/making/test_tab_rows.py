"""Tabs and slots of whole designs: where they stand after take-offs, and that both parts agree."""

from math import cos, radians, tan
from pathlib import Path

import pytest
import shapely

from publisher.basics import Path as Outline
from publisher.basics import errors
from publisher.geometry import Part
from publisher.geometry.making.tab_rows import EVERYWHERE, Reach, most_tabs, row_ends, tab_length
from tests.random_designs.solids import in_common
from tests.reference.solids import Built, build

BOX = """sizes: {{board: {board} mm}}
parts:
  side: {{name: Side, board: foam, shape: wall_panel, with: {{width: 200 mm, height: {height} mm}}}}
  rib: {{name: Rib, board: foam, shape: wall_panel, with: {{width: 90 mm, height: {height} mm}}}}
  deck: {{name: Deck, board: foam, shape: wall_panel, with: {{width: 200 mm, height: 90 mm}}}}
assembly:
  box:
    panels: {{front: side, back: side, west: rib, east: rib, deck: deck}}
    stands_on: front.bottom
    joins:
      - {{edges: [front.left, west.right], tabs_on: west, {tabs}}}
      - {{edges: [back.right, west.left], tabs_on: west, {tabs}}}
      - {{edges: [front.right, east.left], tabs_on: east, {tabs}}}
      - {{edges: [back.left, east.right], tabs_on: east, {tabs}}}
      - {{edges: [deck.bottom, front.top], joint: butt, runs_through: deck}}
      - {{edges: [deck.top, back.top], joint: butt, runs_through: deck}}
      - {{edges: [deck.left, west.top], joint: butt, runs_through: deck, inset: 30 mm}}
      - {{edges: [deck.right, east.top], joint: butt, runs_through: deck, inset: 30 mm}}
"""
HOUSE = """sizes: {{board: 5 mm}}
parts:
  gable: {{name: Gable, board: foam, shape: gable_wall, with: {{span: 60 mm, past: 20 mm, eaves: {eaves} mm, pitch: {pitch} deg}}}}
  side: {{name: Side, board: foam, shape: wall_panel, with: {{width: 100 mm, height: {eaves} mm}}}}
assembly:
  house:
    panels: {{front: gable, back: gable, left: side, right: side}}
    stands_on: front.bottom
    joins:
      - {{edges: [front.right, right.left], tabs_on: right, {tabs}}}
      - {{edges: [right.right, back.left], tabs_on: right, {tabs}}}
      - {{edges: [back.right, left.left], tabs_on: left, {tabs}}}
      - {{edges: [left.right, front.left], tabs_on: left, {tabs}}}
"""


def tabs(count: int, inset: int) -> str:
    return f"joint: tab_and_slot, tabs: {count}, play: 0.3 mm, inset: {inset} mm"


def walls(part: Part) -> float:
    """The least board between a slot and the outline, in mm."""
    outline = shapely.LinearRing(part.outline.outer.points)
    return min(float(outline.distance(shapely.LinearRing(hole.points))) for hole in part.outline.holes)


def tab_rows(part: Part) -> list[float]:
    """How long each tab is, in mm."""
    ways = [run.points for run in part.outline.outer.stretches() if run.name.endswith(".tab")]
    return [abs(way[2][1] - way[1][1]) for way in ways]


def agreed(built: Built, assembly: str) -> dict[str, Part]:
    """The parts of a design without errors whose solids share nothing: every tab stands in a slot."""
    assert not errors(built.findings), [finding.message for finding in built.findings]
    assert in_common(list(built.solids(assembly).values())) == pytest.approx(0.0, abs=0.01)
    return built.parts


@pytest.mark.parametrize(("board", "height", "count"), [(5, 45, 2), (10, 60, 2), (10, 100, 3), (5, 60, 3), (3, 40, 2)])
def test_tabs_under_a_deck_stand_on_what_both_edges_share(tmp_path: Path, board: int, height: int, count: int) -> None:
    parts = agreed(build(BOX.format(board=board, height=height, tabs=tabs(count, 30)), tmp_path), "box")
    assert walls(parts["side"]) >= 3.0
    lengths = tab_rows(parts["rib"])
    assert len(lengths) == 2 * count and max(lengths) - min(lengths) < 1e-9 and min(lengths) >= board
    assert max(y for _, y in parts["rib"].outline.outer.points) == pytest.approx(height - board)


@pytest.mark.parametrize(("eaves", "pitch"), [(40, 60), (40, 55), (60, 65), (45, 50)])
def test_slots_keep_a_board_to_the_slope_over_them(tmp_path: Path, eaves: int, pitch: int) -> None:
    parts = agreed(build(HOUSE.format(eaves=eaves, pitch=pitch, tabs=tabs(2, 20)), tmp_path), "house")
    # as stated, the slot's upper corner would lie less than a board under the slope
    top = eaves * 7 / 8 + 0.15
    assert (eaves - 0.15 * tan(radians(pitch)) - top) * cos(radians(pitch)) < 5.0
    assert 5.0 <= walls(parts["gable"]) < 5.1


def test_tabs_of_whole_edges_stay_where_they_are_stated(tmp_path: Path) -> None:
    parts = agreed(build(HOUSE.format(eaves=100, pitch=30, tabs=tabs(2, 20)), tmp_path), "house")
    assert tab_rows(parts["side"]) == pytest.approx([25.0] * 4)
    assert sorted(polygon_low(hole) for hole in parts["gable"].outline.holes) == pytest.approx(
        [12.35] * 2 + [62.35] * 2
    )


def polygon_low(hole: Outline) -> float:
    return min(y for _, y in hole.points)


def test_too_many_tabs_are_found_on_both_parts_with_the_number_that_fits(tmp_path: Path) -> None:
    built = build(BOX.format(board=10, height=45, tabs=tabs(3, 30)), tmp_path)
    found = [finding for finding in errors(built.findings) if finding.check == "geometry/tab-off-edge"]
    assert {finding.subject for finding in found} == {"part side", "part rib"}
    assert all("too little for 3 tabs" in f.message and f.hint.startswith("say tabs: 1,") for f in found)
    assert not errors(build(BOX.format(board=10, height=45, tabs=tabs(1, 30)), tmp_path).findings)


def test_a_row_out_of_reach_moves_its_ends_alone() -> None:
    assert row_ends(80.0, 2, EVERYWHERE) == (-30.0, 30.0) and tab_length(80.0, 2, EVERYWHERE) == 20.0
    assert row_ends(80.0, 2, Reach(-40.0, 15.0)) == (-30.0, 15.0) and tab_length(80.0, 2, Reach(high=15.0)) == 15.0
    assert Reach(-3.0, 7.0).turned() == Reach(-7.0, 3.0)
    assert most_tabs(80.0, Reach(high=15.0), 12.0, 5) == 2 and most_tabs(80.0, Reach(high=-25.0), 12.0, 5) == 0


def test_of_edges_that_are_flush_tabs_and_slots_stand_along_the_shorter_one(tmp_path: Path) -> None:
    """A wall 40 mm high stands against one of 90 mm: its tab fills the middle half of its own height, and so does the slot."""
    text = """sizes: {{board: 5 mm}}
parts:
  high: {{name: High, board: foam, shape: wall_panel, with: {{width: 100 mm, height: 90 mm}}}}
  low: {{name: Low, board: foam, shape: wall_panel, with: {{width: 70 mm, height: 40 mm}}}}
assembly:
  hut:
    panels: {{high: high, low: low}}
    stands_on: high.bottom
    joins: [{{edges: [{edges}], tabs_on: low, flush: {end}, joint: tab_and_slot, tabs: 1, play: 0.3 mm, inset: {inset} mm}}]
"""
    for edges, end, inset, slot in (
        ("high.right, low.left", "bottom", 15, (9.85, 30.15)),
        ("high.right, low.left", "top", 15, (59.85, 80.15)),
        ("low.right, high.left", "bottom", 15, (9.85, 30.15)),
        ("low.right, high.left", "top", 0, (59.85, 80.15)),
    ):
        built = build(text.format(edges=edges, end=end, inset=inset), tmp_path)
        # hung up at the top, it falls over: that is another matter
        assert {f.check for f in errors(built.findings)} == ({"joints/falls-over"} if end == "top" else set())
        high = built.parts["high"].outline
        (cut,) = high.holes if inset else [r for r in high.outer.stretches() if r.name.endswith(".slot")]
        ys = [y for _, y in cut.points]
        assert (min(ys), max(ys)) == pytest.approx(slot)
        solids = built.solids("hut")
        assert in_common(list(solids.values())) == pytest.approx(0.0, abs=0.01)
