"""Joins as edge treatments."""

from collections.abc import Callable
from typing import Any

import pytest

from publisher.design import EdgeTreatment, LapSlot, Rabbet, SlotRow, TabRow
from publisher.design.records.edges import JointLine

TWO_BOARDS = """
boards: {foam: {thickness: 5 mm, sheets: [20 x 30 in]}, card: {thickness: 3 mm, sheets: [20 x 30 in]}}
parts:
  wall: {board: foam, shape: wall_panel}
  side: {board: card, shape: wall_panel}
  slab: {board: foam, shape: disc}
"""


def treated(
    tried: Callable[..., Any], *joins: str, places: str = "front: wall, left: side"
) -> dict[str, dict[str, EdgeTreatment]]:
    rows = "".join(f"      - {join}\n" for join in joins)
    text = (
        "assembly:\n  pile: {stack: [{part: slab}]}\n"
        f"  hut:\n    panels: {{{places}}}\n    stands_on: front.bottom\n    joins:\n{rows}"
    )
    design = tried(TWO_BOARDS + text).design
    assert design.findings == ()
    return {part.id: {t.edge: t for t in part.treatments} for part in design.parts}


def test_butt_the_panel_that_does_not_run_through_is_shorter_by_the_other_board(tried: Callable[..., Any]) -> None:
    for through, shorter, by in (("front", "side", 5.0), ("left", "wall", 3.0)):
        got = treated(tried, f"{{edges: [front.left, left.right], joint: butt, runs_through: {through}}}")
        edge = "right" if shorter == "side" else "left"
        longer = "wall" if shorter == "side" else "side"
        assert got[shorter][edge].take_off == by
        assert all(t.take_off == 0 for t in got[longer].values())
        assert {t.matches for part in got.values() for t in part.values()} == {()}  # they meet nowhere else


def test_tabs_are_as_deep_as_the_other_board_and_reach_the_nominal_edge(tried: Callable[..., Any]) -> None:
    join = "{edges: [front.left, left.right], joint: tab_and_slot, tabs_on: left, tabs: 3, play: 0.3 mm, inset: 12 mm}"
    got = treated(tried, join)
    tabbed, slotted = got["side"]["right"], got["wall"]["left"]
    assert (tabbed.take_off, tabbed.tabs, tabbed.slots) == (5.0, TabRow(3, 5.0), ())
    assert (slotted.take_off, slotted.tabs, slotted.slots) == (0.0, None, (SlotRow(3, 12.0, 3.0, 0.3),))


@pytest.mark.parametrize(("sides", "bevel"), [(3, 60.0), (4, 45.0), (6, 30.0), (8, 22.5), (24, 7.5)])
def test_a_mitre_bevels_both_edges_by_half_the_turn(sides: int, bevel: float, tried: Callable[..., Any]) -> None:
    # an n-sided ring has inside angles of 180 - 360/n, and each edge is bevelled 180/n from square
    got = treated(tried, f"{{edges: [front.left, left.right], joint: mitre, corner: 180 deg - 360 deg / {sides}}}")
    assert got["wall"]["left"].bevel == pytest.approx(bevel)
    assert got["side"]["right"].bevel == pytest.approx(bevel)


def test_a_rabbet_is_as_wide_as_the_other_board_and_its_mate_shorter_by_the_paper(tried: Callable[..., Any]) -> None:
    # the panel keeps its full outside width
    papered = TWO_BOARDS.replace("thickness: 5 mm", "thickness: 5 mm, faces: paper_one, paper: 0.3 mm")
    text = (
        "assembly:\n  pile: {stack: [{part: slab}]}\n  hut:\n    panels: {front: wall, left: side}\n"
        "    stands_on: front.bottom\n"
        "    joins: [{edges: [left.right, front.left], joint: rabbet, rabbet_on: front}]\n"
    )
    design = tried(papered + text).design
    assert design.findings == ()
    got = {part.id: part.treatments for part in design.parts}
    ((wall,), (side,)) = got["wall"], got["side"]
    assert (wall.edge, wall.take_off, wall.rabbet) == ("left", 0.0, Rabbet(3.0, 0.3))
    assert (side.edge, side.take_off, side.rabbet) == ("right", 0.3, None)


def test_panels_that_cross_have_slots_for_each_other_s_board(tried: Callable[..., Any]) -> None:
    cross = "{{edges: [front.top, {b}.bottom], joint: cross_lap, at: [{at} mm, 40 mm], play: 0.3 mm}}"
    got = treated(
        tried,
        cross.format(b="left", at=60),
        cross.format(b="right", at=90),
        places="front: wall, left: side, right: side",
    )
    assert got["wall"]["top"].laps == (LapSlot(60.0, 3.0, 0.3, ()), LapSlot(90.0, 3.0, 0.3, ()))
    assert got["side"]["bottom"].laps == (LapSlot(40.0, 5.0, 0.3, ()),)  # either side fits either slot
    assert all(t.take_off == 0 for part in got.values() for t in part.values())


def test_places_that_are_crossed_differently_are_found(tried: Callable[..., Any]) -> None:
    cross = "{{edges: [front.top, {b}.bottom], joint: cross_lap, at: [{at} mm, {there} mm], play: 0.3 mm}}"
    rows = [cross.format(b="left", at=60, there=40), cross.format(b="right", at=90, there=41)]
    text = (
        "assembly:\n  pile: {stack: [{part: slab}]}\n"
        "  hut:\n    panels: {front: wall, left: side, right: side}\n    stands_on: front.bottom\n"
        f"    joins: [{', '.join(rows)}]\n"
    )
    (finding,) = tried(TWO_BOARDS + text).design.findings
    assert finding.check == "design/places-differ"
    assert "is crossed 40.0 mm from its left end" in finding.message


