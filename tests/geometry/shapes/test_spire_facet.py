"""The shape spire_facet against closed forms and published pyramids."""

from collections.abc import Callable
from math import acos, atan2, cos, degrees, hypot, pi, radians, sin, tan

import pytest

from publisher.basics import Finding
from publisher.design import PartPlan
from publisher.geometry import Part, area

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]
Sizes = dict[str, float | str]


def vertex(sides: int, k: int, apothem: float, z: float) -> tuple[float, float, float]:
    """Return corner k of a regular polygon in space."""
    radius = apothem / cos(pi / sides)
    return (radius * cos(2.0 * pi * k / sides), radius * sin(2.0 * pi * k / sides), z)


def normal(a: tuple[float, ...], b: tuple[float, ...], c: tuple[float, ...]) -> tuple[float, float, float]:
    u, v = [q - p for p, q in zip(a, b, strict=True)], [q - p for p, q in zip(a, c, strict=True)]
    n = (u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0])
    size = hypot(*n)
    return (n[0] / size, n[1] / size, n[2] / size)


@pytest.mark.parametrize("sides", [3, 4, 5, 8, 12])
def test_faces_close_round_the_axis(plan: Plan, drawn: Draw, sides: int) -> None:
    part = drawn(plan("spire_facet", {"sides": float(sides), "apothem": 40.0, "height": 150.0}))
    a, b, tip = vertex(sides, 0, 40.0, 0.0), vertex(sides, 1, 40.0, 0.0), (0.0, 0.0, 150.0)
    base, right, left = part.edges
    assert base.nominal_length == pytest.approx(2.0 * 40.0 * tan(pi / sides))
    ridge = hypot(*(q - p for p, q in zip(a, tip, strict=True)))
    assert right.nominal_length == pytest.approx(ridge, abs=1e-9)
    assert left.nominal_length == pytest.approx(ridge, abs=1e-9)
    assert area(part.outline) == pytest.approx(base.nominal_length * hypot(150.0, 40.0) / 2.0, rel=1e-12)
    # the bevel is half of the angle between two neighbours' normals, found from their corners in space
    one, two = normal(a, b, tip), normal(b, vertex(sides, 2, 40.0, 0.0), tip)
    between = acos(sum(p * q for p, q in zip(one, two, strict=True)))
    assert right.bevel == left.bevel == pytest.approx(degrees(between) / 2.0)
    assert base.bevel == pytest.approx(90.0 - degrees(atan2(150.0, 40.0)))


def test_width_and_apothem_give_the_same_face(plan: Plan, drawn: Draw) -> None:
    one = drawn(plan("spire_facet", {"sides": 6.0, "apothem": 40.0, "height": 90.0}))
    other = drawn(plan("spire_facet", {"sides": 6.0, "width": 80.0 * tan(pi / 6.0), "height": 90.0}))
    assert one.outline == other.outline


def test_a_steep_tower_needs_the_bevel_of_an_upright_one(plan: Plan, drawn: Draw) -> None:
    sizes: Sizes = {"sides": 8.0, "width": 50.0, "top_width": 49.8, "height": 300.0}
    right = drawn(plan("spire_facet", sizes)).edge("right")
    assert right is not None and right.bevel == pytest.approx(22.5, abs=1e-4)


@pytest.mark.parametrize(
    ("sizes", "words"),
    [
        ({}, "neither width nor apothem"),
        ({"width": 30.0, "apothem": 30.0}, "are both given"),
        ({"width": 30.0, "top_width": 2.0}, "too short to cut"),
        ({"width": 30.0, "top_width": 30.0}, "do not lean inwards"),
    ],
)
def test_spires_that_cannot_be(plan: Plan, refused: Refuse, sizes: Sizes, words: str) -> None:
    (finding,) = refused(plan("spire_facet", {"sides": 6.0, "height": 90.0, **sizes}))
    assert words in finding.message


def test_a_flat_pyramid_has_no_bevel_that_no_knife_can_cut(plan: Plan, drawn: Draw) -> None:
    part = drawn(plan("spire_facet", {"sides": 4.0, "width": 80.0, "height": 5.0}))
    base, right = part.edge("base"), part.edge("right")
    assert base is not None and base.bevel == 0.0
    assert right is not None and right.bevel < degrees(radians(10.0))
