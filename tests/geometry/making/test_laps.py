"""Slots of panels that cross, against outlines computed by hand."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from publisher.basics import Finding, Purpose
from publisher.design import EdgeTreatment, LapSlot, PartPlan
from publisher.geometry import Part, area

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]
Treat = Callable[..., EdgeTreatment]
RIB: dict[str, float | str] = {"width": 160.0, "height": 40.0}


def crossed(treatment: Treat, edge: str, *at: float, mate: float = 5.0, play: float = 0.3) -> EdgeTreatment:
    laps = tuple(LapSlot(one, mate, play, (letter,)) for one, letter in zip(at, "abcdef", strict=False))
    return replace(treatment(edge, matches=tuple("abcdef"[: len(at)])), laps=laps)


@pytest.mark.parametrize(("edge", "levels"), [("top", (40.0, 20.0)), ("bottom", (0.0, 20.0))])
def test_slots_are_half_the_height_deep_and_count_from_the_left_end(
    plan: Plan, drawn: Draw, treatment: Treat, edge: str, levels: tuple[float, float]
) -> None:
    """Middles at 50 and 110 mm, 5 + 0.3 mm wide: x 47.35 … 52.65 and 107.35 … 112.65, half of 40 mm deep."""
    part = drawn(plan("wall_panel", RIB, (), (crossed(treatment, edge, 50.0, 110.0),)))
    assert area(part.outline) == pytest.approx(160.0 * 40.0 - 2 * 5.3 * 20.0)
    slots = sorted(sorted(run.points) for run in part.outline.outer.stretches() if run.name == f"{edge}.lap")
    for slot, middle in zip(slots, (50.0, 110.0), strict=True):
        assert (slot[0][0], slot[-1][0]) == pytest.approx((middle - 2.65, middle + 2.65))
        assert sorted({round(y, 9) for _, y in slot}) == sorted(levels)
    found = part.edge(edge)
    assert found is not None
    assert [(lap.at, lap.height, lap.matches) for lap in found.laps] == [(50.0, 40.0, ("a",)), (110.0, 40.0, ("b",))]
    assert found.laps[0].floor == pytest.approx((50.0, 20.0))


def test_a_shortened_edge_keeps_the_floor_of_its_slots(plan: Plan, drawn: Draw, treatment: Treat) -> None:
    part = drawn(plan("wall_panel", RIB, (), (replace(crossed(treatment, "bottom", 50.0), take_off=5.0),)))
    (slot,) = (run.points for run in part.outline.outer.stretches() if run.name == "bottom.lap")
    assert {round(y, 9) for _, y in slot} == {5.0, 20.0}


def test_a_slot_under_a_slope_is_half_of_what_is_there(plan: Plan, drawn: Draw, treatment: Treat) -> None:
    """A gable of span 110, past 10, eaves 80 and 45°: 20 mm from its left end it is 90 mm high."""
    sizes: dict[str, float | str] = {"span": 110.0, "past": 10.0, "eaves": 80.0, "pitch": 45.0}
    part = drawn(plan("gable_wall", sizes, (), (crossed(treatment, "bottom", 20.0),)))
    bottom = part.edge("bottom")
    assert bottom is not None
    assert bottom.laps[0].height == pytest.approx(90.0)


def test_letters_stand_beside_their_slots(plan: Plan, drawn: Draw, treatment: Treat) -> None:
    part = drawn(plan("wall_panel", RIB, (), (crossed(treatment, "top", 50.0, 110.0),)))
    letters = {mark.text: mark.path.points[0] for mark in part.marks if mark.purpose is Purpose.MATCH}
    assert set(letters) == {"a", "b"}
    assert 5.65 <= abs(letters["a"][0] - 50.0) <= 20.0
    assert 5.65 <= abs(letters["b"][0] - 110.0) <= 20.0


@pytest.mark.parametrize("at", [0.0, 2.6, 157.4, 500.0])
def test_a_slot_that_is_not_whole_on_the_edge_is_refused(
    plan: Plan, refused: Refuse, treatment: Treat, at: float
) -> None:
    found = refused(plan("wall_panel", RIB, (), (crossed(treatment, "top", at),)))
    assert "geometry/slot-off-panel" in {finding.check for finding in found}
    first = next(finding for finding in found if finding.check == "geometry/slot-off-panel")
    assert "between 2.65 mm and 157.35 mm" in first.hint
    assert first.place is not None
    assert first.place.line == 60


def test_slots_with_no_board_between_them_are_refused(plan: Plan, refused: Refuse, treatment: Treat) -> None:
    found = refused(plan("wall_panel", RIB, (), (crossed(treatment, "top", 50.0, 55.5),)))
    assert [finding.check for finding in found] == ["geometry/thin-wall"]
