"""Doors, windows and slits: where they stand, what they take off, and when they cannot be."""

from collections.abc import Callable
from math import pi

import pytest

from publisher.basics import Finding
from publisher.design import EdgeTreatment, OpeningPlan, PartPlan
from publisher.geometry import Part, area, polygon

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]
Open = Callable[..., OpeningPlan]
WALL: dict[str, float | str] = {"width": 140.0, "height": 80.0}


def test_a_square_window_is_a_hole(plan: Plan, drawn: Draw, opening: Open) -> None:
    window = opening("w", "window", width=20.0, height=30.0, sill=25.0, centre=40.0)
    part = drawn(plan("wall_panel", WALL, (window,)))
    assert area(part.outline) == pytest.approx(140.0 * 80.0 - 600.0)
    (hole,) = part.outline.holes
    assert {run.name for run in hole.edges} == {"w.sill", "w.right", "w.head", "w.left"}
    (found,) = part.openings
    assert found.ring == hole
    assert (found.name, found.kind, found.width, found.height) == ("w", "window", 20.0, 30.0)
    assert (found.sill, found.centre) == (25.0, 40.0)


@pytest.mark.parametrize("head", ["square", "round"])
def test_a_door_is_open_at_the_bottom_edge(plan: Plan, drawn: Draw, opening: Open, head: str) -> None:
    part = drawn(plan("wall_panel", WALL, (opening(width=32.0, height=50.0, head=head),)))
    assert not part.outline.holes
    names = [run.name for run in part.outline.outer.edges]
    assert names == ["bottom", "door.left", "door.head", "door.right", "bottom", "right", "top", "left"]
    taken = 32.0 * 50.0 if head == "square" else 32.0 * 34.0 + pi * 16.0**2 / 2.0
    assert area(part.outline) == pytest.approx(140.0 * 80.0 - taken, rel=1e-12)
    (door,) = part.openings
    assert (door.width, door.height, door.sill, door.centre) == (32.0, 50.0, 0.0, 70.0)
    bottom = part.edge("bottom")
    assert bottom is not None and (bottom.start, bottom.end) == ((0.0, 0.0), (140.0, 0.0))


def test_a_traced_door_is_drawn_wider(plan: Plan, drawn: Draw, opening: Open) -> None:
    part = drawn(plan("wall_panel", WALL, (opening(width=32.0, height=50.0),), trace_allowance=0.4))
    jambs = [p[0] for p in part.template.outer.points if 1.0 < p[1] < 60.0]
    assert max(jambs) - min(jambs) == pytest.approx(32.8)


def test_a_door_follows_the_shortened_bottom_edge(
    plan: Plan, drawn: Draw, opening: Open, treatment: Callable[..., EdgeTreatment]
) -> None:
    part = drawn(plan("wall_panel", WALL, (opening(width=32.0, height=50.0),), (treatment("bottom", 5.0),)))
    assert polygon(part.outline).bounds == pytest.approx((0.0, 5.0, 140.0, 80.0))
    assert area(part.outline) == pytest.approx(140.0 * 75.0 - 32.0 * 45.0)


def test_a_door_lower_than_what_a_join_takes_off(
    plan: Plan, refused: Refuse, opening: Open, treatment: Callable[..., EdgeTreatment]
) -> None:
    (finding,) = refused(plan("wall_panel", WALL, (opening(width=12.0, height=8.0),), (treatment("bottom", 8.0),)))
    assert finding.check == "geometry/opening-over-edge" and "take 8 mm off the bottom edge" in finding.message


def test_two_doors_stand_side_by_side(plan: Plan, drawn: Draw, opening: Open) -> None:
    doors = (
        opening("b", width=20.0, height=40.0, centre=100.0),
        opening("a", width=20.0, height=40.0, centre=40.0),
    )
    part = drawn(plan("wall_panel", WALL, doors))
    assert [r.name for r in part.outline.outer.edges if r.name.endswith("head")] == ["a.head", "b.head"]


@pytest.mark.parametrize(
    ("sizes", "check", "words"),
    [
        ({"width": 20.0, "height": 30.0, "centre": 5.0}, "geometry/opening-over-edge", "runs over the edge"),
        ({"width": 20.0, "height": 90.0}, "geometry/opening-over-edge", "runs over the edge"),
        ({"width": 20.0, "height": 79.0}, "geometry/thin-wall", "only 1 mm of board stay between the door “d”"),
        ({"width": 20.0, "height": 30.0, "sill": 2.0}, "geometry/thin-wall", "only 2 mm of board stay"),
        ({"width": 20.0, "height": 9.0, "head": "round"}, "geometry/impossible-sizes", "is 10 mm high by itself"),
        ({"width": 20.0, "height": 30.0, "head": "pointy"}, "geometry/size-out-of-range", "“pointy” is no head"),
        ({"width": 20.0, "height": 30.0, "centre": "left"}, "geometry/size-out-of-range", "“left” was given"),
    ],
)
def test_doors_that_cannot_be(
    plan: Plan, refused: Refuse, opening: Open, sizes: dict[str, float | str], check: str, words: str
) -> None:
    (finding,) = refused(plan("wall_panel", WALL, (opening("d", "door", **sizes),)))
    assert finding.check == check and words in finding.message
    assert finding.place is not None and finding.place.line >= 40


def test_a_window_on_the_bottom_edge_leaves_no_board(plan: Plan, refused: Refuse, opening: Open) -> None:
    (finding,) = refused(plan("wall_panel", WALL, (opening("w", "window", width=9.0, height=9.0, sill=0.0),)))
    assert finding.check == "geometry/thin-wall" and "only 0 mm" in finding.message


def test_openings_overlap(plan: Plan, refused: Refuse, opening: Open) -> None:
    windows = tuple(
        opening(name, "window", width=20.0, height=20.0, sill=20.0, centre=x) for name, x in (("a", 50.0), ("b", 60.0))
    )
    (finding,) = refused(plan("wall_panel", WALL, windows))
    assert finding.check == "geometry/openings-overlap"
    assert finding.message == "the window “a” and the window “b” overlap or touch"


def test_shapes_without_openings(plan: Plan, refused: Refuse, opening: Open) -> None:
    (finding,) = refused(plan("disc", {"radius": 50.0}, (opening("d", "door", width=9.0, height=9.0),)))
    assert (
        finding.check == "geometry/opening-not-here" and "wall_panel, " in finding.hint and "gable_wall" in finding.hint
    )
