"""Exact curves: lengths, flattening, shifting, meeting."""

from itertools import pairwise
from math import dist, hypot, pi

import pytest

from publisher.geometry.paths.curves import SAGITTA, Curve, flatten, meet, polar, shifted

RIGHT = Curve("a", (0.0, 0.0), (10.0, 0.0))
QUARTER = Curve("q", (5.0, 0.0), (0.0, 5.0), (0.0, 0.0), 5.0)


def test_lengths_and_sweeps() -> None:
    assert RIGHT.length() == 10.0
    assert QUARTER.length() == pytest.approx(2.5 * pi)
    assert QUARTER.reversed().length() == pytest.approx(2.5 * pi)
    long_way = Curve("q", (5.0, 0.0), (0.0, 5.0), (0.0, 0.0), 5.0, ccw=False)
    assert long_way.length() == pytest.approx(7.5 * pi)


@pytest.mark.parametrize("radius", [0.001, 0.4, 5.0, 92.0, 300.0, 5000.0])
def test_no_chord_is_further_than_the_sagitta_from_its_arc(radius: float) -> None:
    arc = Curve("q", (radius, 0.0), polar(radius, 6.1), (0.0, 0.0), radius)
    points = [*flatten(arc), arc.end]
    for a, b in pairwise(points):
        middle = ((a[0] + b[0]) / 2.0, (a[1] + b[1]) / 2.0)
        assert radius - hypot(*middle) <= SAGITTA + 1e-9
        assert dist(a, (0.0, 0.0)) == pytest.approx(radius, abs=1e-9)


def test_a_line_moves_to_its_left_and_an_arc_keeps_its_centre() -> None:
    assert shifted(RIGHT, 2.0) == Curve("a", (0.0, 2.0), (10.0, 2.0))
    inner = shifted(QUARTER, 2.0)
    assert inner is not None and inner.radius == 3.0 and inner.start == (3.0, 0.0)
    outer = shifted(QUARTER.reversed(), 2.0)
    assert outer is not None and outer.radius == 7.0
    assert shifted(QUARTER, 5.0) is None  # the arc has shrunk to a point


def test_where_lines_and_circles_meet() -> None:
    up = Curve("b", (3.0, -1.0), (3.0, 1.0))
    assert meet(RIGHT, up, (0.0, 0.0)) == pytest.approx((3.0, 0.0))
    assert meet(up, QUARTER, (3.0, 4.2)) == pytest.approx((3.0, 4.0))
    assert meet(QUARTER, up, (3.0, -4.2)) == pytest.approx((3.0, -4.0))
    other = Curve("o", (11.0, 0.0), (6.0, 5.0), (6.0, 0.0), 5.0)
    assert meet(QUARTER, other, (3.0, 4.0)) == pytest.approx((3.0, 4.0))
    assert meet(RIGHT, Curve("p", (0.0, 1.0), (5.0, 1.0)), (0.0, 0.0)) is None
    assert meet(Curve("p", (0.0, 9.0), (5.0, 9.0)), QUARTER, (0.0, 0.0)) is None
    far = Curve("o", (105.0, 0.0), (100.0, 5.0), (100.0, 0.0), 5.0)
    assert meet(QUARTER, far, (0.0, 0.0)) is None
    assert meet(QUARTER, Curve("o", (2.0, 0.0), (0.0, 2.0), (0.0, 0.0), 2.0), (0.0, 0.0)) is None


def test_a_mirror_changes_the_way_an_arc_is_travelled() -> None:
    mirrored = QUARTER.moved(lambda p: (p[0], -p[1]), mirrored=True)
    assert mirrored.sweep() == pytest.approx(pi / 2.0) and mirrored.end == (0.0, -5.0)
