"""Containers of any form: where a piece fits, and where not."""

import pytest
import shapely

from publisher.material import pack
from publisher.material.container import container, inner_fit
from publisher.material.outlines import NESTING_GRID, outline


def test_a_rectangle_needs_no_computation(shop) -> None:
    """The inner-fit region of a rectangle is a rectangle."""
    free = container((shop.box(100.0, 60.0, 10.0, 5.0),))
    room, taken = inner_fit(free, outline((shop.box(30.0, 20.0),), 0.0).path(0.0, False, grown=False))
    assert room is not None
    assert [v / NESTING_GRID for v in room] == pytest.approx([10.0, 5.0, 80.0, 45.0], abs=0.001)
    assert taken == ()
    assert free.area == pytest.approx(6000.0)


def test_a_piece_of_exactly_the_size_fits_and_one_larger_does_not(shop) -> None:
    """100 × 60 into 100 × 60: yes; 0.01 mm more: no."""
    free = container((shop.box(100.0, 60.0),))
    assert inner_fit(free, outline((shop.box(100.0, 60.0),), 0.0).path(0.0, False, grown=False))[0] is not None
    assert inner_fit(free, outline((shop.box(100.01, 60.0),), 0.0).path(0.0, False, grown=False))[0] is None


L_SHAPE = ((0.0, 0.0), (100.0, 0.0), (100.0, 40.0), (40.0, 40.0), (40.0, 100.0), (0.0, 100.0))
NOTCHED = ((0.0, 0.0), (100.0, 0.0), (100.0, 100.0), (60.0, 100.0), (50.0, 20.0), (40.0, 100.0), (0.0, 100.0))


@pytest.mark.parametrize("ring", [L_SHAPE, NOTCHED])
def test_any_outline_holds_what_it_can(shop, ring) -> None:
    """Pieces lie inside a container with inner corners, close to them too (the judge sees to it)."""
    free = shapely.Polygon(ring)
    (laid,) = pack((shop.piece((shop.box(18.0, 18.0),), 40),), (ring,), 2.0, bins=1)
    assert len(laid) >= 0.5 * free.area / 400
    for item in laid:
        assert free.buffer(0.01).covers(shapely.Polygon(item.pose.apply_all(shop.box(18.0, 18.0))))


def test_exact_fit_in_an_l(shop) -> None:
    """Two arms of 40: a bar of 40 × 100 and one of 40 × 60 fill the L exactly."""
    bars = (shop.piece((shop.box(40.0, 100.0),), name="a"), shop.piece((shop.box(60.0, 40.0),), name="b"))
    (laid,) = pack(bars, (L_SHAPE,), 0.0)
    assert {i.part for i in laid} == {"a", "b"}


def test_blocked_holes_are_kept_free(shop) -> None:
    """A page with a box cut out of its middle: nothing lies on the box, whatever its place."""
    blocked = shop.box(30.0, 30.0, 35.0, 35.0)
    (laid,) = pack((shop.piece((shop.box(34.0, 34.0),), 9),), (shop.box(100.0, 100.0), blocked), 0.0, bins=1)
    assert len(laid) == 4
    for item in laid:
        there = shapely.Polygon(item.pose.apply_all(shop.box(34.0, 34.0)))
        assert there.intersection(shapely.Polygon(blocked)).area < 0.5  # 0.01 mm along an edge


def test_a_blocked_hole_swallowed_by_the_piece_is_seen(shop) -> None:
    """A piece that would lie round a small blocked hole without touching its own outline does not fit."""
    assert (
        pack((shop.piece((shop.box(90.0, 90.0),)),), (shop.box(100.0, 100.0), shop.box(4.0, 4.0, 48.0, 48.0)), 0.0)
        == ()
    )
