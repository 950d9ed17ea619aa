"""Heads of openings."""

from collections.abc import Callable
from math import acos, asin, pi, radians, sin, sqrt

import pytest

from publisher.basics import Finding
from publisher.design import OpeningPlan, PartPlan
from publisher.geometry import Part, area
from publisher.geometry.openings.heads import segment_radius

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]
Open = Callable[..., OpeningPlan]
Sizes = dict[str, float | str]
WALL: dict[str, float | str] = {"width": 140.0, "height": 80.0}


def test_a_round_head_stands_inside_the_overall_height(plan: Plan, drawn: Draw, opening: Open) -> None:
    window = opening("w", "window", width=20.0, height=30.0, sill=25.0, head="round")
    part = drawn(plan("wall_panel", WALL, (window,)))
    assert area(part.outline) == pytest.approx(140.0 * 80.0 - (20.0 * 20.0 + pi * 100.0 / 2.0), rel=1e-12)
    head = next(run for run in part.outline.holes[0].edges if run.name == "w.head")
    assert head.centre == (70.0, 45.0) and head.radius == 10.0  # in the middle of the panel, if it does not say
    assert max(y for _, y in part.outline.holes[0].points) == pytest.approx(55.0)


def taken(plan: Plan, drawn: Draw, opening: Open, **sizes: float | str) -> float:
    """Return the area in mm² that a window takes out of the wall."""
    part = drawn(plan("wall_panel", WALL, (opening("w", "window", sill=20.0, **sizes),)))
    (hole,) = part.outline.holes
    assert max(y for _, y in hole.points) == pytest.approx(20.0 + part.openings[0].height, abs=0.005)  # a sagitta
    return 140.0 * 80.0 - area(part.outline)


@pytest.mark.parametrize(
    ("chord", "height", "radius"),
    # Machinery's Handbook, 31st ed., p. 79: chord 16, height 6, radius 8 1/3. MatheAss, circular sections
    # (help.matheass.eu/en/CircularSections.html): chord 21, height 6, R 12.1875.
    [(16.0, 6.0, 25.0 / 3.0), (21.0, 6.0, 12.1875), (20.0, 10.0, 10.0)],
)
def test_the_radius_of_a_segment(chord: float, height: float, radius: float) -> None:
    assert segment_radius(chord, height) == pytest.approx(radius, abs=1e-12)


def test_a_segmental_head_takes_a_known_segment(plan: Plan, drawn: Draw, opening: Open) -> None:
    # MatheAss: chord 21, height 6: angle 118.97953°, segment area 89.254148
    got = taken(plan, drawn, opening, width=21.0, height=36.0, head="segmental", rise=6.0)
    assert got - 21.0 * 30.0 == pytest.approx(89.254148, abs=5e-7)
    sector = 2.0 * asin(10.5 / 12.1875)
    assert sector == pytest.approx(radians(118.97953), abs=1e-7)
    assert got - 21.0 * 30.0 == pytest.approx(12.1875**2 / 2.0 * (sector - sin(sector)), rel=1e-12)


@pytest.mark.parametrize("radius", [None, 12.0, 20.0, 45.0])
def test_a_pointed_head_is_two_arcs(plan: Plan, drawn: Draw, opening: Open, radius: float | None) -> None:
    width, r = 20.0, radius or 20.0
    rise = sqrt(r**2 - (r - width / 2.0) ** 2)
    sizes: Sizes = {"width": width, "height": 50.0, "head": "pointed"} | ({"radius": radius} if radius else {})
    # each half: the sector of the angle between springing line and tip, less the triangle under the other half's centre
    sector = acos((r - width / 2.0) / r)
    head = 2.0 * (r * r * sector / 2.0 - (r - width / 2.0) * rise / 2.0)
    assert taken(plan, drawn, opening, **sizes) == pytest.approx(width * (50.0 - rise) + head, rel=1e-12)
    part = drawn(plan("wall_panel", WALL, (opening("w", "window", sill=20.0, **sizes),), trace_allowance=0.4))
    arcs = [run for run in part.template.holes[0].edges if run.name == "w.head"]
    assert len(arcs) == 2 and all(run.radius == pytest.approx(r + 0.4) for run in arcs)


def test_an_equilateral_head_is_as_high_as_its_triangle(plan: Plan, drawn: Draw, opening: Open) -> None:
    window = opening("w", "window", width=20.0, height=40.0, sill=20.0, head="pointed")
    hole = drawn(plan("wall_panel", WALL, (window,))).outline.holes[0]
    jamb_top = max(y for x, y in hole.points if x == pytest.approx(60.0))
    assert 60.0 - jamb_top == pytest.approx(20.0 * sqrt(3.0) / 2.0)


@pytest.mark.parametrize(
    ("sizes", "name", "words"),
    [
        ({"head": "segmental"}, "head", "needs its rise"),
        ({"head": "segmental", "rise": 11.0}, "rise", "more than a half circle"),
        ({"head": "segmental", "rise": 6.0, "radius": 30.0}, "radius", "a segmental head has none"),
        ({"head": "pointed", "radius": 10.0}, "radius", "make no point"),
        ({"head": "pointed", "height": 17.0}, "height", "is 17.321 mm high by itself"),
        ({"head": "square", "rise": 4.0}, "rise", "a square head has none"),
        ({"head": "round", "radius": 4.0}, "radius", "a round head has none"),
    ],
)
def test_heads_that_cannot_be(plan: Plan, refused: Refuse, opening: Open, sizes: Sizes, name: str, words: str) -> None:
    whole: Sizes = {"width": 20.0, "height": 40.0, "sill": 20.0, **sizes}
    (finding,) = refused(plan("wall_panel", WALL, (opening("w", "window", **whole),)))
    assert finding.check == "geometry/impossible-sizes" and words in finding.message
    assert finding.place is not None and (name == "head" or finding.place.pointer.endswith(f"/{name}"))
