"""The shape roof_with_valley against closed forms, and against the wing's slope that meets it."""

from collections.abc import Callable
from math import acos, cos, degrees, radians, sin, tan

import pytest

from publisher.basics import Finding
from publisher.design import PartPlan
from publisher.geometry import Part

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]
Sizes = dict[str, float | str]
MAIN: Sizes = {"span": 120.0, "length": 200.0, "pitch": 45.0, "wing_span": 80.0}


@pytest.mark.parametrize(("pitch", "wing"), [(45.0, 45.0), (50.0, 35.0), (40.0, 48.0)])
@pytest.mark.parametrize("overhang", [0.0, 9.0])
def test_the_valleys_fit_the_wing(plan: Plan, drawn: Draw, pitch: float, wing: float, overhang: float) -> None:
    main = drawn(
        plan("roof_with_valley", {**MAIN, "pitch": pitch, "wing_pitch": wing, "overhang": overhang, "verge": 5.0})
    )
    # the wing's eave at the same height: its overhang drops as far
    its = overhang * sin(radians(pitch)) / sin(radians(wing))
    slope = drawn(
        plan("valley_panel", {"eave": 60.0, "span": 80.0, "pitch": wing, "main_pitch": pitch, "overhang": its})
    )
    edges = {e.name: e for e in main.edges}
    mate = slope.edge("valley")
    assert mate is not None
    for name in ("left_valley", "right_valley"):
        assert edges[name].nominal_length == pytest.approx(mate.nominal_length, abs=1e-9)
        assert edges[name].bevel == pytest.approx(mate.bevel)
    assert edges["left_valley"].bevel == pytest.approx(-degrees(acos(cos(radians(pitch)) * cos(radians(wing)))) / 2.0)
    assert edges["ridge"].nominal_length == pytest.approx(210.0)
    assert edges["left_verge"].nominal_length == pytest.approx(60.0 / cos(radians(pitch)) + overhang)
    wide = 80.0 + 2.0 * overhang * sin(radians(pitch)) / tan(radians(wing))
    assert edges["left_eave"].nominal_length + edges["right_eave"].nominal_length == pytest.approx(210.0 - wide)


def test_the_notch_takes_what_the_wing_covers(plan: Plan, drawn: Draw) -> None:
    part = drawn(plan("roof_with_valley", {**MAIN, "wing_at": 70.0}))
    points = [e.nominal_start for e in part.edges]
    pairs = zip(points, [*points[1:], points[0]], strict=True)
    nominal = sum(ax * by - bx * ay for (ax, ay), (bx, by) in pairs) / 2.0
    # in plan the notch is a triangle of the wing's span and, at equal pitch, half of it deep
    assert nominal * cos(radians(45.0)) == pytest.approx(200.0 * 60.0 - 80.0 * 40.0 / 2.0, rel=1e-12)
    left = part.edge("left_eave")
    assert left is not None and left.nominal_length == pytest.approx(30.0)


@pytest.mark.parametrize(
    ("sizes", "name", "words"),
    [
        ({"wing_span": 118.0}, "wing_span", "up a slope of 84.853 mm"),
        ({"wing_at": 20.0}, "wing_at", "0 mm of the eave are left"),
        ({"length": 84.0}, "wing_span", "2 mm of the eave are left"),
    ],
)
def test_wings_that_do_not_fit(plan: Plan, refused: Refuse, sizes: Sizes, name: str, words: str) -> None:
    (finding,) = refused(plan("roof_with_valley", {**MAIN, **sizes}))
    assert words in finding.message and finding.place is not None and finding.place.pointer.endswith(f"/{name}")


def test_the_widest_wing_fits(plan: Plan, refused: Refuse, drawn: Draw) -> None:
    (finding,) = refused(plan("roof_with_valley", {**MAIN, "wing_span": 118.0}))
    drawn(plan("roof_with_valley", {**MAIN, "wing_span": (finding.limit or 0.0) - 1e-6}))
