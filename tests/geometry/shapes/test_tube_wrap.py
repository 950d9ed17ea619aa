"""Wraps against the unrolled cylinder of Apostol & Mnatsakanian."""

from collections.abc import Callable
from math import pi, radians, tan

import pytest

from publisher.basics import Finding
from publisher.design import PartPlan
from publisher.geometry import Part, area

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]


THIN = 1e-9  # mm: as good as no thickness, as in the worked example
BETA = 21.801409  # degrees


def edge_length(part: Part) -> float:
    return sum(edge.length for edge in part.outline.outer.edges if edge.name == "top")


def test_cylinder_cut_from_100_to_150(plan: Plan, drawn: Draw) -> None:
    """Ø125 from h 100 to h 150: developed width 392.699082, surface 49 087.39 (MH 31, p. 89); the edge is as long as the
    perimeter of the cut ellipse, 407.964723 (check values, section 6; the sinusoid of Amer. Math. Monthly 114, 2007)."""
    part = drawn(plan("tube_wrap", {"tube_diameter": 125.0, "height": 125.0, "cut": BETA}, thickness=THIN))
    bottom, left = part.edge("bottom"), part.edge("left")
    assert bottom is not None and bottom.nominal_length == pytest.approx(392.699082, abs=1e-6)
    assert left is not None and left.nominal_length == pytest.approx(100.0, abs=1e-4)
    assert edge_length(part) == pytest.approx(407.964723, abs=0.001)
    assert area(part.outline) == pytest.approx(49087.39, abs=0.05)


def test_the_strip_counts_its_own_thickness(plan: Plan, drawn: Draw) -> None:
    part = drawn(plan("tube_wrap", {"tube_diameter": 60.0, "height": 40.0, "lap": 8.0}, thickness=2.0))
    bottom = part.edge("bottom")
    assert bottom is not None and bottom.nominal_length == pytest.approx(pi * 62.0 + 8.0)
    (lap,) = [mark for mark in part.marks if mark.name == "lap"]
    assert lap.kind == "glue" and lap.path.points[0][0] == pytest.approx(pi * 62.0)


def test_seams_and_laps_run_on(plan: Plan, drawn: Draw) -> None:
    low, high = (
        drawn(plan("tube_wrap", {"tube_diameter": 60.0, "height": 80.0, "cut": 30.0, "seam": seam, "lap": 5.0}))
        for seam in ("low", "high")
    )
    swing = 32.5 * tan(radians(30.0))
    heights = [part.edge("left").nominal_length for part in (low, high)]  # type: ignore[union-attr]
    assert heights == pytest.approx([80.0 - swing, 80.0 + swing])


@pytest.mark.parametrize(("bad", "says"), [({"cut": 70.0}, "swings"), ({"lap": 80.0}, "third round")])
def test_wraps_that_cannot_be(bad: dict[str, float], says: str, plan: Plan, refused: Refuse) -> None:
    assert says in refused(plan("tube_wrap", {"tube_diameter": 60.0, "height": 40.0, **bad}))[0].message
