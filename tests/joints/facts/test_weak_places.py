from dataclasses import replace
from itertools import pairwise
from math import cos, radians, sin
from types import SimpleNamespace

import pytest

from publisher.geometry import Part
from publisher.joints.facts import arch_of, points_of, tabs_of


def tip(make: SimpleNamespace, angle: float, cut: float = 0.0) -> Part:
    """A blade 100 mm long with a point of ``angle`` degrees at its right end, cut off ``cut`` mm wide."""
    half = radians(angle / 2)
    back = cut / 2 / sin(half) * cos(half)
    high = 100 * sin(half) / cos(half)
    right = [(100.0, 0.0)] if not cut else [(100 - back, -cut / 2), (100 - back, cut / 2)]
    part: Part = make.polygon("blade", [(0, -high), *right, (0, high)])
    return part


@pytest.mark.parametrize(("angle", "cut", "expected"), [(44.0, 0.0, [44.0]), (46.0, 0.0, []), (30.0, 0.0, [30.0]),
                                                         (30.0, 1.0, [30.0]), (30.0, 2.5, [])])  # fmt: skip
def test_points_under_45_degrees_are_found_unless_blunted(
    make: SimpleNamespace, angle: float, cut: float, expected: list[float]
) -> None:
    found = list(points_of(tip(make, angle, cut), 2.0))
    assert [one.angle for one in found] == [pytest.approx(a) for a in expected]
    assert [one.blunt for one in found] == [pytest.approx(cut)] * len(expected)


def test_a_point_between_two_edges_that_are_joined_is_held(make: SimpleNamespace) -> None:
    """The facets of a spire meet at their points: one alone is sharp, among its neighbours it is not."""
    facet = make.polygon("facet", [(0, 0), (40, 0), (20, 120)], ("base", "right", "left"))
    assert len(list(points_of(facet, 2.0))) == 1
    edges = tuple(replace(edge, bevel=20.0) if edge.name != "base" else edge for edge in facet.edges)
    assert list(points_of(replace(facet, edges=edges), 2.0)) == []


def test_an_arc_turns_as_its_tangent_does(make: SimpleNamespace) -> None:
    """A sector of 40° has a point in its middle and two square corners at its rim; a disc has none."""
    sector = make.ring(
        ("a", [(0, 0), (50, 0)], None, 0.0),
        ("rim", make.arc((0, 0), 50.0, 0, 40), (0.0, 0.0), 50.0),
        ("b", [(50 * cos(radians(40)), 50 * sin(radians(40))), (0, 0)], None, 0.0),
    )
    assert [round(one.angle, 6) for one in points_of(make.part("sector", sector), 2.0)] == [40.0]
    assert list(points_of(make.disc(), 2.0)) == []


def test_an_arch_has_a_crown_and_feet(make: SimpleNamespace) -> None:
    """A wall of 100 × 60 with a round arch of radius 30 from its bottom: 30 mm over its crown, feet of 20 mm."""
    outline = make.ring(
        ("bottom", [(0, 0), (20, 0)], None, 0.0),
        ("intrados", list(reversed(make.arc((50, 0), 30.0, 0, 180))), None, 0.0),
        ("bottom", [(80, 0), (100, 0)], None, 0.0),
        *((name, list(ends), None, 0.0) for name, ends in zip(
            ("right", "top", "left"), pairwise([(100, 0), (100, 60), (0, 60), (0, 0)]), strict=True)),
    )  # fmt: skip
    arch = arch_of(make.part("arch", outline))
    assert arch == (pytest.approx(30.0, abs=0.01), pytest.approx(20.0, abs=0.01))
    assert arch_of(make.wall("w", 100, 60)) is None


def test_tabs_are_as_long_as_their_group_of_edges(make: SimpleNamespace) -> None:
    corners = [(0, 0), (60, 0), (60, 10), (65, 10), (65, 25), (60, 25), (60, 40), (0, 40)]
    names = ("bottom", "right", "right.tab", "right.tab", "right.tab", "right", "top", "left")
    assert tabs_of(make.polygon("w", corners, names)) == (("right", pytest.approx(15.0)),)
