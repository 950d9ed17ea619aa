"""Weights of board, hulls, pushes and ballast, by hand."""

from types import SimpleNamespace

import numpy as np
import pytest
import shapely

from publisher.joints.footing import (
    areal_mass,
    ballast,
    hull_sides,
    loaded,
    mass_of,
    narrowest,
    push_to_slide,
    push_to_tip,
)


def test_a_piece_weighs_its_area_without_its_openings(make: SimpleNamespace) -> None:
    frame = make.polygon(
        "frame", [(0, 0), (100, 0), (100, 50), (0, 50)], holes=(((20, 10), (20, 40), (80, 40), (80, 10)),)
    )
    assert mass_of(frame, {"foam": make.board()}) == pytest.approx((5000 - 1800) * 150e-6)
    assert mass_of(frame, {"foam": make.board(mass=300.0)}) == pytest.approx((5000 - 1800) * 300e-6)
    assert areal_mass(make.board(faces="paper_one"), 5.0) * 1e6 == pytest.approx(225)


def test_what_touches_in_a_line_holds_nothing() -> None:
    assert hull_sides(shapely.LineString([(0, 0), (10, 0)]))[1] == [-np.inf]
    normals, limits = hull_sides(shapely.box(0, 0, 40, 20))
    assert sorted((limits - normals @ np.array([10.0, 5.0])).tolist()) == pytest.approx([5.0, 10.0, 15.0, 30.0])


def test_a_hull_without_a_side_is_a_point() -> None:
    """Corners that rounding puts less than a millionth of a millimetre apart."""
    tip = shapely.Polygon([(0, 0), (1e-12, 0), (0, 1e-12)])
    assert hull_sides(tip)[1] == [-np.inf]
    assert narrowest(tip) == narrowest(shapely.LineString([(0, 0), (9, 0)])) == 0.0
    assert narrowest(shapely.box(0, 0, 40, 20)) == pytest.approx(20.0)


def test_a_push_at_half_the_height_tips_about_the_edge() -> None:
    """100 g whose weight falls 20 mm inside, 80 mm high: 0.98 N · 20 mm = F · 40 mm."""
    assert push_to_tip(100.0, 20.0, 80.0) == pytest.approx(0.1 * 9.80665 / 2)
    assert push_to_tip(100.0, -1.0, 80.0) == 0.0
    assert push_to_slide(100.0) == pytest.approx(0.4 * 0.1 * 9.80665)


def test_ballast_holds_each_side_by_its_own_moment() -> None:
    """A foot of 40 × 20: 50 g that fall 10 mm outside its right side are held by 25 g in its middle, 20 mm inside it."""
    foot = shapely.box(0, 0, 40, 20)
    normals, limits = hull_sides(foot)
    margins = limits - normals @ np.array([50.0, 10.0])
    assert margins.min() == pytest.approx(-10.0)
    assert ballast(foot, 50.0 * margins) == pytest.approx(25.0)
    assert ballast(foot, 50.0 * np.abs(margins)) == 0.0


def test_one_figure_may_tip_what_two_would_hold() -> None:
    """Of 20 g about 0, on a foot that ends at 30 mm: 30 g at 60 mm alone 36 mm out, with 30 g more at -10 mm only 18.75 mm; two treads
    that reach as far do worse, and so do both figures on the only tread."""
    limits, moment = np.array([30.0]), np.array([0.0])

    def stands(*reaches: float) -> tuple[float, int]:
        found = loaded(limits, moment, 20.0, np.array([[reach] for reach in reaches]), 30.0)
        return float(found.margins[0]), found.figures

    assert stands(60.0, -10.0) == (pytest.approx(30.0 - 36.0), 1)
    assert stands(60.0, 60.0) == stands(60.0) == (pytest.approx(30.0 - 45.0), 2)
    assert stands(60.0, 59.0, 58.0) == (pytest.approx(30.0 - 30.0 * 119.0 / 80.0), 2)
    assert loaded(limits, moment, 20.0, np.array([[60.0]]), 30.0).moments == pytest.approx([80.0 * -15.0])
