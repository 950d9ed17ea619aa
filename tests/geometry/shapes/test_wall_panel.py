"""The shape wall_panel against closed forms."""

from collections.abc import Callable

from publisher.design import PartPlan
from publisher.geometry import Part, area

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]


def test_wall(plan: Plan, drawn: Draw) -> None:
    part = drawn(plan("wall_panel", {"width": 140.0, "height": 80.0}))
    assert area(part.outline) == 11200.0
    assert [e.name for e in part.edges] == ["bottom", "right", "top", "left"]
    assert all(e.face == "outside" and e.start == e.nominal_start for e in part.edges)
