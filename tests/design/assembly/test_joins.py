"""Joins: which edge meets which, and what a joint must say."""

from collections.abc import Callable
from typing import Any

import pytest

TAB = "{{edges: [{a}, {b}], joint: tab_and_slot, tabs_on: {on}, tabs: 2, play: 0.3 mm{more}}}"


def hut(*joins: str, places: str = "front: wall, side: slab") -> str:
    rows = "".join(f"      - {join}\n" for join in joins)
    return (
        "boards: {foam: {thickness: board, thickness_spread: 0.2 mm, sheets: [20 x 30 in]}}\n"
        "assembly:\n  pile: {stack: [{part: slab}]}\n"
        f"  hut:\n    panels: {{{places}}}\n    stands_on: front.bottom\n    joins:\n{rows}"
    )


def tab(a: str, b: str, on: str, more: str = "") -> str:
    return TAB.format(a=a, b=b, on=on, more=more)


def cross(more: str) -> str:
    return f"{{edges: [front.top, side.bottom], joint: cross_lap, at: [20 mm, 30 mm], {more}}}"


def test_the_slotted_panel_comes_first_however_it_is_written(tried: Callable[..., Any]) -> None:
    for a, b in (("front.right", "side.left"), ("side.left", "front.right")):
        (join,) = tried(hut(tab(a, b, "side", ", inset: 10 mm"))).design.panels[0].joins
        assert (str(join.a), str(join.b), join.tabs_on, join.through) == ("front.right", "side.left", "side", "")
        assert (join.joint, join.corner, join.tabs, join.inset, join.play, join.match) == (
            "tab_and_slot",
            90.0,
            2,
            10.0,
            0.3,
            "",
        )


def test_the_panel_that_runs_through_comes_first(tried: Callable[..., Any]) -> None:
    text = hut("{edges: [front.top, side.bottom], joint: butt, runs_through: side, inset: 12 mm}")
    (join,) = tried(text).design.panels[0].joins
    assert (str(join.a), str(join.b), join.through, join.inset) == ("side.bottom", "front.top", "side", 12.0)
    assert (join.tabs_on, join.tabs, join.play, join.loosest) == ("", 0, 0.0, None)


def test_unsaid_loosest_is_left_to_those_who_know_what_is_drawn(tried: Callable[..., Any]) -> None:
    # w 5.3, board 4.8 to 5.2: the slot holds at true scale with a play of 0.5
    (join,) = tried(hut(tab("front.right", "side.left", "side"))).design.panels[0].joins
    assert join.loosest is None
    (said,) = tried(hut(tab("front.right", "side.left", "side", ", loosest: 0.6 mm"))).design.panels[0].joins
    assert said.loosest == 0.6


def test_matching_letters_run_through_the_assembly(tried: Callable[..., Any]) -> None:
    panel = tried(
        hut(
            "{edges: [front.right, side.left], joint: mitre}",
            "{place: lid, rests_on: [front.top, side.top], at: [0 mm, -5 mm]}",
            "{edges: [front.left, other.right], joint: mitre, corner: 360 deg / 3}",
            places="front: wall, side: slab, lid: post, other: post",
        )
        + "parts: {wall: {board: foam, shape: disc}, slab: {board: foam, shape: disc}, post: {board: foam, shape: disc}}"
    ).design.panels[0]
    assert [join.match for join in panel.joins] == ["a", "b"]
    assert [join.corner for join in panel.joins] == [90.0, 120.0]
    assert [(rest.panel, [str(edge) for edge in rest.on], rest.at) for rest in panel.rests] == [
        ("lid", ["front.top", "side.top"], (0.0, -5.0))
    ]


def test_what_rests_is_glued_there_unless_it_is_said_to_be_loose(tried: Callable[..., Any]) -> None:
    for said, loose in (("", False), (", loose: true", True), (", loose: false", False)):
        text = hut(f"{{place: side, rests_on: [front.top]{said}}}")
        (rest,) = tried(text).design.panels[0].rests
        assert rest.loose is loose


