"""Lines of points as arcs: circles come back as circles, ellipses within the tolerance, corners stay."""

from itertools import pairwise
from math import cos, dist, pi, sin

import pytest
from hypothesis import given
from hypothesis import strategies as st

from publisher.basics import Arc, Line, Path
from publisher.geometry.paths.biarcs import ARC_TOLERANCE, fitted, fitted_line
from publisher.geometry.paths.rings import signed_area
from tests.searches.profile import cases


def ellipse(a: float, b: float, count: int) -> list[tuple[float, float]]:
    return [(a * cos(2.0 * pi * k / count), b * sin(2.0 * pi * k / count)) for k in range(count)]


def smooth(path: Path) -> bool:
    pairs = [*pairwise(path.edges), (path.edges[-1], path.edges[0])]
    return all(
        dist(a.end, b.start) < 1e-9 and abs(a.direction(a.end)[0] - b.direction(b.start)[0]) < 1e-6 for a, b in pairs
    )


def test_a_circle() -> None:
    path = fitted(ellipse(50.0, 50.0, 200), "rim")
    assert len(path.edges) <= 8
    assert all(isinstance(edge, Arc) and edge.radius == pytest.approx(50.0) for edge in path.edges)
    assert signed_area(path) == pytest.approx(pi * 50.0**2, rel=1e-9)


@pytest.mark.search
@cases(20, 2000)
@given(st.floats(20.0, 300.0), st.floats(0.2, 1.0))
def test_ellipses(a: float, flat: float) -> None:
    """Area πab; few arcs, no kinks, all points within the tolerance."""
    points = ellipse(a, a * flat, 400)
    path = fitted(points, "rim")
    assert smooth(path) and len(path.edges) < 120
    # a band as wide as the tolerance all along the ellipse, which is at most as long as its circle
    assert signed_area(path) == pytest.approx(pi * a * a * flat, abs=2.0 * pi * a * ARC_TOLERANCE)


def test_corners_stay() -> None:
    square = [(x, 0.0) for x in range(10)] + [(10.0, float(y)) for y in range(10)]
    square += [(10.0 - x, 10.0) for x in range(10)] + [(0.0, 10.0 - y) for y in range(10)]
    path = fitted([(float(x), float(y)) for x, y in square], "side")
    assert signed_area(path) == pytest.approx(100.0)
    assert all(isinstance(edge, Line) for edge in path.edges)
    assert {(0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0)} <= {edge.start for edge in path.edges}


def test_a_triangle_is_left_alone() -> None:
    assert [c.start for c in fitted([(0.0, 0.0), (9.0, 0.0), (0.0, 9.0)], "side").edges] == [
        (0.0, 0.0),
        (9.0, 0.0),
        (0.0, 9.0),
    ]


def test_an_open_line_keeps_its_ends() -> None:
    turns = [pi * k / 20.0 for k in range(21)]
    arc = fitted_line([(30.0 * cos(t), 30.0 * sin(t)) for t in turns], [(-sin(t), cos(t)) for t in turns], "arc")
    assert arc[0].start == (30.0, 0.0) and arc[-1].end == pytest.approx((-30.0, 0.0))
    assert sum(edge.length for edge in arc) == pytest.approx(30.0 * pi)
