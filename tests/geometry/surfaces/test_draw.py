"""Patterns clipped to the board between outline and openings."""

from collections.abc import Callable

import shapely

from publisher.basics import Finding, Purpose
from publisher.design import EdgeTreatment, OpeningPlan, PartPlan, SurfacePlan
from publisher.geometry import Mark, Part, polygon

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]
Cover = Callable[..., SurfacePlan]
WALL: dict[str, float | str] = {"width": 90.0, "height": 60.0}


def joints(part: Part) -> tuple[list[Mark], list[Mark]]:
    marks = [m for m in part.marks if m.purpose is Purpose.SURFACE]
    beds = [m for m in marks if m.points[0][1] == m.points[1][1]]
    return beds, [m for m in marks if m not in beds]


def test_joints_keep_clear_of_cuts(
    plan: Plan, drawn: Draw, surface: Cover, opening: Callable[..., OpeningPlan]
) -> None:
    openings = (
        opening("d", "door", width=20.0, height=40.0, head="round", centre=25.0),
        opening("w", "window", width=20.0, height=20.0, sill=20.0, centre=65.0),
    )
    part = drawn(plan("wall_panel", WALL, openings, surface=surface("brick", length=9.0, height=3.0)))
    beds, heads = joints(part)
    body = polygon(part.outline)
    lines = shapely.linestrings([m.points for m in (*beds, *heads)])
    assert shapely.contains(body, lines).all()
    assert shapely.distance(body.boundary, lines).min() > 0.99
    assert shapely.length(lines).min() >= 1.0


def test_the_same_plan_gives_the_same_joints(plan: Plan, drawn: Draw, surface: Cover) -> None:
    wall = plan("wall_panel", WALL, surface=surface("brick", length=7.0, height=2.5))
    assert drawn(wall).marks == drawn(wall).marks


def test_joints_leave_room_for_words(
    plan: Plan, drawn: Draw, surface: Cover, treatment: Callable[..., EdgeTreatment]
) -> None:
    joins = (treatment("right", 5.0, matches=("a",)),)
    part = drawn(plan("wall_panel", WALL, (), joins, surface=surface("brick", length=9.0, height=3.0)))
    (word,) = [m for m in part.marks if m.text]
    lines = shapely.linestrings([m.points for m in part.marks if m.purpose is Purpose.SURFACE])
    assert shapely.distance(shapely.Point(word.points[0]), lines).min() >= 2.5 - 1e-9