@pytest.mark.parametrize(
    ("join", "rule", "says"),
    [
        ("{edges: [front.right], joint: mitre}", "design/join-option", "a join has two edges"),
        ("{edges: [front.right, side], joint: mitre}", "design/unknown-place", "write place.edge"),
        ("{edges: [front.right, sied.left], joint: mitre}", "design/unknown-place", "did you mean “side”?"),
        ("{edges: [front.right, front.left], joint: mitre}", "design/edge-with-itself", "edges of one panel"),
        ("{edges: [front.right, side.left], joint: mitter}", "design/join-option", "did you mean “mitre”?"),
        ("{edges: [front.right, side.left], joint: butt}", "design/join-option", "write runs_through: front, or side: that panel keeps"),
        ("{edges: [front.right, side.left], joint: butt, runs_through: lid}", "design/unknown-place", "write front or side"),
        ("{edges: [front.right, side.left], joint: mitre, play: 1 mm}", "design/join-option", "play means nothing in a mitre join"),
        ("{edges: [front.right, side.left], joint: mitre, corner: 0 deg}", "design/corner", "more than 0"),
        ("{edges: [front.right, side.left], joint: mitre, corner: 181 deg}", "design/corner", "at most 180"),
        ("{edges: [front.right, side.left], joint: butt, runs_through: side, corner: 60 deg}", "design/corner", "does not sit flush"),
        (tab("front.right", "side.left", "side", ", inset: -1 mm"), "design/join-option", "inset is -1.00 mm"),
        (tab("front.right", "side.left", "side", ", loosest: 0.2 mm"), "design/join-option", "less than the play"),
        (tab("front.right", "side.left", "side", ", inset: 9.9 mm"), "design/slot-near-edge", "10.0 mm or more"),
        (tab("front.right", "side.left", "side").replace("tabs: 2", "tabs: 0"), "design/count-range", "at least 1"),
        ("{edges: [front.top, side.bottom], joint: cross_lap, at: [20 mm, 30 mm]}", "design/join-option", "does not say play"),
        ("{edges: [front.top, side.bottom], joint: cross_lap, play: 0.3 mm}", "design/join-option", "does not say at"),
        ("{edges: [front.top, side.bottom], joint: cross_lap, at: [20 mm], play: 0.3 mm}", "design/join-option", "two places"),
        ("{edges: [front.top, side.bottom], joint: cross_lap, at: [-1 mm, 30 mm], play: 0 mm}", "design/join-option", "at is -1.00 mm"),
        (cross("play: 0 mm, corner: 60 deg"), "design/corner", "cross_lap"),
        (cross("play: 1 mm, loosest: 0.5 mm"), "design/join-option", "less than the play"),
        ("{edges: [front.top, side.bottom], joint: mitre, at: [20 mm, 30 mm]}", "design/join-option", "at means nothing in a mitre join"),
        ("{edges: [front.right, side.left], joint: rabbet}", "design/join-option", "does not say rabbet_on"),
        ("{edges: [front.right, side.left], joint: rabbet, rabbet_on: lid}", "design/unknown-place", "write front or side"),
        ("{edges: [front.right, side.left], joint: rabbet, rabbet_on: front}", "design/rabbet-without-paper", "the board foam is bare"),
        ("{edges: [front.right, side.left], joint: rabbet, rabbet_on: front, corner: 60 deg}", "design/corner", "rabbet join at 60"),
        ("{place: lid, rests_on: [front.top]}", "design/unknown-place", "no place “lid”"),
        ("{place: side, rests_on: [side.top]}", "design/edge-with-itself", "rests on itself"),
        ("{place: side, rests_on: []}", "design/join-option", "rests on nothing"),
    ],
)  # fmt: skip
def test_faults(join: str, rule: str, says: str, tried: Callable[..., Any]) -> None:
    (finding,) = tried(hut(join)).design.findings
    assert finding.check == rule
    assert says in f"{finding.message} | {finding.hint}"
    assert finding.place is not None
    assert finding.place.line > 0


def test_a_slot_two_thicknesses_from_the_edge_is_far_enough_and_so_is_a_notch(tried: Callable[..., Any]) -> None:
    for inset in ("0 mm", "2 * board"):
        assert tried(hut(tab("front.right", "side.left", "side", f", inset: {inset}"))).found == []


def papered(join: str, board: str) -> str:
    return hut(join).replace("thickness_spread: 0.2 mm", f"thickness_spread: 0.2 mm, {board}")


def test_a_rabbet_needs_paper_that_is_measured(tried: Callable[..., Any]) -> None:
    join = "{edges: [front.right, side.left], joint: rabbet, rabbet_on: side}"
    (made,) = tried(papered(join, "faces: paper_one, paper: 0.3 mm")).design.panels[0].joins
    assert (str(made.a), str(made.b), made.joint, made.through) == ("side.left", "front.right", "rabbet", "side")
    (finding,) = tried(papered(join, "faces: paper_both")).design.findings
    assert finding.check == "design/rabbet-without-paper"
    assert "write paper: 0.3 mm" in finding.hint
    (inset,) = tried(papered(join.replace("}", ", inset: 3 mm}"), "faces: paper_one, paper: 0.3 mm")).design.findings
    assert inset.message == "front.right – side.left: inset means nothing in a rabbet join"


def test_panels_that_cross_keep_the_order_in_which_they_are_written(tried: Callable[..., Any]) -> None:
    text = hut("{edges: [side.top, front.bottom], joint: cross_lap, at: [20 mm, length / 2], play: 0.3 mm}")
    (join,) = tried(text).design.panels[0].joins
    assert (str(join.a), str(join.b), join.at, join.play) == ("side.top", "front.bottom", (20.0, 50.0), 0.3)
    assert join.loosest is None
    assert (join.tabs, join.tabs_on, join.through, join.inset) == (0, "", "", 0.0)
