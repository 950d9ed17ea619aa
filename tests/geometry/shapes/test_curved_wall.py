"""The shape curved_wall against the rows of bending by scoring."""

from collections.abc import Callable
from itertools import pairwise
from math import cos, pi, radians, tan

import pytest

from publisher.basics import Finding, LineKind, Purpose
from publisher.design import PartPlan
from publisher.geometry import Part, area

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]
Sizes = dict[str, float | str]
WALL: Sizes = {"inner_radius": 60.0, "angle": 180.0, "height": 80.0}


@pytest.mark.parametrize(("cut", "radius"), [("outer", 60.0), ("inner", 65.0), ("none", 62.5)])
def test_the_skin_that_is_not_cut_keeps_its_length(plan: Plan, drawn: Draw, cut: str, radius: float) -> None:
    part = drawn(plan("curved_wall", {**WALL, "cut": cut}))
    assert area(part.outline) == pytest.approx(80.0 * radius * pi, rel=1e-12)
    bottom = part.edge("bottom")
    assert bottom is not None and bottom.nominal_length == pytest.approx(radius * pi)


def test_slits_stand_evenly_and_bend_by_the_whole_angle(plan: Plan, drawn: Draw) -> None:
    part = drawn(plan("curved_wall", {**WALL, "facet": 0.25}))
    slits = [m.path.points[0][0] for m in part.marks if not m.text]
    pitch = 60.0 * pi / len(slits)
    assert [b - a for a, b in pairwise(slits)] == pytest.approx([pitch] * (len(slits) - 1))
    assert slits[0] == pytest.approx(pitch / 2.0) and 60.0 * pi - slits[-1] == pytest.approx(pitch / 2.0)
    # the true sagitta of a facet, r(1 − cos(half its angle)), is within the allowance; one slit fewer would not be
    assert 60.0 * (1.0 - cos(pitch / 60.0 / 2.0)) <= 0.25
    fewer = 60.0 * pi / (len(slits) - 1)
    assert fewer**2 / 8.0 / 60.0 > 0.25
    assert {(m.kind, m.purpose) for m in part.marks if not m.text} == {(LineKind.SCORE, Purpose.BEND)}
    (words,) = (m for m in part.marks if m.text)
    assert words.text == "slits on the outside" and words.path.points == ((30.0 * pi, 40.0),)


@pytest.mark.parametrize("angle", [90.0, 180.0, 360.0])
def test_grooves_take_off_what_the_inside_is_shorter(plan: Plan, drawn: Draw, angle: float) -> None:
    part = drawn(plan("curved_wall", {**WALL, "angle": angle, "cut": "inner"}))
    xs = [m.path.points[0][0] for m in part.marks if not m.text]
    widths = [b - a for a, b in zip(xs[::2], xs[1::2], strict=True)]
    theta, number = radians(angle), len(widths)
    assert [m.text for m in part.marks if m.text] == [f"grooves {round(widths[0], 2):g} mm wide, inside"]
    assert widths == pytest.approx([2.0 * 5.0 * tan(theta / number / 2.0)] * number)
    # closed, the grooves leave a polygon of as many facets on the inside: outer length − grooves = inner chord polygon
    left = 65.0 * theta - sum(widths)
    assert left == pytest.approx(60.0 * theta, rel=2e-3)


def test_a_facet_is_at_most_a_third_of_the_radius(plan: Plan, drawn: Draw) -> None:
    part = drawn(plan("curved_wall", {**WALL, "facet": 5.0}))
    assert len([m for m in part.marks if not m.text]) == 10  # 60·π over at most 20 mm, not over √(8·60·5) = 49 mm


@pytest.mark.parametrize(
    ("sizes", "name", "words"),
    [
        ({"facet": 0.005}, "facet", "must be at least"),
        ({"inner_radius": 20.0, "facet": 0.01}, "facet", "slit every 1.2"),
        ({"inner_radius": 5.0}, "inner_radius", "slit every 1."),
    ],
)
def test_walls_that_cannot_be_bent(plan: Plan, refused: Refuse, sizes: Sizes, name: str, words: str) -> None:
    (finding,) = refused(plan("curved_wall", {**WALL, **sizes}))
    assert words in finding.message and finding.place is not None and finding.place.pointer.endswith(f"/{name}")


def test_the_facet_that_is_proposed_can_be_cut(plan: Plan, refused: Refuse, drawn: Draw) -> None:
    (finding,) = refused(plan("curved_wall", {**WALL, "inner_radius": 20.0, "facet": 0.01}))
    assert finding.limit is not None
    drawn(plan("curved_wall", {**WALL, "inner_radius": 20.0, "facet": finding.limit * 1.1}))


def test_grooves_that_eat_the_inside(plan: Plan, refused: Refuse) -> None:
    sizes: Sizes = {**WALL, "inner_radius": 5.0, "facet": 0.03, "cut": "inner"}
    (finding,) = refused(plan("curved_wall", sizes, thickness=15.0))
    assert "leave no board between them" in finding.message
