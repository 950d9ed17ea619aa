"""Round holes, pockets and pin holes."""

from collections.abc import Callable
from math import pi

import pytest

from publisher.basics import (
    Arc,
    Finding,
    LineKind,
    Purpose,
)
from publisher.design import OpeningPlan, PartPlan
from publisher.geometry import Part, area

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]
Open = Callable[..., OpeningPlan]
Sizes = dict[str, float | str]
WALL: Sizes = {"width": 140.0, "height": 80.0}


def test_a_round_hole(plan: Plan, drawn: Draw, opening: Open) -> None:
    part = drawn(plan("wall_panel", WALL, (opening("port", "round_hole", diameter=18.0, centre=40.0, up=50.0),)))
    assert area(part.outline) == pytest.approx(140.0 * 80.0 - pi * 81.0, rel=1e-12)
    (found,) = part.openings
    assert (found.name, found.kind, found.width, found.height, found.centre) == ("port", "round_hole", 18.0, 18.0, 40.0)
    assert found.sill == pytest.approx(41.0) and part.outline.holes == (found.ring,)
    assert {(run.name, run.centre, run.radius) for run in found.ring.edges} == {("port.rim", (40.0, 50.0), 9.0)}


@pytest.mark.parametrize(
    ("sizes", "words", "size"),
    [
        ({"diameter": 10.0}, "pocket, 2.5 mm deep from the inside", 10.0),
        ({"diameter": 10.0, "depth": 3.0, "face": "outside"}, "pocket, 3 mm deep from the outside", 10.0),
        ({"form": "rectangle", "width": 20.0, "height": 6.0}, "pocket, 2.5 mm deep from the inside", 20.0),
    ],
)
def test_a_pocket_is_a_score_line_and_no_hole(
    plan: Plan, drawn: Draw, opening: Open, sizes: Sizes, words: str, size: float
) -> None:
    part = drawn(plan("wall_panel", WALL, (opening("magnet", "pocket", up=20.0, **sizes),)))
    assert area(part.outline) == pytest.approx(140.0 * 80.0) and not part.openings and not part.outline.holes
    (mark,) = part.marks
    assert (mark.kind, mark.purpose, mark.path.closed, mark.text) == (LineKind.SCORE, Purpose.POCKET, True, words)
    assert (mark.path.box.left, mark.path.box.right) == pytest.approx((70.0 - size / 2.0, 70.0 + size / 2.0))
    assert all(isinstance(edge, Arc) for edge in mark.path.edges) is ("form" not in sizes)


def test_a_pin_hole_is_a_cross(plan: Plan, drawn: Draw, opening: Open) -> None:
    part = drawn(plan("wall_panel", WALL, (opening("pin", "pin_hole", centre=30.0, up=20.0),)))
    (mark,) = part.marks
    assert (mark.kind, mark.purpose, mark.text) == (LineKind.DRAW, Purpose.CENTRE, "pin")
    assert (30.0, 20.0) in mark.path.points and not part.outline.holes


@pytest.mark.parametrize(
    ("kind", "sizes", "words"),
    [
        ("pocket", {"up": 20.0}, "needs diameter"),
        ("pocket", {"up": 20.0, "diameter": 9.0, "width": 9.0}, "width is given"),
        ("pocket", {"up": 20.0, "form": "rectangle", "width": 9.0}, "needs height"),
        ("pocket", {"up": 20.0, "diameter": 9.0, "depth": 4.5}, "cuts through board of 5 mm"),
        ("pocket", {"up": 5.0, "diameter": 9.0}, "only 0.5 mm of board stay"),
        ("round_hole", {"up": 5.0, "diameter": 9.0}, "only 0.5 mm of board stay"),
        ("round_hole", {"up": 80.0, "diameter": 9.0}, "runs over the edge"),
        ("pin_hole", {"up": 1.5}, "only 0.5 mm of board stay"),
    ],
)
def test_holes_that_cannot_be(plan: Plan, refused: Refuse, opening: Open, kind: str, sizes: Sizes, words: str) -> None:
    (finding,) = refused(plan("wall_panel", WALL, (opening("o", kind, **sizes),)))
    assert words in finding.message and finding.place is not None and finding.place.line >= 40


def test_pockets_and_windows_keep_apart(plan: Plan, refused: Refuse, opening: Open) -> None:
    window = opening("w", "window", width=20.0, height=20.0, sill=20.0)
    (finding,) = refused(plan("wall_panel", WALL, (window, opening("m", "pocket", diameter=10.0, up=40.0))))
    assert finding.check == "geometry/openings-overlap" and "the pocket “m”" in finding.message
