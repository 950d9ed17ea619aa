"""Where a seam may lie: off openings, slots, tabs, notches, inner corners, ends and other seams; the cut itself."""

from collections.abc import Callable
from dataclasses import replace
from math import pi, sqrt

import pytest

from publisher.basics import LineKind, Place, Purpose, polyline
from publisher.design import CombineStep, EdgeTreatment, OpeningPlan, Parameter, PartPlan, SlotRow, SplitPlan, TabRow
from publisher.geometry import Mark, Part, area, polygon
from publisher.geometry.cutting.seams import cut_in_two, misplaced, seam_of

HERE = Place("spec.yaml", 30, 5)
WALL: dict[str, float | str] = {"width": 400.0, "height": 80.0}
Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]


def split(at: float, plate: float = 0.0, step: float = 0.0, start: str = "left") -> SplitPlan:
    return SplitPlan(at, "bottom" if start == "bottom" else "left", plate, step, HERE)


def found(part: Part, plan: SplitPlan, *before: SplitPlan) -> list[tuple[str, str, float | None]]:
    findings = tuple(misplaced(part, seam_of(part, plan), [seam_of(part, other) for other in before]))
    assert all(f.place == HERE and f.hint for f in findings)
    return [(f.check, f.message, f.limit) for f in findings]


@pytest.mark.parametrize("at", [-5.0, 0.0, 400.0, 401.0])
@pytest.mark.breaks("geometry/split-outside")
def test_a_seam_beside_its_part(plan: Plan, drawn: Draw, at: float) -> None:
    ((check, message, _),) = found(drawn(plan("wall_panel", WALL)), split(at))
    assert check == "geometry/split-outside" and "400.0 mm (15.75 in) long" in message


@pytest.mark.parametrize(
    ("at", "nearest"), [(5.0, 10.0), (9.0, 10.0), (10.0, None), (200.0, None), (390.0, None), (391.0, 390.0)]
)
def test_a_seam_keeps_off_the_ends(plan: Plan, drawn: Draw, at: float, nearest: float | None) -> None:
    said = found(drawn(plan("wall_panel", WALL)), split(at))
    assert [(check, limit) for check, _, limit in said] == ([("geometry/split-place", nearest)] if nearest else [])


@pytest.mark.parametrize(
    ("at", "plate", "nearest"),
    [
        (200.0, 0.0, 180.0),
        (185.0, 0.0, 180.0),
        (215.0, 0.0, 220.0),
        (180.0, 0.0, None),
        (180.0, 60.0, 160.0),
        (220.0, 0.0, None),
    ],
)
@pytest.mark.parametrize("sill", [0.0, 20.0])
def test_a_seam_and_its_plate_keep_off_an_opening(
    plan: Plan,
    drawn: Draw,
    opening: Callable[..., OpeningPlan],
    at: float,
    plate: float,
    nearest: float | None,
    sill: float,
) -> None:
    """An opening from 190 to 210, a window or a door on the bottom edge."""
    kind = "window" if sill else "door"
    sizes = {"width": 20.0, "height": 30.0, "centre": 200.0, **({"sill": sill} if sill else {})}
    part = drawn(plan("wall_panel", WALL, (opening("hole", kind, **sizes),)))
    said = found(part, split(at, plate))
    assert [(check, limit) for check, _, limit in said] == ([("geometry/split-place", nearest)] if nearest else [])
    assert all(f"the {kind} “hole”" in message for _, message, _ in said)


def test_a_seam_keeps_off_slots_tabs_and_notches(
    plan: Plan, drawn: Draw, treatment: Callable[..., EdgeTreatment]
) -> None:
    slotted = drawn(plan("wall_panel", WALL, (), (treatment("left", slots=(SlotRow(2, 160.0, 5.0, 0.0),)),)))
    assert found(slotted, split(162.0))[0][2] == 150.0
    assert found(slotted, split(150.0)) == []
    tabbed = drawn(plan("wall_panel", WALL, (), (treatment("top", 5.0, tabs=TabRow(2, 5.0)),)))
    ((_, message, nearest),) = found(tabbed, split(60.0))  # tabs from 50 to 150 and from 250 to 350
    assert "a tab of the edge “top”" in message and nearest == 40.0
    assert found(tabbed, split(200.0)) == []
    notched = drawn(plan("wall_panel", WALL, (), (treatment("top", slots=(SlotRow(2, 0.0, 5.0, 0.0),)),)))
    ((_, message, nearest),) = found(notched, split(100.0))
    assert "a notch of the edge “top”" in message and nearest == 40.0


