"""Bent parts as facets, against the circle that they are bent to."""

from dataclasses import replace
from itertools import pairwise
from math import cos, pi, radians, sin
from types import SimpleNamespace

import numpy as np
import pytest
import shapely

from publisher.basics import Arc, Line, LineKind, Path, Purpose, polyline
from publisher.design import Figure
from publisher.geometry import BendStretch, BentForm, Mark, Part, polygon
from publisher.joints.panels.bent import FACET_TURN, bent_end, curve_of, facets_of, frame_at, frame_from, is_facet
from publisher.joints.panels.place import Panel
from publisher.joints.panels.solids import board_mass, weight_of
from publisher.joints.panels.space import PanelFrame
from publisher.joints.panels.standing import bears_figures

FLAT = PanelFrame(np.eye(3), np.zeros(3))


def strip(
    make: SimpleNamespace, angle: float = 90.0, radius: float = 60.0, keeps: str = "outside", fold: float = 0.0
) -> Part:
    """A strip 40 high and 5 thick whose outside has this radius; its bend may begin with a fold in its middle."""
    kept = {"outside": radius, "inside": radius - 5.0, "middle": radius - 2.5}[keeps]
    long = kept * radians(angle)
    bends: tuple[BendStretch, ...] = (BendStretch(0.0, long, radius - 2.5),)
    if fold:
        bends = (BendStretch(0.0, long / 2, radius - 2.5), BendStretch(long / 2, long, radius - 2.5, fold))
    return replace(make.wall("strip", long, 40), bending=BentForm(bends, keeps, 3.3, 19, "paper"))  # type: ignore[arg-type]


@pytest.mark.parametrize("keeps", ["outside", "inside", "middle"])
def test_facets_touch_the_circle_and_end_where_it_ends(make: SimpleNamespace, keeps: str) -> None:
    part = strip(make, keeps=keeps)
    facets = facets_of(part, FLAT)
    assert len(facets) == 2 * round(45.0 / FACET_TURN) and all(is_facet(one) for one, _ in facets)
    middle = np.array(
        [polygon(part.outline).bounds[2] / 2.0, 0.0, -60.0]
    )  # the axis lies behind the middle of the strip
    for one, frame in facets:
        wide = polygon(one.outline).bounds[2]
        ends = frame.carry(np.array([[0.0, 0.0, 0.0], [wide, 40.0, 0.0]])) - middle
        assert np.hypot(ends[:, 0], ends[:, 2]) == pytest.approx([60.0, 60.0])
        assert ends[:, 1] == pytest.approx([0.0, 40.0])
    first, last = facets[0], facets[-1]
    assert first[1].origin - middle == pytest.approx([-60.0 * sin(pi / 4), 0.0, 60.0 * cos(pi / 4)])
    end = last[1].carry(np.array([[polygon(last[0].outline).bounds[2], 0.0, 0.0]]))[0] - middle
    assert end == pytest.approx([60.0 * sin(pi / 4), 0.0, 60.0 * cos(pi / 4)])


def test_what_is_not_bent_stays_as_it_is(make: SimpleNamespace) -> None:
    wall = make.wall("wall", 60, 40)
    assert facets_of(wall, FLAT) == ((wall, FLAT),)
    assert not is_facet(wall)


def test_an_opening_is_cut_through_the_facets(make: SimpleNamespace) -> None:
    plain = strip(make)
    hole = make.hole(((40.0, 10.0), (40.0, 30.0), (60.0, 30.0), (60.0, 10.0)), "window")
    part = replace(plain, outline=replace(plain.outline, holes=(hole,)))
    area = sum(polygon(one.outline).area for one, _ in facets_of(part, FLAT))
    full = sum(polygon(one.outline).area for one, _ in facets_of(plain, FLAT))
    assert full - area == pytest.approx(400.0, rel=0.002)


