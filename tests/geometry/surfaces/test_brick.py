"""Brick courses: bond, clearances, count."""

from collections.abc import Callable

import pytest

from publisher.basics import Finding, LineKind, Purpose
from publisher.design import PartPlan, SurfacePlan
from publisher.geometry import Mark, Part

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
