"""The side of a bridge against the segment of a circle."""

from collections.abc import Callable
from itertools import pairwise
from math import asin, dist, pi, sin

import pytest

from publisher.basics import Finding
from publisher.design import PartPlan
from publisher.geometry import Part, area

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]


SIDE: dict[str, float | str] = {
    "form": "segmental", "span": 160.0, "rise": 50.0, "spandrel": 25.0, "length": 280.0, "springing": 15.0,
    "voussoirs": 21, "voussoir_depth": 14.0,
}  # fmt: skip


def test_segmental_side(plan: Plan, drawn: Draw) -> None:
    part = drawn(plan("arch_side", SIDE))
    angle = 2.0 * asin(80.0 / 89.0)
    segment = 89.0**2 * (angle - sin(angle)) / 2.0  # area of a circular segment
    assert area(part.outline) == pytest.approx(280.0 * 90.0 - 160.0 * 15.0 - segment, rel=1e-12)
    bottom, top = part.edge("bottom"), part.edge("top")
    assert bottom is not None and (bottom.start, bottom.end) == ((0.0, 0.0), (280.0, 0.0))
    assert top is not None and top.nominal_length == 280.0
    assert {run.name for run in part.outline.outer.edges} == {"bottom", "jamb", "intrados", "right", "top", "left"}


def test_joints_point_at_the_centre_and_divide_the_arch_evenly(plan: Plan, drawn: Draw) -> None:
    part = drawn(plan("arch_side", SIDE))
    joints = [mark for mark in part.marks if mark.name == "voussoir joint"]
    assert len(joints) == 22
    centre = (140.0, 15.0 + 50.0 - 89.0)
    for mark in joints:
        a, b = mark.path.points
        assert dist(a, centre) == pytest.approx(89.0) and dist(b, centre) == pytest.approx(103.0)
        assert (a[0] - centre[0]) * (b[1] - centre[1]) == pytest.approx((a[1] - centre[1]) * (b[0] - centre[0]))
    widths = [dist(a.path.points[0], b.path.points[0]) for a, b in pairwise(joints)]
    assert max(widths) - min(widths) < 1e-9
    back = next(mark for mark in part.marks if mark.name == "extrados")
    assert all(dist(p, centre) == pytest.approx(103.0) for p in back.path.points)


def test_surfaces_keep_off_the_stones(plan: Plan, drawn: Draw, surface: Callable[..., object]) -> None:
    part = drawn(plan("arch_side", SIDE, surface=surface("brick", length=12.0, height=4.0)))
    bricks = [mark for mark in part.marks if not mark.name]
    assert len(bricks) > 100
    for mark in bricks:
        x, y = ((mark.path.points[0][i] + mark.path.points[-1][i]) / 2.0 for i in (0, 1))
        inside_span = 60.0 < x < 220.0
        assert not (inside_span and dist((x, y), (140.0, -24.0)) < 103.0 and y > 15.0)


def test_semicircle_from_the_table(plan: Plan, drawn: Draw) -> None:
    part = drawn(plan("arch_side", {"form": "semicircular", "span": 80.0, "spandrel": 20.0, "length": 120.0}))
    assert area(part.outline) == pytest.approx(120.0 * 60.0 - pi * 40.0**2 / 2.0, rel=1e-12)


@pytest.mark.parametrize(
    ("bad", "good", "says"),
    [
        ({"length": 165.0}, {"length": 220.0}, "abutments"),
        ({"voussoir_depth": 26.0}, {"voussoir_depth": 25.0}, "do not fit"),
        ({"voussoirs": 110}, {"voussoirs": 90}, "wide each"),
        ({"voussoir_depth": 0.0}, {"voussoirs": 0, "voussoir_depth": 0.0}, "depth"),
        ({"rise": 90.0}, {"rise": 80.0}, "cannot rise"),
    ],
)
def test_sides_that_cannot_be(
    bad: dict[str, float], good: dict[str, float], says: str, plan: Plan, refused: Refuse, drawn: Draw
) -> None:
    found = refused(plan("arch_side", {**SIDE, **bad}))
    assert any(says in f.message for f in found)
    drawn(plan("arch_side", {**SIDE, **good}))
