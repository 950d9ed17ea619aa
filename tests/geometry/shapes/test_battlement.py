"""The shape battlement against closed forms."""

from collections.abc import Callable

import pytest

from publisher.basics import Finding
from publisher.design import PartPlan
from publisher.geometry import Part, area

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]
Sizes = dict[str, float | str]
WALL: Sizes = {"width": 140.0, "height": 40.0, "merlons": 5.0, "crenel_depth": 10.0}


@pytest.mark.parametrize(("ends", "crenels"), [("merlon", 4), ("half_merlon", 5), ("crenel", 6)])
@pytest.mark.parametrize("crenel", [None, 8.0])
def test_merlons_and_crenels_close_evenly(
    plan: Plan, drawn: Draw, ends: str, crenels: int, crenel: float | None
) -> None:
    sizes: Sizes = {**WALL, "ends": ends} | ({"crenel": crenel} if crenel else {})
    part = drawn(plan("battlement", sizes))
    gap = crenel or 140.0 / (5 + crenels)
    merlon = (140.0 - crenels * gap) / 5.0
    assert area(part.outline) == pytest.approx(140.0 * 40.0 - crenels * gap * 10.0, rel=1e-12)
    lengths = {e.name: e.nominal_length for e in part.edges}
    cut = [name for name in lengths if name.startswith("crenel")]
    assert sorted(cut) == [f"crenel_{k + 1}" for k in range(crenels)]
    assert all(lengths[name] == pytest.approx(gap) for name in cut)
    tops = [lengths[name] for name in lengths if name.startswith("merlon")]
    halves = [merlon / 2.0] * 2 if ends == "half_merlon" else []
    assert sorted(tops) == pytest.approx(sorted([*halves, *[merlon] * (5 - len(halves) // 2)]))
    assert lengths["left"] == lengths["right"] == pytest.approx(30.0 if ends == "crenel" else 40.0)


def test_they_are_counted_from_the_left(plan: Plan, drawn: Draw) -> None:
    part = drawn(plan("battlement", WALL))
    first, last = part.edge("merlon_1"), part.edge("merlon_5")
    assert first is not None and first.end == (0.0, 40.0) and last is not None and last.start == (140.0, 40.0)


@pytest.mark.parametrize(
    ("sizes", "name", "words"),
    [
        ({"merlons": 30.0}, "merlons", "leave 2.373 mm for each merlon"),
        ({"crenel": 34.0}, "crenel", "leave 0.8 mm for each merlon"),
        ({"crenel": 26.0, "ends": "half_merlon"}, "crenel", "leave 2 mm for each merlon"),
        ({"crenel_depth": 38.0}, "crenel_depth", "cut through a wall"),
    ],
)
def test_battlements_that_cannot_be(plan: Plan, refused: Refuse, sizes: Sizes, name: str, words: str) -> None:
    (finding,) = refused(plan("battlement", {**WALL, **sizes}))
    assert words in finding.message and finding.place is not None and finding.place.pointer.endswith(f"/{name}")
