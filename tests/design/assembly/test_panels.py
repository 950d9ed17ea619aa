"""Panel assemblies: edges that are free, panels that are held."""

from collections.abc import Callable
from typing import Any

import pytest

PARTS = "parts: {wall: {board: foam, shape: wall_panel}, slab: {board: foam, shape: disc}, rib: {board: foam, shape: wall_panel}}\n"


def box(places: str, *joins: str) -> str:
    rows = "".join(f"      - {join}\n" for join in joins)
    return PARTS + (
        "assembly:\n  pile: {stack: [{part: slab}]}\n"
        f"  box:\n    panels: {{{places}}}\n    stands_on: front.bottom\n    joins:\n{rows}"
    )


def tab(edge: str, inset: str) -> str:
    on = edge.partition(".")[0]
    return f"{{edges: [front.left, {edge}], joint: tab_and_slot, tabs_on: {on}, tabs: 2, play: 0.3 mm, inset: {inset}}}"


def test_places_and_the_edge_on_the_table(tried: Callable[..., Any]) -> None:
    (panel,) = tried(box("front: wall, one: rib", tab("one.right", "10 mm"))).design.panels
    assert [(place.name, place.part) for place in panel.places] == [("front", "wall"), ("one", "rib")]
    assert (panel.name, str(panel.stands_on)) == ("box", "front.bottom")


def test_a_plate_lies_on_the_table(tried: Callable[..., Any]) -> None:
    text = box("front: wall, one: rib", tab("one.right", "10 mm"))
    (panel,) = tried(text.replace("stands_on: front.bottom", "lies_on_table: front")).design.panels
    assert (panel.stands_on.panel, panel.stands_on.edge) == ("front", "")
    for said, found in (
        ("lies_on_table: door", "design/unknown-place"),
        ("lies_on_table: front\n    stands_on: one.bottom", "design/join-option"),
    ):
        assert found in tried(text.replace("stands_on: front.bottom", said)).found


def test_ribs_along_one_edge_need_lines_that_lie_apart(tried: Callable[..., Any]) -> None:
    places = "front: wall, one: rib, two: rib"
    assert tried(box(places, tab("one.right", "10 mm"), tab("two.right", "15.3 mm"))).found == []
    for inset in ("15.2 mm", "10 mm"):
        assert tried(box(places, tab("one.right", "10 mm"), tab("two.right", inset))).found == [
            "design/edge-joined-twice"
        ]


def test_an_edge_with_lines_inside_it_may_meet_one_panel_itself(tried: Callable[..., Any]) -> None:
    mitre = "{edges: [front.left, two.right], joint: mitre}"
    places = "front: wall, one: rib, two: slab"
    assert tried(box(places, tab("one.right", "10 mm"), mitre)).found == []
    assert tried(box(places, tab("one.right", "0 mm"), mitre)).found == ["design/edge-joined-twice"]


@pytest.mark.parametrize("second", ["mitre", "butt, runs_through: front", "butt, runs_through: two"])
def test_an_edge_meets_one_panel(second: str, tried: Callable[..., Any]) -> None:
    bad = tried(
        box(
            "front: wall, one: rib, two: slab",
            "{edges: [front.left, one.right], joint: mitre}",
            f"{{edges: [two.right, front.left], joint: {second}}}",
        )
    )
    assert bad.found == ["design/edge-joined-twice"]
    # the later of the two joins is the one that is too much
    assert bad.design.findings[0].place.line == 14


def test_a_panel_that_nothing_holds(tried: Callable[..., Any]) -> None:
    floating = "{edges: [one.left, two.right], joint: mitre}"
    bad = tried(box("front: wall, one: rib, two: slab", floating))
    assert bad.found == ["design/unjoined-place"] * 2
    assert tried(box("front: wall, one: rib, two: slab", floating, "{place: two, rests_on: [front.top]}")).found == []


def test_a_join_that_cannot_be_read_is_one_finding(tried: Callable[..., Any]) -> None:
    assert tried(box("front: wall, one: rib", "{edges: [front.left, one.right], joint: mitter}")).found == [
        "design/join-option"
    ]


def test_a_stranger_in_a_place_is_found_with_the_nearest_part(tried: Callable[..., Any]) -> None:
    (finding,) = tried(box("front: wall, one: rip")).design.findings
    assert (finding.check, finding.hint) == ("design/unknown-part", "did you mean “rib”?")


def test_panels_that_cross_one_edge_need_places_that_lie_apart(tried: Callable[..., Any]) -> None:
    cross = "{{edges: [front.top, {b}.bottom], joint: cross_lap, at: [{at} mm, {there} mm], play: 0.3 mm}}"
    places = "front: wall, one: rib, two: rib"

    def at(second: str) -> Any:
        return tried(box(places, cross.format(b="one", at=60, there=20), cross.format(b="two", at=second, there=20)))

    assert at("65.3").found == []
    assert at("65.2").found == ["design/edge-joined-twice"]
    (finding,) = at("60").design.findings
    assert finding.message == "two panels cross at one place of front.top"
    assert "0.00 mm apart; the slots there need more than 5.30 mm" in finding.hint


@pytest.mark.parametrize("sides", (3, 5, 8))
def test_equal_corners_go_round_a_ring(sides: int, tried: Callable[..., Any]) -> None:
    """180 − 360/n degrees, also beside a lid that is not of the ring; a corner that is written keeps its own."""
    names = ["front", *(f"p{i}" for i in range(1, sides))]
    rows = [
        f"{{edges: [{a}.right, {b}.left], joint: mitre}}" for a, b in zip(names, names[1:] + names[:1], strict=True)
    ]
    places = ", ".join(f"{name}: wall" for name in names)
    text = box(f"{places}, lid: rib", *rows, "{place: lid, rests_on: [front.top]}")
    equal = tried(text.replace("stands_on:", "corners: equal\n    stands_on:"))
    assert equal.found == []
    assert [join.corner for join in equal.design.panels[0].joins] == pytest.approx([180 - 360 / sides] * sides)
    assert not any(join.unsaid for join in equal.design.panels[0].joins)
    plain = tried(text)
    assert [(join.corner, join.unsaid) for join in plain.design.panels[0].joins] == [(90.0, True)] * sides


def test_equal_corners_of_panels_in_a_row_are_refused(tried: Callable[..., Any]) -> None:
    text = box("front: wall, two: slab, three: rib", "{edges: [front.right, two.left], joint: mitre}",
               "{edges: [two.right, three.left], joint: mitre}").replace("stands_on:", "corners: equal\n    stands_on:")  # fmt: skip
    assert set(tried(text).found) == {"design/equal-corners"}
