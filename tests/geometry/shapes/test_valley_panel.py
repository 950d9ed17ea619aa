"""The shape valley_panel: a wing's slope meets the main roof in a valley."""

from collections.abc import Callable
from math import acos, cos, degrees, dist, radians, sin, sqrt, tan

import pytest

from publisher.basics import Finding
from publisher.design import PartPlan
from publisher.geometry import Part, area

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]
Sizes = dict[str, float | str]
WING: Sizes = {"eave": 60.0, "span": 80.0, "pitch": 45.0}


@pytest.mark.parametrize(("pitch", "main"), [(45.0, 45.0), (30.0, 50.0), (55.0, 35.0)])
@pytest.mark.parametrize(("overhang", "verge"), [(0.0, 0.0), (8.0, 5.0)])
def test_the_valley_is_as_long_as_on_the_main_roof(
    plan: Plan, drawn: Draw, pitch: float, main: float, overhang: float, verge: float
) -> None:
    sizes: Sizes = {**WING, "pitch": pitch, "main_pitch": main, "overhang": overhang, "verge": verge}
    part = drawn(plan("valley_panel", sizes))
    edges = {edge.name: edge for edge in part.edges}
    rise = 40.0 * tan(radians(pitch))
    drop = overhang * sin(radians(pitch))
    # in space: from the eave (outwards by drop/tan on both roofs, down by drop) to the ridge's end over the main roof
    across = 40.0 + drop / tan(radians(pitch))
    into = (rise + drop) / tan(radians(main))
    in_space = sqrt(across**2 + into**2 + (rise + drop) ** 2)
    # on the main slope: half the wing's width along the eave, (rise + drop)/sin(main pitch) up the slope
    on_main = sqrt(across**2 + ((rise + drop) / sin(radians(main))) ** 2)
    assert edges["valley"].nominal_length == pytest.approx(in_space, abs=1e-9)
    assert in_space == pytest.approx(on_main, abs=1e-9)
    assert edges["ridge"].nominal_length == pytest.approx(60.0 + rise / tan(radians(main)) + verge)
    assert edges["eave"].nominal_length == pytest.approx(60.0 - drop / tan(radians(main)) + verge)
    assert edges["verge"].nominal_length == pytest.approx(40.0 / cos(radians(pitch)) + overhang)


def test_a_valley_is_bevelled_the_other_way(plan: Plan, drawn: Draw) -> None:
    part = drawn(plan("valley_panel", {**WING, "main_pitch": 30.0}))
    valley, ridge = part.edge("valley"), part.edge("ridge")
    assert valley is not None and ridge is not None
    assert valley.bevel == pytest.approx(-degrees(acos(cos(radians(45.0)) * cos(radians(30.0)))) / 2.0)
    assert ridge.bevel == 45.0
    shorter = valley.nominal_start[0] - valley.start[0]  # the upper face ends t·tan(bevel) before the underside
    leaning = acos((valley.nominal_end[0] - valley.nominal_start[0]) / dist(valley.nominal_start, valley.nominal_end))
    assert shorter == pytest.approx(5.0 * tan(radians(-valley.bevel)) / sin(leaning))


def test_left_and_right_are_mirror_images(plan: Plan, drawn: Draw) -> None:
    right, left = (drawn(plan("valley_panel", {**WING, "verge": 5.0, "valley_at": side})) for side in ("right", "left"))
    assert area(left.outline) == pytest.approx(area(right.outline), rel=1e-12)
    assert [e.name for e in right.edges] == ["eave", "valley", "ridge", "verge"]
    assert [e.name for e in left.edges] == ["eave", "verge", "ridge", "valley"]
    for name in ("eave", "valley", "ridge", "verge"):
        one, other = right.edge(name), left.edge(name)
        assert one is not None and other is not None and one.nominal_length == pytest.approx(other.nominal_length)


def test_a_wing_under_the_main_roof(plan: Plan, refused: Refuse, drawn: Draw) -> None:
    (finding,) = refused(plan("valley_panel", {**WING, "eave": 10.0, "overhang": 12.0}))
    assert "leaves no eave" in finding.message and finding.limit == pytest.approx(12.0 * sin(radians(45.0)) + 3.0)
    drawn(plan("valley_panel", {**WING, "eave": (finding.limit or 0.0) + 6.0, "overhang": 12.0}))
