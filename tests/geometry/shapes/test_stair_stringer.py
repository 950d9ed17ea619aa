"""The shape stair_stringer against closed forms."""

from collections.abc import Callable
from math import atan2, cos, hypot, sin

import pytest

from publisher.basics import Finding
from publisher.design import PartPlan
from publisher.geometry import Part, area, polygon

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]
Sizes = dict[str, float | str]
FLIGHT: Sizes = {"steps": 5.0, "rise": 10.0, "going": 12.0}


@pytest.mark.parametrize("steps", [1, 2, 5, 12])
def test_a_solid_flight(plan: Plan, drawn: Draw, steps: int) -> None:
    part = drawn(plan("stair_stringer", {**FLIGHT, "steps": float(steps)}))
    # a staircase of unit rectangles: 1 + 2 + … + n of them
    assert area(part.outline) == pytest.approx(10.0 * 12.0 * steps * (steps + 1) / 2.0, rel=1e-12)
    assert polygon(part.outline).bounds == pytest.approx((0.0, 0.0, 12.0 * steps, 10.0 * steps))
    names = [edge.name for edge in part.edges]
    steps_down = [f"{kind}_{k}" for k in range(steps, 0, -1) for kind in ("tread", "riser")]
    assert names == ["bottom", "back", *steps_down]
    assert all(part.edge(f"tread_{k}").nominal_length == pytest.approx(12.0) for k in range(1, steps + 1))  # type: ignore[union-attr]


def test_a_flight_with_a_throat(plan: Plan, drawn: Draw) -> None:
    part = drawn(plan("stair_stringer", {**FLIGHT, "throat": 8.0}))
    pitch = atan2(10.0, 12.0)
    # the solid flight less the right triangle under the underside
    foot, end = 8.0 / sin(pitch), 50.0 - 8.0 / cos(pitch)
    assert area(part.outline) == pytest.approx(1800.0 - (60.0 - foot) * end / 2.0, rel=1e-12)
    under = part.edge("underside")
    assert under is not None and under.nominal_length == pytest.approx(hypot(60.0 - foot, end))
    # the inner corners lie on a line through the foot at the pitch: their distance from the underside is the throat
    (ax, ay), (bx, by) = under.start, under.end
    for k in range(5):
        x, y = 12.0 * k, 10.0 * k
        away = ((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / under.nominal_length
        assert away == pytest.approx(8.0)


@pytest.mark.parametrize(("throat", "words"), [(2.0, "tears"), (40.0, "beyond the end of the flight")])
def test_throats_that_cannot_be(plan: Plan, refused: Refuse, throat: float, words: str) -> None:
    (finding,) = refused(plan("stair_stringer", {**FLIGHT, "throat": throat}))
    assert words in finding.message and finding.value == throat
    assert finding.place is not None and finding.place.pointer.endswith("/throat")


def test_the_deepest_throat_is_as_deep_as_it_says(plan: Plan, refused: Refuse, drawn: Draw) -> None:
    (finding,) = refused(plan("stair_stringer", {**FLIGHT, "throat": 40.0}))
    assert finding.limit is not None
    drawn(plan("stair_stringer", {**FLIGHT, "throat": finding.limit - 1e-6}))
