"""Doors, windows and slits: sill, jambs and head in one chain."""

from collections.abc import Callable

import pytest

from publisher.design import OpeningPlan, PartPlan
from publisher.geometry import Part
from publisher.geometry.openings import draw_openings

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Open = Callable[..., OpeningPlan]


@pytest.mark.parametrize("head", ["square", "round", "segmental", "pointed"])
@pytest.mark.parametrize("kind", ["door", "window", "slit"])
def test_the_chain_runs_from_the_sill_round_the_head(opening: Open, kind: str, head: str) -> None:
    sizes: dict[str, float | str] = {"width": 10.0, "height": 40.0, "sill": 20.0, "head": head}
    plan = opening("o", kind, **sizes | ({"rise": 3.0} if head == "segmental" else {}))
    (drawn,), found = draw_openings((plan,), 55.0, "part p", 5.0)
    assert found == () and drawn.mark is None and not drawn.open_below
    names = list(dict.fromkeys(edge.name for edge in drawn.path.edges))
    assert names == ["o.sill", "o.right", "o.head", "o.left"]
    edges = drawn.path.edges
    assert all(a.end == pytest.approx(b.start) for a, b in zip(edges, (*edges[1:], edges[0]), strict=True))
    assert (drawn.opening.centre, drawn.opening.sill, drawn.opening.height) == (55.0, 20.0, 40.0)


def test_only_a_door_on_the_ground_is_open_below(opening: Open) -> None:
    plans = (opening("a", "door", width=9.0, height=20.0), opening("b", "window", width=9.0, height=20.0, sill=0.0))
    (door, window), _ = draw_openings(plans, 30.0, "part p")
    assert door.open_below and not window.open_below
