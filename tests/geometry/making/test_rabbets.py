"""Rabbets: what stays of the board, and what the template says."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from publisher.basics import LineKind, Place, Purpose
from publisher.design import CombineStep, EdgeTreatment, Parameter, PartPlan, Rabbet, SlotRow
from publisher.geometry import Part, area, behind_paper, polygon, rabbet_strip

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Treat = Callable[..., EdgeTreatment]
HERE = Place("spec.yaml", 1, 1)
WALL: dict[str, float | str] = {"width": 120.0, "height": 60.0}


def rabbeted(treatment: Treat, edge: str, width: float = 4.8, **more: tuple[SlotRow, ...]) -> EdgeTreatment:
    return replace(treatment(edge, matches=("a",), **more), rabbet=Rabbet(width, 0.3))


def test_the_panel_keeps_its_width_and_its_foam_ends_a_board_before(plan: Plan, drawn: Draw, treatment: Treat) -> None:
    part = drawn(plan("wall_panel", WALL, (), (rabbeted(treatment, "right"), rabbeted(treatment, "left", 3.0))))
    assert polygon(part.outline).bounds == (0.0, 0.0, 120.0, 60.0)
    foam = behind_paper(part)
    assert polygon(foam).bounds == pytest.approx((3.0, 0.0, 115.2, 60.0))
    assert area(foam) == pytest.approx((120.0 - 4.8 - 3.0) * 60.0)
    assert {run.name for run in foam.outer.edges} == {"bottom", "top", "rabbet"}
    edge = part.edge("right")
    assert edge is not None
    assert edge.rabbet == Rabbet(4.8, 0.3)


def test_a_part_without_rabbets_is_the_same_behind_its_paper(plan: Plan, drawn: Draw) -> None:
    part = drawn(plan("wall_panel", WALL))
    assert behind_paper(part) is part.outline
    assert all(rabbet_strip(edge, polygon(part.outline)).is_empty for edge in part.edges)


def test_the_line_lies_on_the_far_face_and_the_note_says_what_stays(plan: Plan, drawn: Draw, treatment: Treat) -> None:
    part = drawn(plan("wall_panel", WALL, (), (rabbeted(treatment, "right"),)))
    line, note = sorted((m for m in part.marks if m.purpose is Purpose.RABBET), key=lambda m: m.text)
    assert line.kind is LineKind.REFERENCE  # a line to score would cut the paper that has to stay
    assert [x for x, _ in line.path.points] == pytest.approx([115.2, 115.2])
    assert note.text == "rabbet 4.8 mm"
    (letter,) = (m for m in part.marks if m.purpose is Purpose.MATCH)
    assert letter.path.points[0][0] < 115.2 - 2.0  # on foam that stays


def test_a_narrow_panel_has_the_short_note(plan: Plan, drawn: Draw, treatment: Treat) -> None:
    part = drawn(plan("wall_panel", {"width": 60.0, "height": 60.0}, (), (rabbeted(treatment, "right"),)))
    assert [m.text for m in part.marks if m.purpose is Purpose.RABBET and m.text] == ["rabbet 4.8 mm"]


def test_beside_an_edge_that_ends_in_rising_board_the_foam_is_cut_to_the_rim(
    plan: Plan, drawn: Draw, treatment: Treat
) -> None:
    """The slope of 45° begins at the end of the edge, 40 mm up: 4.8 mm further in it is 4.8 mm higher, and so is the cut."""
    sizes: dict[str, float | str] = {"span": 60.0, "past": 0.0, "eaves": 40.0, "pitch": 45.0}
    part = drawn(plan("gable_wall", sizes, (), (rabbeted(treatment, "right"),)))
    foam = polygon(behind_paper(part))
    assert foam.bounds[2] == pytest.approx(60.0 - 4.8)
    assert area(part.outline) - foam.area == pytest.approx(4.8 * 40.0 + 4.8 * 4.8 / 2)
    line = next(m for m in part.marks if m.purpose is Purpose.RABBET and not m.text)
    assert sorted(y for _, y in line.path.points) == pytest.approx([0.0, 44.8], abs=0.01)


def test_beside_an_edge_that_ends_in_an_inner_corner_the_cut_stops_there(
    plan: Plan, drawn: Draw, treatment: Treat
) -> None:
    """A porch 20 mm wide stands to the right of a wall and is 15 mm lower: its top ends in the corner beside the wall."""
    sizes = tuple(Parameter(name, value, "", HERE) for name, value in (("width", 25.0), ("height", 45.0)))
    porch = CombineStep("add", HERE, "rectangle", sizes, called="porch", at=(115.0, 0.0))
    part = drawn(replace(plan("wall_panel", WALL, (), (rabbeted(treatment, "porch_top"),)), combine=(porch,)))
    lost = area(part.outline) - area(behind_paper(part))
    assert lost == pytest.approx(4.8 * 20.0)
