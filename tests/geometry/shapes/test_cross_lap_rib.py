"""The shape cross_lap_rib against closed forms."""

from collections.abc import Callable

import pytest
import shapely

from publisher.basics import Finding
from publisher.design import PartPlan
from publisher.geometry import Part, area, polygon

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]
Sizes = dict[str, float | str]
RIB: Sizes = {"length": 120.0, "height": 30.0, "slots": 3.0}


@pytest.mark.parametrize("side", ["above", "below"])
def test_slots_are_half_as_deep_as_the_rib(plan: Plan, drawn: Draw, side: str) -> None:
    part = drawn(plan("cross_lap_rib", {**RIB, "slots_from": side, "play": 0.4}))
    assert area(part.outline) == pytest.approx(120.0 * 30.0 - 3 * 5.4 * 15.0, rel=1e-12)
    body = polygon(part.outline)
    for middle in (30.0, 60.0, 90.0):  # four equal lengths
        bare = body.intersection(shapely.LineString([(middle, -1.0), (middle, 31.0)]))
        assert bare.length == pytest.approx(15.0)
        assert bare.centroid.y == pytest.approx(7.5 if side == "above" else 22.5)
    assert [e.name for e in part.edges] == ["bottom", "right", "top", "left"]
    assert [e.nominal_length for e in part.edges] == pytest.approx([120.0, 30.0, 120.0, 30.0])


def test_two_ribs_cross_flush(plan: Plan, drawn: Draw) -> None:
    one, other = (drawn(plan("cross_lap_rib", {**RIB, "slots_from": side})) for side in ("above", "below"))
    at = shapely.LineString([(60.0, -1.0), (60.0, 31.0)])
    solid = [polygon(part.outline).intersection(at) for part in (one, other)]
    assert solid[0].intersection(solid[1]).length == pytest.approx(0.0)  # what one leaves, the other fills
    assert solid[0].union(solid[1]).length == pytest.approx(30.0)


@pytest.mark.parametrize(("count", "middles"), [(1, [20.0]), (2, [20.0, 100.0]), (5, [20.0, 40.0, 60.0, 80.0, 100.0])])
def test_slots_from_each_end(plan: Plan, drawn: Draw, count: int, middles: list[float]) -> None:
    part = drawn(plan("cross_lap_rib", {**RIB, "slots": float(count), "end": 20.0, "mate": 3.0, "play": 0.0}))
    floors = sorted(x for x, y in part.outline.outer.points if y == 15.0)
    assert floors == pytest.approx(sorted(x + half for x in middles for half in (-1.5, 1.5)))


@pytest.mark.parametrize(
    ("sizes", "name", "words"),
    [
        ({"end": 5.0}, "end", "2.35 mm of board at the end"),
        ({"slots": 15.0}, "slots", "2.2 mm of board between them"),
        ({"slots": 15.0, "end": 10.0, "mate": 5.0, "length": 90.0}, "slots", "0 mm of board between them"),
        ({"height": 5.0}, "height", "leave 2.5 mm under them"),
    ],
)
def test_ribs_that_cannot_be(plan: Plan, refused: Refuse, sizes: Sizes, name: str, words: str) -> None:
    (finding,) = refused(plan("cross_lap_rib", {**RIB, **sizes}))
    assert words in finding.message and finding.place is not None and finding.place.pointer.endswith(f"/{name}")
