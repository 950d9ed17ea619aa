"""Brick courses: bond, clearances, count."""

from collections.abc import Callable

import pytest
import shapely

from publisher.basics import Finding, LineKind, Purpose
from publisher.design import OpeningPlan, PartPlan, SurfacePlan
from publisher.geometry import Mark, Part, polygon

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]
Cover = Callable[..., SurfacePlan]
WALL: dict[str, float | str] = {"width": 90.0, "height": 60.0}


def joints(part: Part) -> tuple[list[Mark], list[Mark]]:
    marks = [m for m in part.marks if m.purpose is Purpose.SURFACE]
    assert all(m.kind is LineKind.DRAW for m in marks)
    beds = [m for m in marks if m.points[0][1] == m.points[1][1]]
    return beds, [m for m in marks if m not in beds]


def test_courses_and_bond(plan: Plan, drawn: Draw, surface: Cover) -> None:
    part = drawn(plan("wall_panel", WALL, surface=surface("brick", length=9.0, height=3.0)))
    beds, heads = joints(part)
    assert sorted(m.points[0][1] for m in beds) == pytest.approx([3.0 * k for k in range(1, 20)])
    assert len(beds) == 19
    rows: dict[int, list[float]] = {}
    for mark in heads:
        rows.setdefault(int(min(mark.points[0][1], mark.points[1][1]) // 3.0), []).append(mark.points[0][0])
    assert len(rows) == 20
    for row in range(19):
        # TMS 402: neighbouring courses overlap by at least a quarter of the unit's length; half a brick here
        apart = min(abs(a - b) for a in rows[row] for b in rows[row + 1])
        assert apart == pytest.approx(4.5) and apart >= 9.0 / 4.0


def test_joints_keep_clear_of_cuts(
    plan: Plan, drawn: Draw, surface: Cover, opening: Callable[..., OpeningPlan]
) -> None:
    openings = (
        opening("d", "door", width=20.0, height=40.0, head="round", centre=25.0),
        opening("w", "window", width=20.0, height=20.0, sill=20.0, centre=65.0),
    )
    part = drawn(plan("wall_panel", WALL, openings, surface=surface("brick", length=9.0, height=3.0)))
    beds, heads = joints(part)
    body = polygon(part.outline)
    lines = shapely.linestrings([m.points for m in (*beds, *heads)])
    assert shapely.contains(body, lines).all()
    assert shapely.distance(body.boundary, lines).min() > 0.99
    assert shapely.length(lines).min() >= 1.0


def test_the_same_plan_gives_the_same_joints(plan: Plan, drawn: Draw, surface: Cover) -> None:
    wall = plan("wall_panel", WALL, surface=surface("brick", length=7.0, height=2.5))
    assert drawn(wall).marks == drawn(wall).marks


@pytest.mark.parametrize(
    ("pattern", "sizes", "check"),
    [
        ("bricks", {"length": 9.0, "height": 3.0}, "geometry/unknown-shape"),
        ("brick", {"length": 3.0, "height": 9.0}, "geometry/impossible-sizes"),
        ("brick", {"length": 2.0, "height": 1.0}, "geometry/surface-too-fine"),
        ("brick", {"length": 0.0, "height": 1.0}, "geometry/size-out-of-range"),
        ("brick", {"length": 9.0}, "geometry/missing-parameter"),
        ("brick", {"length": 9.0, "height": 3.0, "bond": "wild"}, "geometry/size-out-of-range"),
    ],
)
def test_patterns_that_cannot_be(
    plan: Plan, refused: Refuse, surface: Cover, pattern: str, sizes: dict[str, float | str], check: str
) -> None:
    wall = {"width": 300.0, "height": 60.0}
    (finding,) = refused(plan("wall_panel", wall, surface=surface(pattern, **sizes)))
    assert finding.check == check
