"""The shape tower_panel against closed forms."""

from collections.abc import Callable
from math import pi, radians, tan

import pytest

from publisher.basics import Finding
from publisher.design import EdgeTreatment, PartPlan
from publisher.geometry import Part, area

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]
Sizes = dict[str, float | str]
TOWER: Sizes = {"sides": 8.0, "apothem": 60.0, "height": 100.0}


@pytest.mark.parametrize("sides", [3, 4, 6, 8, 12])
def test_outside_and_inside_width(plan: Plan, drawn: Draw, sides: int) -> None:
    part = drawn(plan("tower_panel", {**TOWER, "sides": float(sides)}))
    outside = 2.0 * 60.0 * tan(pi / sides)
    assert area(part.outline) == pytest.approx(outside * 100.0, rel=1e-12)
    # the bevelled sides come out on the inside face t·tan(bevel) further in: the panel of a tower 5 mm smaller
    right, left = part.edge("right"), part.edge("left")
    assert right is not None and left is not None
    inside = outside - 5.0 * (tan(radians(right.bevel)) + tan(radians(left.bevel)))
    assert inside == pytest.approx(2.0 * (60.0 - 5.0) * tan(pi / sides), rel=1e-12)
    lines = [m for m in part.marks if len(m.path.points) == 2]
    assert sorted(m.path.points[0][0] for m in lines) == pytest.approx(
        sorted(((outside - inside) / 2.0, (outside + inside) / 2.0))
    )


def test_width_and_apothem_give_the_same_panel(plan: Plan, drawn: Draw) -> None:
    by_width = drawn(plan("tower_panel", {"sides": 8.0, "width": 2.0 * 60.0 * tan(pi / 8.0), "height": 100.0}))
    assert by_width.outline == drawn(plan("tower_panel", TOWER)).outline


@pytest.mark.parametrize("bevel", [22.5, 10.0])
def test_a_mitre_join_says_the_bevel_once(
    plan: Plan, drawn: Draw, treatment: Callable[..., EdgeTreatment], bevel: float
) -> None:
    joined = drawn(plan("tower_panel", TOWER, (), (treatment("right", bevel=bevel, matches=("a",)),)))
    right, left = joined.edge("right"), joined.edge("left")
    assert right is not None and right.bevel == bevel  # the join's, not the sum
    assert left is not None and left.bevel == 22.5  # no join here: the shape's own
    assert area(joined.outline) == pytest.approx(area(drawn(plan("tower_panel", TOWER)).outline))


def test_a_tab_joint_takes_the_bevel_away(plan: Plan, drawn: Draw, treatment: Callable[..., EdgeTreatment]) -> None:
    right = drawn(plan("tower_panel", TOWER, (), (treatment("right", 5.0),))).edge("right")
    assert right is not None and right.bevel == 0.0


@pytest.mark.parametrize(
    ("sizes", "words"),
    [
        ({"sides": 6.0, "height": 50.0}, "neither apothem nor width is given"),
        ({"sides": 6.0, "height": 50.0, "width": 30.0, "apothem": 30.0}, "are both given"),
        ({"sides": 4.0, "height": 50.0, "apothem": 6.0}, "2 mm of it stay inside the tower"),
        ({"sides": 4.0, "height": 50.0, "width": 12.0}, "2 mm of it stay inside the tower"),
    ],
)
def test_towers_that_cannot_be(plan: Plan, refused: Refuse, sizes: Sizes, words: str) -> None:
    (finding,) = refused(plan("tower_panel", sizes))
    assert words in finding.message