def test_a_fold_in_the_middle_parts_both_halves(make: SimpleNamespace) -> None:
    facets = facets_of(strip(make, fold=60.0), FLAT)
    half = len(facets) // 2
    before, after = facets[half - 1][1].outward, facets[half][1].outward
    turned = 60.0 + 45.0 / (len(facets) // 2)  # both halves of a facet on either side
    assert float(before @ after) == pytest.approx(cos(radians(turned)))


def test_the_middle_of_a_curved_edge(make: SimpleNamespace) -> None:
    arch = Arc.between("arch", (10.0, 0.0), (50.0, 0.0), (30.0, 0.0), 20.0, ccw=False)
    lines = [
        Line("side", a, b)
        for a, b in pairwise([(50.0, 0.0), (60.0, 0.0), (60.0, 40.0), (0.0, 40.0), (0.0, 0.0), (10.0, 0.0)])
    ]
    part = make.part("side", Path((arch, *lines)))
    curve = curve_of(part, "arch")
    assert curve is not None
    assert curve.middle == pytest.approx((30.0, 20.0), abs=0.01)
    assert curve.along == pytest.approx([1.0, 0.0], abs=1e-3) and curve.inward == pytest.approx([0.0, 1.0], abs=1e-3)
    assert shapely.LineString(curve.points).length == pytest.approx(20.0 * pi, abs=0.01)
    assert curve_of(part, "side") is None


@pytest.mark.parametrize("keeps", ["outside", "inside", "middle"])
@pytest.mark.parametrize(("edge", "way"), [("right", 1.0), ("left", -1.0)])
def test_at_its_ends_a_strip_goes_on_along_the_circle(make: SimpleNamespace, keeps: str, edge: str, way: float) -> None:
    """Of a quarter circle each end is turned by 45° against the middle, and lies on the circle of the outside."""
    part = strip(make, keeps=keeps)
    line = part.edge(edge)
    assert line is not None
    axis = np.array([polygon(part.outline).bounds[2] / 2.0, 0.0, -60.0])
    frame = frame_at(part, FLAT, edge)
    corner = frame.carry(np.array([[*line.nominal_start, 0.0]]))[0] - axis
    assert (corner[0], corner[2]) == pytest.approx((way * 60.0 * sin(pi / 4), 60.0 * cos(pi / 4)))
    assert frame.outward == pytest.approx(np.array([way * sin(pi / 4), 0.0, cos(pi / 4)]))
    back = frame_from(part, frame, edge)
    assert back.axes == pytest.approx(FLAT.axes) and back.origin == pytest.approx(FLAT.origin, abs=1e-9)


def test_only_upright_ends_of_bent_parts_are_ends(make: SimpleNamespace) -> None:
    part = strip(make)
    assert [name for name in ("bottom", "right", "top", "left") if bent_end(part, name)] == ["right", "left"]
    assert bent_end(make.wall("wall", 60, 40), "right") is None
    assert bent_end(part, "nowhere") is None


def test_a_pattern_is_shared_among_the_facets(make: SimpleNamespace) -> None:
    long = 60.0 * radians(90.0)
    course = Mark(LineKind.DRAW, Purpose.SURFACE, polyline(((5.0, 20.0), (long - 5.0, 20.0))))
    joint = Mark(LineKind.DRAW, Purpose.SURFACE, polyline(((30.0, 20.0), (30.0, 30.0))))
    part = replace(strip(make), marks=(course, joint))
    facets = [one for one, _ in facets_of(part, FLAT, patterned=True)]
    lines = [mark.path.points for one in facets for mark in one.marks]
    assert len([line for line in lines if line[0][1] == line[-1][1]]) == len(facets)  # the course, over all of them
    assert len([line for line in lines if line[0][0] == line[-1][0]]) == 1
    chords = sum(polygon(one.outline).bounds[2] for one in facets)
    level = sum(abs(b[0] - a[0]) for a, *_, b in lines)
    assert level == pytest.approx(chords * (long - 10.0) / long)
    assert not any(one.marks for one, _ in facets_of(part, FLAT))


@pytest.mark.parametrize("keeps", ["outside", "inside", "middle"])
def test_a_curved_board_weighs_as_its_arc(make: SimpleNamespace, keeps: str) -> None:
    """A quarter of a ring of middle radius 57.5: its weight lies r·sin(45°)/(45°) from the axis, and is that of the flat strip."""
    part = strip(make, keeps=keeps)
    area = float(polygon(part.outline).area)
    boards, half = facets_of(part, FLAT), radians(45.0)
    level = np.array([[1.0, 0.0, 0.0], [0.0, 0.0, 1.0], [0.0, -1.0, 0.0]])  # the strip's back looks along y
    placed = [(one, PanelFrame(level @ frame.axes, level @ frame.origin)) for one, frame in boards]
    assert sum(board_mass(one, weigh) for one, _ in placed) == pytest.approx(area)
    x, y = weight_of(placed, weigh)
    assert x == pytest.approx(polygon(part.outline).centroid.x)
    assert abs(y) == pytest.approx(60.0 - 57.5 * sin(half) / half)


def weigh(part: Part) -> float:
    return float(polygon(part.outline).area)


@pytest.mark.parametrize(("radius", "bears"), [(60.0, False), (150.0, False), (170.0, True)])
def test_a_figure_rocks_on_a_curve(make: SimpleNamespace, radius: float, bears: bool) -> None:
    """25 mm of base fall by 25²/(8·r): 0.5 mm at a radius of 156 mm."""
    part = strip(make, angle=30.0, radius=radius)
    lying = PanelFrame(np.array([[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]]), np.zeros(3))
    facets = [Panel("roof", one, frame, False, make.here) for one, frame in facets_of(part, lying)]
    assert {bears_figures(facet, Figure(25.0, 30.0, False)) for facet in facets} == {bears}
