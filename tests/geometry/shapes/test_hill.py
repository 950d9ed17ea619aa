"""Hills in layers: insets of circles and ellipses, hollow layers, layers that fall apart."""

from collections.abc import Callable
from dataclasses import replace
from itertools import pairwise
from math import atan, degrees, gamma, pi

import pytest

from publisher.basics import Finding, Place
from publisher.design import DrawingPlan, Family, PartPlan
from publisher.geometry import Part, area, polygon
from publisher.geometry.making.parts import make_pieces

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]
ROUND: dict[str, float | str] = {"length": 200.0, "width": 200.0, "inset": 15.0}
TWO_LOBES = (  # two lobes with a waist: it falls apart when it is taken in
    b'<svg xmlns="http://www.w3.org/2000/svg" width="220mm" height="120mm" viewBox="0 0 220 120">'
    b'<path id="shore" d="M 60 10 C 90 10 95 45 110 45 C 125 45 130 20 160 20 A 40 40 0 0 1 160 100'
    b' C 130 100 125 75 110 75 C 95 75 90 110 60 110 A 50 50 0 0 1 60 10 Z"/></svg>'
)


@pytest.fixture(scope="module")
def layer(plan: Plan) -> Callable[..., PartPlan]:
    def make(number: int, of: int, **sizes: float | str) -> PartPlan:
        return replace(plan("hill", {**ROUND, **sizes}), family=Family("hill", number, of))

    return make


@pytest.mark.keeps("geometry/layer-in-pieces")
def test_a_round_hill(layer: Plan, drawn: Draw) -> None:
    for number in range(1, 6):
        part = drawn(layer(number, 5))
        radius = 100.0 - 15.0 * (number - 1)
        assert area(part.outline) == pytest.approx(pi * radius**2, rel=5e-5)
        laps = [mark for mark in part.marks if mark.name == "lap of the next layer"]
        assert len(laps) == (number < 5)
        if laps:
            assert max(x for x, _ in laps[0].path.points) == pytest.approx(radius - 15.0, abs=0.05)
            assert laps[0].text == f"layer {number + 1}"


def test_an_ellipse_and_a_superellipse(layer: Plan, drawn: Draw) -> None:
    """Area 4ab·Γ(1 + 1/n)²/Γ(1 + 2/n) (the superellipse; n = 2 gives πab)."""
    for n in (1.5, 2.0, 2.5, 4.0):
        part = drawn(layer(1, 4, width=120.0, exponent=n))
        want = 4.0 * 100.0 * 60.0 * gamma(1.0 + 1.0 / n) ** 2 / gamma(1.0 + 2.0 / n)
        assert area(part.outline) == pytest.approx(want, rel=1e-4)


def test_slope_in_place_of_inset(layer: Plan, drawn: Draw) -> None:
    """A board of 5 mm over 15 mm of terrace is a slope of 18.4°."""
    slope = degrees(atan(5.0 / 15.0))
    assert slope == pytest.approx(18.4, abs=0.05)
    a, b = drawn(layer(3, 5, inset=0.0, slope=slope)), drawn(layer(3, 5))
    assert area(a.outline) == pytest.approx(area(b.outline), rel=1e-6)


def test_hollow_layers_keep_their_lap(layer: Plan, drawn: Draw) -> None:
    part = drawn(layer(2, 5, lap=8.0))
    assert len(part.outline.holes) == 1
    # from radius 85 to what the next layer (70) covers by 8
    assert area(part.outline) == pytest.approx(pi * (85.0**2 - 62.0**2), rel=5e-5)
    assert not drawn(layer(5, 5, lap=8.0)).outline.holes  # the top layer is solid


def test_line_up_lines_of_all_layers_lie_in_line(layer: Plan, drawn: Draw) -> None:
    lines = [m for k in range(1, 6) for m in drawn(layer(k, 5)).marks if m.name == "line-up east"]
    assert len(lines) == 5
    ends = [(max(m.path.points)[0], min(m.path.points)[0]) for m in lines]
    assert all(y == pytest.approx(0.0, abs=1e-5) for m in lines for _, y in m.path.points)
    assert all(inner == pytest.approx(outer, abs=0.02) for (_, inner), (outer, _) in pairwise(ends))


@pytest.mark.breaks("geometry/layer-in-pieces")
def test_a_drawn_hill_that_falls_apart(plan: Plan) -> None:
    drawing = DrawingPlan("lobes.svg", "shore", None, None, (), Place("spec.yaml", 9, 5))
    one = replace(plan("hill", {"inset": 10.0}, drawing=drawing), family=Family("hill", 3, 4), letter="C")
    parts, found = make_pieces(one, TWO_LOBES, {"A", "B", "C", "D", "CB"})
    assert [(part.id, part.letter) for part in parts] == [("p", "C"), ("p_b", "CC")]
    assert parts[0].name == "Part" and parts[1].name == "Part, piece B"
    (finding,) = found
    assert finding.check == "geometry/layer-in-pieces" and "falls apart into 2 pieces" in finding.message
    assert finding.severity == "warning"
    assert area(parts[0].outline) > area(parts[1].outline)
    whole, _ = make_pieces(replace(one, family=Family("hill", 2, 4)), TWO_LOBES)
    laps = [m for m in whole[0].marks if m.name == "lap of the next layer"]
    assert len(whole) == 1 and len(laps) == 2  # the layer below shows where both pieces lie
    assert polygon(whole[0].outline).contains(polygon(parts[1].outline))


@pytest.mark.parametrize(
    ("bad", "number", "says"),
    [
        ({"length": 0.0}, 1, "needs its length"),
        ({"slope": 20.0}, 1, "both its slope and its inset"),
        ({"inset": 0.0}, 1, "neither"),
        ({"inset": 0.0, "slope": 80.0}, 1, "set in by"),
        ({"inset": 60.0}, 3, "nothing is left of layer 3"),
    ],
)
def test_hills_that_cannot_be(bad: dict[str, float], number: int, says: str, layer: Plan, refused: Refuse) -> None:
    assert says in refused(layer(number, 4, **bad))[0].message
