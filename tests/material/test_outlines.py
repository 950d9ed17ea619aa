"""Outlines as the engines see them err outwards, by at most 0.05 mm, and keep exact sizes exact."""

from math import radians, tan

import numpy as np
import pytest
import shapely

from publisher.material.outlines import NESTING_GRID, OUTLINE_HAIR, distinct_turns, on_grid, outline, turned, twice_area


def test_a_curved_outline_is_covered_and_close(shop) -> None:
    """The simplified outline covers the true one but for the hair, and lies within 0.05 mm of it."""
    true = shapely.Polygon(shop.layer(55.0, 105.0, 30.0)[0])
    seen = outline(shop.rings(true), 1.0)
    assert len(seen.bare) < 200 < len(true.exterior.coords)
    assert shapely.Polygon(seen.bare).buffer(1.01 * OUTLINE_HAIR).covers(true)
    assert shapely.hausdorff_distance(shapely.Polygon(seen.bare).exterior, true.exterior, densify=0.05) <= 0.05


def test_grown_outline_covers_the_gap(shop) -> None:
    """The grown outline holds everything within half the gap of the piece, but for the hair."""
    true = shapely.Polygon([(0, 0), (80, 0), (3, 9)])
    seen = outline(shop.rings(true), 2.0)
    assert shapely.Polygon(seen.grown).buffer(2 * OUTLINE_HAIR).covers(true.buffer(1.0, quad_segs=64))


def test_rectangles_keep_their_size(shop) -> None:
    """A rectangle is itself against the sheet, and smaller by the hair on each side against others."""
    seen = outline((shop.box(50.0, 100.0),), 0.0)
    assert np.ptp(seen.bare, axis=0) == pytest.approx([50.0, 100.0], abs=1e-9)
    assert np.ptp(seen.grown, axis=0) == pytest.approx([50.0 - 2 * OUTLINE_HAIR, 100.0 - 2 * OUTLINE_HAIR], abs=1e-9)
    assert len(seen.bare) == len(seen.grown) == 4


@pytest.mark.parametrize("tip", [0.2, 3.0, 20.0])
def test_sharp_tips_hardly_recede(shop, tip) -> None:
    """A wedge ``tip`` degrees sharp: made smaller for exact fits, its tip stays within 0.006 mm and its sides move."""
    wedge = ((0.0, 0.0), (100.0, 0.0), (100.0, 100.0 * tan(radians(tip))))
    seen = outline((wedge,), 0.0)
    assert np.hypot(*seen.grown.T).min() <= 0.0061
    assert shapely.Polygon(seen.grown).area < shapely.Polygon(wedge).area


def test_a_disc_is_not_larger_overall_than_it_is(shop) -> None:
    """Polygonising outside must not keep a disc from a sheet of exactly its size."""
    seen = outline(shop.disc(50.0), 0.0)
    assert np.ptp(seen.bare, axis=0).max() <= 100.0


def test_an_outline_that_crosses_itself_is_taken_as_its_hull() -> None:
    """Packing an unsound outline is safe: its hull holds whatever it means."""
    seen = outline((((0.0, 0.0), (10.0, 10.0), (10.0, 0.0), (0.0, 10.0)),), 0.0)
    assert seen.area == pytest.approx(100.0)


@pytest.mark.parametrize("ring", [((0.0, 0.0), (1.0, 0.0), (2.0, 0.0)), ((0.0, 0.0), (float("nan"), 0.0), (2.0, 5.0))])
def test_nothing_is_refused(ring) -> None:
    """An outline without area, or with a coordinate that is no number, is an error and never a layout."""
    with pytest.raises(ValueError, match="cannot be laid out"):
        outline((ring,), 1.0)


def test_an_outline_of_very_many_points_is_taken_coarsely() -> None:
    """10^5 points, 200 waves: few hundred points are left, and they still cover the outline."""
    angle = np.linspace(0.0, 2 * np.pi, 100_000, endpoint=False)
    radius = 100.0 + 0.5 * np.sin(200 * angle)
    ring = tuple(zip((radius * np.cos(angle)).tolist(), (radius * np.sin(angle)).tolist(), strict=True))
    seen = outline((ring,), 0.0)
    assert len(seen.bare) <= 1200
    assert shapely.Polygon(seen.bare).buffer(OUTLINE_HAIR).covers(shapely.Polygon(ring))


def test_a_hole_is_smaller_by_the_gap(shop) -> None:
    """What lies in a hole keeps the whole gap from its edge."""
    seen = outline(shop.disc(50.0, 35.0), 1.0)
    (hole,) = seen.holes
    assert 33.9 < np.hypot(*hole.T).max() <= 34.0


def test_turns_that_show_the_same_are_dropped(shop) -> None:
    """One turn for a disc, two for a rectangle, four for a stair layer."""
    quarters = (0.0, 90.0, 180.0, 270.0)
    assert distinct_turns(outline(shop.disc(40.0), 0.0), quarters) == (0.0,)
    assert distinct_turns(outline((shop.box(30.0, 70.0),), 0.0), quarters) == (0.0, 90.0)
    assert distinct_turns(outline(shop.layer(30.0, 92.0, 40.0), 0.0), quarters) == quarters


def test_grid_rings_run_anticlockwise() -> None:
    """A mirrored ring runs the other way round and is put right; repeated points go."""
    ring = np.array([(0.0, 0.0), (10.0, 0.0), (10.0, 0.0), (0.0, 5.0)])
    assert (
        twice_area(on_grid(ring))
        == twice_area(on_grid(turned(ring, 0.0, mirrored=True)))
        == 50 * NESTING_GRID * NESTING_GRID
    )
    assert len(on_grid(ring)) == 3


def test_quarter_turns_are_exact() -> None:
    """cos 90° is no 6e-17 here."""
    assert turned(np.array([(3.0, 4.0)]), 90.0).tolist() == [[-4.0, 3.0]]
    assert turned(np.array([(3.0, 4.0)]), 450.0).tolist() == [[-4.0, 3.0]]


def test_a_coordinate_a_hair_below_zero_is_zero() -> None:
    """GEOS 3.14.1 never comes back from simplifying the triangle itself."""
    seen = outline((((0.0, 0.0), (36.0, 0.0), (-5e-324, 8.0)),), 0.0)
    assert seen.area == pytest.approx(144.0)
    assert float(seen.bare.min()) == 0.0
