"""Pieces of drawings in mm: circles stay arcs, the rest is flattened finely."""

from math import hypot, pi

import pytest

from publisher.basics import Arc, Line, PathEdge
from publisher.geometry.drawings.numbers import IDENTITY, times, transform
from publisher.geometry.drawings.path_data import read_path
from publisher.geometry.drawings.pieces import PointAllowance, full_turn, path_of, sagitta_of
from publisher.geometry.drawings.tree import Unreadable
from publisher.geometry.paths.rings import signed_area


def curves(d: str, how: str = "") -> tuple[PathEdge, ...]:
    return path_of(read_path(d)[0][0], transform(how), "o").edges


@pytest.mark.parametrize("how", ["", "rotate(30)", "scale(2)", "scale(-1,1)", "translate(4,5) rotate(-70) scale(3)"])
def test_a_circle_stays_a_circle(how: str) -> None:
    found = path_of(full_turn((7.0, 3.0), 5.0, 5.0), transform(how), "o")
    factor = {"": 1.0, "rotate(30)": 1.0, "scale(2)": 2.0, "scale(-1,1)": 1.0}.get(how, 3.0)
    assert len(found.edges) == 2
    assert all(isinstance(e, Arc) and e.radius == pytest.approx(5.0 * factor) for e in found.edges)
    assert abs(signed_area(found)) == pytest.approx(pi * (5.0 * factor) ** 2)


def test_an_ellipse_is_flattened() -> None:
    found = path_of(full_turn((0.0, 0.0), 40.0, 20.0), IDENTITY, "o")
    assert all(isinstance(c, Line) for c in found.edges)
    assert signed_area(found) == pytest.approx(pi * 800.0, rel=2e-4)
    assert all(hypot(c.start[0] / 40.0, c.start[1] / 20.0) == pytest.approx(1.0) for c in found.edges)


@pytest.mark.parametrize(("large", "sweep"), [(0, 0), (0, 1), (1, 0), (1, 1)])
def test_the_four_arcs_between_two_points(large: int, sweep: int) -> None:
    (arc,) = curves(f"M0 0 A10 10 0 {large} {sweep} 10 10")
    assert isinstance(arc, Arc) and arc.sweep == pytest.approx((270.0 if large else 90.0) * (1.0 if sweep else -1.0))
    assert arc.centre == pytest.approx((10.0, 0.0) if large == sweep else (0.0, 10.0), abs=1e-9)


def test_radii_too_small_are_enlarged() -> None:
    (arc,) = curves("M0 0 A1 1 0 0 1 20 0")
    assert isinstance(arc, Arc) and arc.radius == pytest.approx(10.0) and arc.sweep == pytest.approx(180.0)


def test_a_bezier_keeps_within_the_sagitta() -> None:
    # the usual quarter circle by a cubic, k = 4/3·(√2 − 1): radius 100, off by at most 0.027 from the circle
    k = 100.0 * 0.5522847498
    found = curves(f"M100 0 C100 {k} {k} 100 0 100")
    worst = 0.0
    for c in found:
        middle = ((c.start[0] + c.end[0]) / 2.0, (c.start[1] + c.end[1]) / 2.0)
        worst = max(worst, 100.0 - hypot(*middle))
    assert worst < 0.005 and len(found) < 200
    assert found[-1].end == (0.0, 100.0)


def test_a_small_thing_is_flattened_finer_and_a_kilometre_refused() -> None:
    small = [full_turn((0.0, 0.0), 0.5, 0.4)]
    assert sagitta_of(small, IDENTITY) == pytest.approx(5e-4, rel=0.01)  # one unit across
    assert sagitta_of([full_turn((0.0, 0.0), 50.0, 40.0)], IDENTITY) == 0.005
    assert sagitta_of([], IDENTITY) == 0.005
    with pytest.raises(Unreadable, match="kilometre"):
        sagitta_of(small, times(transform("scale(10000)"), transform("scale(1000)")))


def test_points_are_counted() -> None:
    budget = PointAllowance(100)
    with pytest.raises(Unreadable, match="points"):
        for _ in range(10):
            path_of(full_turn((0.0, 0.0), 40.0, 20.0), IDENTITY, "o", budget=budget)
