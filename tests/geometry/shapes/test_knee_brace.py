"""The shape knee_brace against closed forms."""

from collections.abc import Callable

import pytest

from publisher.basics import Finding
from publisher.design import PartPlan
from publisher.geometry import Part, area

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]


@pytest.mark.parametrize(("thickness", "blunt"), [(3.0, 2.0), (5.0, 2.0), (10.0, 4.0)])
def test_area_and_edges(plan: Plan, drawn: Draw, thickness: float, blunt: float) -> None:
    part = drawn(plan("knee_brace", {"run": 40.0, "drop": 30.0}, thickness=thickness))
    assert area(part.outline) == pytest.approx(40.0 * 30.0 - (40.0 - blunt) * (30.0 - blunt) / 2.0, rel=1e-12)
    lengths = {edge.name: edge.nominal_length for edge in part.edges}
    assert lengths == {
        "foot": blunt, "slope": pytest.approx(((40.0 - blunt) ** 2 + (30.0 - blunt) ** 2) ** 0.5), "toe": blunt,
        "top": 40.0, "core": 30.0,
    }  # fmt: skip


@pytest.mark.parametrize("name", ["run", "drop"])
def test_a_brace_that_is_all_point_is_refused(plan: Plan, refused: Refuse, name: str) -> None:
    (finding,) = refused(plan("knee_brace", {"run": 40.0, "drop": 30.0, name: 5.0}))
    assert "is all point" in finding.message and finding.limit == 6.0
