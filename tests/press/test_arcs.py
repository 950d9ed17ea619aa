"""Arcs: every kind of ring keeps its arcs, and the Béziers stay on the circle."""

from math import cos, dist, hypot, pi, sin

import pytest

from publisher.press.arcs import Bow, Straight, beziers, segments


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
    for piece in beziers(Bow(end, (0.0, 0.0), radius, 0.4, sweep)):
        for k in range(11):
            x, y = point_on(piece, here, k / 10)
            assert abs(hypot(x, y) - radius) < 5e-6 * radius + 1e-9
        here = piece[2]
    assert dist(here, end) < 1e-9


def arc_points(first: float, last: float, n: int) -> list[tuple[float, float]]:
    return [(10 * cos(first + (last - first) * k / n), 10 * sin(first + (last - first) * k / n)) for k in range(n + 1)]


def test_a_sector_gives_one_arc_and_two_lines() -> None:
    points = ((0.0, 0.0), *arc_points(0.0, 1.0, 20))
    start, rest = segments(points, True, ((1, 21, (0.0, 0.0), 10.0),))
    assert start == (0.0, 0.0)
    assert [type(p) for p in rest] == [Straight, Bow, Straight]
    assert rest[1].sweep == pytest.approx(1.0)


def test_an_arc_that_wraps_round_the_ring_is_not_cut_in_two() -> None:
    whole = ((0.0, 0.0), *arc_points(0.0, 1.0, 20))
    shifted = whole[10:] + whole[:10]  # the ring now begins in the middle of the arc
    first = shifted.index(whole[1])
    last = shifted.index(whole[21])
    _, rest = segments(shifted, True, ((first, last, (0.0, 0.0), 10.0),))
    bows = [p for p in rest if isinstance(p, Bow)]
    assert len(bows) == 1
    assert bows[0].sweep == pytest.approx(1.0)
    assert len(rest) == 3


@pytest.mark.parametrize("direction", [1, -1])
def test_a_full_circle_keeps_its_direction(direction: int) -> None:
    points = tuple((10 * cos(direction * 2 * pi * k / 100), 10 * sin(direction * 2 * pi * k / 100)) for k in range(100))
    _, rest = segments(points, True, ((0, 0, (0.0, 0.0), 10.0),))
    assert len(rest) == 1
    assert isinstance(rest[0], Bow)
    assert rest[0].sweep == pytest.approx(direction * 2 * pi)


def test_an_open_path_ends_at_its_last_point() -> None:
    start, rest = segments(((0.0, 0.0), (1.0, 0.0), (1.0, 2.0)), False, ())
    assert (start, [p.end for p in rest]) == ((0.0, 0.0), [(1.0, 0.0), (1.0, 2.0)])
