"""A bridge deck: area and lines."""

from collections.abc import Callable

import pytest

from publisher.basics import Finding
from publisher.design import PartPlan
from publisher.geometry import Part, area

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]


def test_deck(plan: Plan, drawn: Draw) -> None:
    part = drawn(plan("deck", {"length": 280.0, "width": 75.0, "rebate": 5.0, "kerb": 8.0}))
    assert area(part.outline) == pytest.approx(280.0 * 75.0)
    heights = {name: [m.path.points[0][1] for m in part.marks if m.name == name] for name in ("rebate", "kerb")}
    assert heights == {"rebate": [5.0, 70.0], "kerb": [13.0, 62.0]}


def test_a_deck_without_a_roadway(plan: Plan, refused: Refuse, drawn: Draw) -> None:
    (finding,) = refused(plan("deck", {"length": 280.0, "width": 30.0, "kerb": 14.0}))
    assert "no roadway" in finding.message and finding.limit == 13.5
    drawn(plan("deck", {"length": 280.0, "width": 30.0, "kerb": 13.5}))
