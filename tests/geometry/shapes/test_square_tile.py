"""Square tiles: the pitch stays, the joint is taken off."""

from collections.abc import Callable

import pytest

from publisher.basics import Finding
from publisher.design import PartPlan
from publisher.geometry import Part, area

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]


def test_fields_meet_across_tiles(plan: Plan, drawn: Draw) -> None:
    part = drawn(plan("square_tile", {"side": 50.0, "gap": 0.4, "fields": 2}))
    assert area(part.outline) == pytest.approx(49.6**2)
    (upright,) = [m for m in part.marks if m.path.points[0][1] == 0.0 and m.path.points[0][0] > 0.0]
    # half a field to the neighbour's edge over half a joint: 24.8 + 0.2
    assert upright.path.points[0][0] == pytest.approx(24.8)


def test_fields_too_small(plan: Plan, refused: Refuse) -> None:
    (finding,) = refused(plan("square_tile", {"side": 20.0, "fields": 11}))
    assert finding.limit == 10.0
