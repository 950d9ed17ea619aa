"""Arch lines against the geometry of circles and the compass constructions of builders."""

from itertools import pairwise
from math import asin, degrees, dist, hypot, pi, sqrt

import pytest

from publisher.basics import Place
from publisher.design import Parameter
from publisher.geometry.registry.given_parameters import Values, checked
from publisher.geometry.shapes.arch_form import PARAMETERS, at_length, check_form, intrados, outset


def values(form: str, span: float, rise: float | None) -> Values:
    place = Place("spec.yaml", 1, 1)
    sizes = {"form": form, "span": span, **({} if rise is None else {"rise": rise})}
    given = tuple(Parameter(name, value, str(value), place) for name, value in sizes.items())
    made, found = checked("arch", PARAMETERS, given, "part p", place)  # type: ignore[arg-type]
    assert not found
    return made


def test_segmental_arch_of_the_demo() -> None:
    """Span 160, rise 50: radius 89, 128°, 198.9 along the arch (issue's own calculation; R = (s² + h²)/2h)."""
    (arc,) = intrados(values("segmental", 160.0, 50.0), (0.0, 0.0))
    assert arc.radius == pytest.approx(89.0)
    assert abs(arc.sweep) == pytest.approx(2.0 * degrees(asin(80.0 / 89.0)))
    assert abs(arc.sweep) == pytest.approx(128.0, abs=0.1)
    assert arc.length == pytest.approx(198.9, abs=0.05)


@pytest.mark.parametrize(
    ("chord", "height", "radius", "angle", "length"),
    # MatheAss help page "Circular sections": chord 21, height 6
    [(21.0, 6.0, 12.1875, 118.97953, 25.308373)],
)
def test_segments_of_circles(chord: float, height: float, radius: float, angle: float, length: float) -> None:
    (arc,) = intrados(values("segmental", chord, height), (0.0, 0.0))
    assert (arc.radius, abs(arc.sweep), arc.length) == pytest.approx((radius, angle, length), abs=1e-5)


def test_semicircular_arch() -> None:
    (arc,) = intrados(values("semicircular", 80.0, None), (10.0, 5.0))
    assert arc.centre == pytest.approx((50.0, 5.0)) and arc.length == pytest.approx(40.0 * pi)


def test_equilateral_pointed_arch() -> None:
    """A pointed arch of rise s·√3 has its centres on the opposite springings: the equilateral arch of the builders."""
    left, right = intrados(values("pointed", 60.0, 30.0 * sqrt(3.0)), (0.0, 0.0))
    assert left.radius == pytest.approx(60.0) and left.centre == pytest.approx((60.0, 0.0))
    assert left.end == pytest.approx((30.0, 30.0 * sqrt(3.0))) and right.end == pytest.approx((60.0, 0.0))
    assert left.length == pytest.approx(60.0 * pi / 3.0)


def test_three_centred_arch_is_tangent_where_its_arcs_meet() -> None:
    low, crown, last = intrados(values("three_centred", 160.0, 50.0), (0.0, 0.0))
    assert low.end == crown.start and crown.end == last.start
    for a, b in ((low, crown), (crown, last)):
        assert a.direction(a.end) == pytest.approx(b.direction(b.start), abs=1e-9)
    assert low.direction(low.start) == pytest.approx((0.0, 1.0))  # upright at the springing
    assert crown.centre is not None and crown.centre[1] + crown.radius == pytest.approx(50.0)
    assert low.centre is not None and low.centre[1] == pytest.approx(0.0)
    # the compass construction: the bisector of the chord's remainder passes through both centres
    d = hypot(80.0, 50.0)
    m = (d - 30.0) / 2.0
    foot = (m * 80.0 / d, m * 50.0 / d)
    for centre in (low.centre, crown.centre):
        along = (centre[0] - foot[0]) * 80.0 / d + (centre[1] - foot[1]) * 50.0 / d
        assert along == pytest.approx(0.0, abs=1e-9)


@pytest.mark.parametrize(
    ("form", "rise"), [("semicircular", None), ("segmental", 20.0), ("three_centred", 25.0), ("pointed", 55.0)]
)
def test_stones_stand_square_on_the_arch(form: str, rise: float | None) -> None:
    arcs = intrados(values(form, 80.0, rise), (0.0, 0.0))
    whole = sum(arc.length for arc in arcs)
    places = [at_length(arcs, k * whole / 12)[0] for k in range(13)]
    assert places[0] == pytest.approx(arcs[0].start) and places[-1] == pytest.approx(arcs[-1].end)
    assert places[6] == pytest.approx((40.0, max(p[1] for p in places)))
    back = outset(arcs, 7.0)
    assert all(new.radius == pytest.approx(old.radius + 7.0) for new, old in zip(back, arcs, strict=True))
    for one, other in pairwise(back):
        assert dist(one.end, other.start) < 1e-9


@pytest.mark.parametrize(
    ("form", "rise", "good"),
    [("semicircular", 30.0, 40.0), ("segmental", 41.0, 40.0), ("three_centred", 40.0, 39.0), ("pointed", 40.0, 41.0)],
)
def test_rises_that_a_form_cannot_have(form: str, rise: float, good: float) -> None:
    (finding,) = check_form(values(form, 80.0, rise))
    assert finding.hint and finding.limit is not None
    assert not list(check_form(values(form, 80.0, good)))
