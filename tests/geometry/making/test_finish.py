"""From shape to part: what is kept, what is traced, what is clipped."""

from collections.abc import Callable
from dataclasses import replace

from publisher.basics import Finding, Purpose
from publisher.design import EdgeTreatment, OpeningPlan, PartPlan, SlotRow, TabRow
from publisher.geometry import Part, area

Plan = Callable[..., PartPlan]
WALL: dict[str, float | str] = {"width": 140.0, "height": 80.0}


def test_a_part_keeps_what_its_plan_says(plan: Plan, drawn: Callable[[PartPlan], Part]) -> None:
    given = replace(plan("wall_panel", WALL, trace_allowance=0.4), mirrored=1, letter="C", thickness=4.8)
    part = drawn(given)
    for name in (
        "id",
        "letter",
        "name",
        "board",
        "thickness",
        "shape",
        "count",
        "spare",
        "mirrored",
        "turning",
        "place",
    ):
        assert getattr(part, name) == getattr(given, name)
    assert part.trace_allowance == 0.4 and area(part.template) < area(part.outline)
    assert drawn(replace(given, trace_allowance=0.0)).template == part.outline


def test_all_findings_of_a_part_are_reported_together(
    plan: Plan,
    refused: Callable[[PartPlan], tuple[Finding, ...]],
    opening: Callable[..., OpeningPlan],
    treatment: Callable[..., EdgeTreatment],
) -> None:
    openings = (
        opening("a", "window", width=20.0, height=20.0, sill=70.0),
        opening("b", "window", width=20.0, height=20.0, sill=20.0, centre=5.0),
    )
    joins = (treatment("right", 5.0, tabs=TabRow(1, 5.0)), treatment("left", slots=(SlotRow(1, 1.0, 5.0, 0.3),)))
    found = refused(plan("wall_panel", WALL, openings, joins))
    assert [f.check.partition("/")[2] for f in found] == [
        "opening-over-edge",
        "opening-over-edge",
        "thin-wall",
        "openings-overlap",
    ]


def test_an_opening_off_the_panel_is_one_finding_not_two(
    plan: Plan, refused: Callable[[PartPlan], tuple[Finding, ...]], opening: Callable[..., OpeningPlan]
) -> None:
    assert len(refused(plan("wall_panel", WALL, (opening(width=20.0, height=20.0, centre=135.0),)))) == 1


def test_words_stand_in_the_finished_part(
    plan: Plan, drawn: Callable[[PartPlan], Part], treatment: Callable[..., EdgeTreatment]
) -> None:
    part = drawn(plan("wall_panel", WALL, (), (treatment("top", 5.0, bevel=10.0, matches=("a",)),)))
    assert [(m.purpose, m.text) for m in part.marks if m.text] == [
        (Purpose.MATCH, "a"),
        (Purpose.BEVEL, "10°"),
    ]