def test_a_seam_keeps_off_panels_glued_behind_and_pockets(plan: Plan, drawn: Draw) -> None:
    part = drawn(plan("wall_panel", WALL))
    glued = Mark(LineKind.GLUE, Purpose.LAP, polyline(((200.0, 0.0), (200.0, 80.0))))
    along = Mark(LineKind.GLUE, Purpose.LAP, polyline(((0.0, 60.0), (400.0, 60.0))))
    pocket = Mark(LineKind.SCORE, Purpose.POCKET, polyline(((195.0, 20.0), (205.0, 20.0), (205.0, 30.0)), closed=True))
    assert found(replace(part, marks=(along,)), split(200.0)) == []
    assert found(replace(part, marks=(glued,)), split(200.0))[0][2] == 190.0
    assert "a pocket" in found(replace(part, marks=(pocket,)), split(200.0))[0][1]


def test_a_seam_keeps_off_other_seams(plan: Plan, drawn: Draw) -> None:
    part = drawn(plan("wall_panel", WALL))
    assert found(part, split(219.0), split(200.0))[0][2] == 220.0
    assert found(part, split(220.0), split(200.0)) == []
    assert found(part, split(220.0, 40.0), split(200.0, 40.0))[0][2] == 240.0
    assert found(part, split(40.0, start="bottom"), split(200.0)) == []


def test_a_seam_that_crosses_a_gap(plan: Plan, drawn: Draw) -> None:
    """A frame falls into three at a seam through its hole, whatever that is called."""
    frame = drawn(plan("ring", {"radius": 100.0, "hole_radius": 60.0}))
    ((check, _, nearest),) = found(frame, split(100.0))
    assert (check, nearest) == ("geometry/split-place", 30.0)


def test_no_place_is_free(plan: Plan, drawn: Draw) -> None:
    part = drawn(plan("wall_panel", {"width": 30.0, "height": 30.0}))
    (finding,) = misplaced(part, seam_of(part, split(15.0, 40.0)), ())
    assert "no place is free" in finding.hint and finding.limit is None


def test_inner_corners(plan: Plan, drawn: Draw) -> None:
    step = CombineStep(
        "cut", HERE, "rectangle",
        tuple(Parameter(n, v, str(v), HERE) for n, v in (("width", 50.0), ("height", 20.0))), called="cut1", at=(175.0, 60.0),
    )  # fmt: skip
    part = drawn(replace(plan("wall_panel", WALL), combine=(step,)))
    ((_, message, _),) = found(part, split(170.0))
    assert "an inner corner or notch" in message


@pytest.mark.parametrize("step", [0.0, 20.0])
@pytest.mark.parametrize("start", ["left", "bottom"])
def test_both_sides_are_the_whole(plan: Plan, drawn: Draw, step: float, start: str) -> None:
    """A disc: arcs stay arcs, areas add up exactly, the seam's run has its name on both sides."""
    part = drawn(plan("disc", {"radius": 150.0}))
    cut = cut_in_two(part.outline, part.template, seam_of(part, split(130.0, step=step, start=start)), "seam_1")
    assert cut is not None
    assert area(cut.low.outline) + area(cut.high.outline) == pytest.approx(pi * 150.0**2, abs=1e-6)
    union = polygon(cut.low.outline).union(polygon(cut.high.outline), grid_size=1e-6)
    assert union.symmetric_difference(polygon(part.outline)).area < 2.0 * pi * 150.0 * 0.005
    for side in (cut.low, cut.high):
        runs = {run.name: run for run in side.outline.outer.edges}
        assert set(runs) == {"rim", "seam_1"} and runs["rim"].radius == 150.0
    whole = sqrt(150.0**2 - 30.0**2) + sqrt(150.0**2 - 10.0**2) + 20.0 if step else 2.0 * sqrt(150.0**2 - 20.0**2)
    assert cut.line.length == pytest.approx(whole, abs=0.02)


def test_a_cut_that_leaves_more_than_two(plan: Plan, drawn: Draw) -> None:
    frame = drawn(plan("ring", {"radius": 100.0, "hole_radius": 60.0}))
    assert cut_in_two(frame.outline, frame.template, seam_of(frame, split(100.0)), "seam_1") is None
    assert cut_in_two(frame.outline, frame.template, seam_of(frame, split(30.0)), "seam_1") is not None


@pytest.mark.parametrize(("height", "fits"), [(49.0, True), (9.0, False)])
def test_a_step_lies_off_the_outline(plan: Plan, drawn: Draw, height: float, fits: bool) -> None:
    """5 mm of board above and below the middle of a stepped seam."""
    part = drawn(plan("wall_panel", {"width": 400.0, "height": height}))
    assert (found(part, split(200.0, step=20.0)) == []) is fits


def test_the_template_is_cut_where_the_pencil_runs(plan: Plan, drawn: Draw) -> None:
    """0.4 mm to either side of a stepped seam, also along its step."""
    part = drawn(plan("wall_panel", WALL, trace_allowance=0.4))
    cut = cut_in_two(part.outline, part.template, seam_of(part, split(200.0, step=20.0)), "seam_1", 0.4)
    assert cut is not None
    for side in (cut.low, cut.high):
        template = polygon(side.template)
        assert template.boundary.distance(cut.line) == pytest.approx(0.4)
        assert polygon(side.outline).buffer(-0.4, join_style="mitre").symmetric_difference(template).area < 0.01
