"""Arcs as Béziers stay on the circle."""

from math import cos, degrees, dist, hypot, pi, sin

import pytest

from publisher.basics import Arc
from publisher.press.arcs import beziers


def point_on(bezier: tuple, start: tuple[float, float], t: float) -> tuple[float, float]:  # type: ignore[type-arg]
    one, two, end = bezier
    u = 1 - t
    return tuple(  # type: ignore[return-value]
        u**3 * start[k] + 3 * u * u * t * one[k] + 3 * u * t * t * two[k] + t**3 * end[k] for k in (0, 1)
    )


@pytest.mark.parametrize("sweep", [0.3, pi / 4, pi / 2, -2.2, 2 * pi, -2 * pi])
@pytest.mark.parametrize("radius", [1.0, 92.0, 300.0])
def test_beziers_stay_within_a_hundredth_of_the_house_tolerance(sweep: float, radius: float) -> None:
    start = (radius * cos(0.4), radius * sin(0.4))
    end = (radius * cos(0.4 + sweep), radius * sin(0.4 + sweep))
    here = start
    for piece in beziers(Arc("", start, end, (0.0, 0.0), radius, degrees(sweep))):
        for k in range(11):
            x, y = point_on(piece, here, k / 10)
            assert abs(hypot(x, y) - radius) < 5e-6 * radius + 1e-9
        here = piece[2]
    assert dist(here, end) < 1e-9