def test_rests_do_nothing_to_edges(tried: Callable[..., Any]) -> None:
    assert treated(tried, "{place: left, rests_on: [front.top]}") == {"wall": {}, "side": {}, "slab": {}}


def test_several_rows_of_slots_lie_in_order(tried: Callable[..., Any]) -> None:
    tab = "{{edges: [front.left, {p}.right], joint: tab_and_slot, tabs_on: {p}, tabs: 2, play: 0.3 mm, inset: {i} mm}}"
    got = treated(
        tried, tab.format(p="two", i=40), tab.format(p="one", i=12), places="front: wall, one: side, two: side"
    )
    assert [row.inset for row in got["wall"]["left"].slots] == [12.0, 40.0]
    assert got["wall"]["left"].matches == got["side"]["right"].matches == ()  # either side fits either row


def test_places_of_one_part_that_are_joined_alike_share_their_letters(tried: Callable[..., Any]) -> None:
    got = treated(
        tried,
        "{edges: [front.right, left.left], joint: butt, runs_through: front}",
        "{edges: [left.right, back.left], joint: butt, runs_through: back}",
        "{edges: [back.right, right.left], joint: butt, runs_through: back}",
        "{edges: [right.right, front.left], joint: butt, runs_through: front}",
        places="front: wall, back: wall, left: side, right: side",
    )
    assert {edge: t.matches for edge, t in got["wall"].items()} == {"right": ("a",), "left": ("b",)}
    assert {edge: (t.take_off, t.matches) for edge, t in got["side"].items()} == {
        "left": (5.0, ("a",)),
        "right": (5.0, ("b",)),
    }


def test_places_that_differ_are_named_with_what_differs(tried: Callable[..., Any]) -> None:
    text = """
assembly:
  pile: {stack: [{part: slab}]}
  hut:
    panels: {front: wall, back: wall, left: side}
    stands_on: front.bottom
    joins:
      - {edges: [front.left, left.right], joint: butt, runs_through: left}
      - {place: back, rests_on: [front.top]}
"""
    (finding,) = tried(TWO_BOARDS + text).design.findings
    assert finding.check == "design/places-differ"
    assert "front is 3.00 mm shorter, back has nothing there" in finding.message
    assert finding.hint == "join both places alike, or make them two parts"
    slots = text.replace(
        "joint: butt, runs_through: left", "joint: tab_and_slot, tabs_on: left, tabs: 2, play: 0.3 mm, inset: 12 mm"
    )
    assert "front has 2 slots 12.0 mm from the edge" in tried(TWO_BOARDS + slots).design.findings[0].message
    tabs = text.replace("joint: butt, runs_through: left", "joint: tab_and_slot, tabs_on: front, tabs: 2, play: 0.3 mm")
    assert "front has 2 tabs 3.00 mm deep" in tried(TWO_BOARDS + tabs).design.findings[0].message
    bevel = text.replace("joint: butt, runs_through: left", "joint: mitre, corner: 120 deg")
    assert "front is bevelled by 30°" in tried(TWO_BOARDS + bevel).design.findings[0].message


def test_insets_that_differ_by_dust_are_one_inset(tried: Callable[..., Any]) -> None:
    tab = "{{edges: [{p}.left, {q}.right], joint: tab_and_slot, tabs_on: {q}, tabs: 2, play: 0.3 mm, inset: {i}}}"
    got = treated(
        tried,
        tab.format(p="front", q="left", i="0.1 mm * 3 * 40"),
        tab.format(p="back", q="right", i="12 mm"),
        "{place: back, rests_on: [left.left]}",
        places="front: wall, back: wall, left: side, right: side",
    )
    assert got["wall"]["left"].slots[0].inset == pytest.approx(12.0)


def test_a_join_that_cannot_be_read_does_not_make_places_differ(tried: Callable[..., Any]) -> None:
    text = """
assembly:
  pile: {stack: [{part: slab}]}
  hut:
    panels: {front: wall, back: wall, left: side}
    stands_on: front.bottom
    joins:
      - {edges: [front.left, left.right], joint: mitre}
      - {edges: [left.left, back.rihgt], joint: mitter}
"""
    assert tried(TWO_BOARDS + text).found == ["design/join-option"]


def test_letters_are_told_apart_by_the_line_at_which_their_join_lies(tried: Callable[..., Any]) -> None:
    tab = "{{edges: [front.left, {p}], joint: tab_and_slot, tabs_on: two, tabs: 2, play: 0.3 mm, inset: {i} mm}}"
    got = treated(
        tried,
        tab.format(p="two.right", i=40),
        tab.format(p="one.left", i=12).replace("tabs_on: two", "tabs_on: one"),
        places="front: wall, one: slab, two: side",
    )
    assert got["wall"]["left"].lines == (JointLine(12.0, 5.0, ("b",)), JointLine(40.0, 3.0, ("a",)))
    assert got["side"]["right"].lines == (JointLine(0.0, 5.0, ("a",), forward=False),)


def test_a_panel_that_runs_through_knows_where_the_butted_one_stands(tried: Callable[..., Any]) -> None:
    got = treated(tried, "{edges: [front.left, left.right], joint: butt, runs_through: front, inset: 10 mm}")
    assert got["wall"]["left"].lines == (JointLine(10.0, 3.0, ()),)
    assert got["side"]["right"].lines == (JointLine(0.0, 5.0, (), forward=False),)
