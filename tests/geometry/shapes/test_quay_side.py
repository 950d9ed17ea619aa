"""Quay walls: true length on the slope, rings, courses."""

from collections.abc import Callable
from math import cos, pi, radians

import pytest

from publisher.basics import Finding
from publisher.design import PartPlan
from publisher.geometry import Part, area

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]


QUAY: dict[str, float | str] = {
    "length": 300.0, "height": 80.0, "batter": 10.0, "coping": 8.0, "course": 6.0, "rings": 4, "ring_radius": 1.0,
    "ring_drop": 20.0,
}  # fmt: skip


def test_a_wall_that_leans_back_is_longer(plan: Plan, drawn: Draw) -> None:
    part = drawn(plan("quay_side", QUAY))
    left = part.edge("left")
    assert left is not None and left.nominal_length == pytest.approx(80.0 / cos(radians(10.0)))
    assert area(part.outline) == pytest.approx(300.0 * 80.0 / cos(radians(10.0)) - 4.0 * pi, rel=1e-12)
    courses = sorted({m.path.points[0][1] for m in part.marks if m.name == "course"})
    assert len(courses) == 12 and courses[1] - courses[0] == pytest.approx(6.0)


@pytest.mark.parametrize(
    ("bad", "says"),
    [
        ({"coping": 80.0}, "covers the whole wall"),
        ({"course": 0.5}, "cannot be drawn"),
        ({"ring_radius": 0.0}, "holes that can be cut"),
        ({"ring_drop": 3.0}, "above or below"),
        ({"rings": 60, "ring_radius": 2.0}, "too close"),
    ],
)
def test_quays_that_cannot_be(bad: dict[str, float], says: str, plan: Plan, refused: Refuse) -> None:
    assert says in refused(plan("quay_side", {**QUAY, **bad}))[0].message
