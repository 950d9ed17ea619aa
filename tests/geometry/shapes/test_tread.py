"""The shape tread against closed forms."""

from collections.abc import Callable
from math import asin, pi, sin

import pytest

from publisher.basics import Finding
from publisher.design import PartPlan
from publisher.geometry import Part, area

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]
Sizes = dict[str, float | str]


@pytest.mark.parametrize("radius", [0.0, 3.0, 13.0])
def test_round_front_corners(plan: Plan, drawn: Draw, radius: float) -> None:
    part = drawn(plan("tread", {"width": 40.0, "going": 12.0, "nosing": 2.0, "nosing_radius": radius}))
    assert area(part.outline) == pytest.approx(40.0 * 14.0 - (2.0 - pi / 2.0) * radius**2, rel=1e-12)
    assert [edge.name for edge in part.edges] == ["front", "right", "back", "left"]
    front = part.edge("front")
    assert front is not None and front.nominal_length == pytest.approx(40.0 - 2.0 * radius)


def test_a_bowed_front(plan: Plan, drawn: Draw) -> None:
    part = drawn(plan("tread", {"width": 21.0, "going": 30.0, "bow": 6.0}))
    # chord 21, height 6: radius 12.1875, segment area 89.254148 (help.matheass.eu/en/CircularSections.html)
    assert area(part.outline) == pytest.approx(21.0 * 30.0 + 89.254148, abs=5e-7)
    front = part.edge("front")
    assert front is not None and front.radius == pytest.approx(12.1875)
    half = asin(10.5 / 12.1875)
    assert area(part.outline) == pytest.approx(630.0 + 12.1875**2 * (half - sin(2.0 * half) / 2.0), rel=1e-12)


@pytest.mark.parametrize(
    ("sizes", "name", "words"),
    [
        ({"nosing_radius": 12.0}, "nosing_radius", "leave no straight side"),
        ({"bow": 21.0}, "bow", "more than a half circle"),
        ({"bow": 0.1}, "bow", "straight to the eye"),
        ({"bow": 4.0, "nosing_radius": 3.0}, "bow", "one arc or the other"),
    ],
)
def test_treads_that_cannot_be(plan: Plan, refused: Refuse, sizes: Sizes, name: str, words: str) -> None:
    (finding,) = refused(plan("tread", {"width": 40.0, "going": 12.0, **sizes}))
    assert words in finding.message and finding.place is not None and finding.place.pointer.endswith(f"/{name}")
