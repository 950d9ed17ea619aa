"""Lap plates: as wide as asked, as long as the part is behind the seam, off the panels that stand at its ends."""

from collections.abc import Callable
from dataclasses import replace

import pytest
from shapely import box

from publisher.basics import Finding, LineKind, Place, Purpose, polyline
from publisher.design import PartPlan, SplitPlan
from publisher.geometry import PLATE, Mark, Part, polygon
from publisher.geometry.cutting.plates import plate_behind
from publisher.geometry.cutting.seams import cut_in_two, seam_of

HERE = Place("spec.yaml", 30, 5)
Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]


def plate(part: Part, plan: SplitPlan) -> Part | Finding:
    seam = seam_of(part, plan)
    cut = cut_in_two(part.outline, part.template, seam, "seam_1")
    assert cut is not None
    made = plate_behind(part, cut, (seam,), (1, "A3"), ("A1", "A2"))
    if isinstance(made, Finding):
        return made
    (left, low), (right, high) = (
        made[1],
        (a + b for a, b in zip(made[1], polygon(made[0].outline).bounds[2:], strict=True)),
    )
    assert polygon(part.outline).buffer(1e-6).covers(box(left, low, right, high))
    middle = (left + right, low + high)[seam.axis] / 2.0
    assert middle == pytest.approx(seam.at)
    return made[0]


def size(made: Part | Finding) -> tuple[float, float]:
    assert isinstance(made, Part)
    bounds = polygon(made.outline).bounds
    assert bounds[:2] == (0.0, 0.0)
    return bounds[2:]


def test_a_plate_is_a_part_of_its_own(plan: Plan, drawn: Draw) -> None:
    part = replace(drawn(plan("wall_panel", {"width": 900.0, "height": 100.0}, trace_allowance=0.4)), mirrored=1)
    made = plate(part, SplitPlan(450.0, "left", 40.0, 0.0, HERE))
    assert isinstance(made, Part)
    assert (made.id, made.letter, made.name, made.shape) == ("p_plate_1", "A3", "Plate behind A1 and A2", PLATE)
    assert (made.count, made.spare, made.mirrored, made.board, made.whole) == (2, 1, 0, "foam", "p")
    assert size(made) == pytest.approx((40.0, 90.0))  # a board's thickness of 5 mm short of either end
    assert polygon(made.template).bounds == pytest.approx((0.4, 0.4, 39.6, 89.6))
    (seam,) = made.marks
    assert (seam.kind, seam.text, seam.path.points) == (LineKind.REFERENCE, "seam", ((20.0, 0.4), (20.0, 89.6)))


def test_a_level_seam_has_a_level_plate(plan: Plan, drawn: Draw) -> None:
    part = drawn(plan("wall_panel", {"width": 100.0, "height": 900.0}))
    assert size(plate(part, SplitPlan(450.0, "bottom", 40.0, 0.0, HERE))) == pytest.approx((90.0, 40.0))


def test_a_stepped_seam_has_no_line_on_its_plate(plan: Plan, drawn: Draw) -> None:
    """From behind it would step the other way."""
    part = drawn(plan("wall_panel", {"width": 900.0, "height": 100.0}))
    made = plate(part, SplitPlan(450.0, "left", 60.0, 20.0, HERE))
    assert isinstance(made, Part) and made.marks == () and size(made) == pytest.approx((60.0, 90.0))


def test_a_plate_stays_behind_a_sloping_part(plan: Plan, drawn: Draw) -> None:
    """Behind a gable of 45 degrees, 30 mm left of its ridge: as high as the slope at the plate's outer edge."""
    part = drawn(plan("gable_wall", {"span": 400.0, "eaves": 100.0, "pitch": 45.0}))
    left, _, right, _ = polygon(part.outline).bounds
    width, height = size(plate(part, SplitPlan((right - left) / 2.0 - 30.0, "left", 40.0, 0.0, HERE)))
    assert (width, height) == pytest.approx((40.0, 100.0 + 200.0 - 50.0 - 10.0))


def test_a_plate_ends_at_a_panel_that_is_glued_behind(plan: Plan, drawn: Draw) -> None:
    part = drawn(plan("wall_panel", {"width": 900.0, "height": 100.0}))
    shelf = Mark(LineKind.GLUE, Purpose.LAP, polyline(((0.0, 80.0), (900.0, 80.0))))
    made = plate(replace(part, marks=(shelf,)), SplitPlan(450.0, "left", 40.0, 0.0, HERE))
    assert size(made) == pytest.approx((40.0, 70.0))


def test_no_room_for_a_plate(plan: Plan, drawn: Draw) -> None:
    low = drawn(plan("wall_panel", {"width": 900.0, "height": 29.0}))
    made = plate(low, SplitPlan(450.0, "left", 40.0, 0.0, HERE))
    assert isinstance(made, Finding) and (made.check, made.place) == ("geometry/split-place", HERE)
    enough = drawn(plan("wall_panel", {"width": 900.0, "height": 30.0}))
    assert size(plate(enough, SplitPlan(450.0, "left", 40.0, 0.0, HERE))) == pytest.approx((40.0, 20.0))
