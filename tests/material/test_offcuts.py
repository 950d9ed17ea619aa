"""The largest offcut: empty, as large as it can be, worth keeping."""

import numpy as np
import pytest
import shapely

from publisher.basics import Box
from publisher.material.offcuts import largest_offcut

SHEET = Box(3.0, 3.0, 297.0, 417.0)


def laid(*polygons):
    return np.array(polygons, dtype=object)


def test_an_empty_sheet_is_one_offcut() -> None:
    """To its edges."""
    assert largest_offcut(laid(), SHEET, 1.0) == SHEET


def test_beside_one_piece() -> None:
    """A strip at the left of 97 (with the gap: 98) leaves the rest, to 0.001 mm."""
    found = largest_offcut(laid(shapely.box(3.0, 3.0, 100.0, 417.0)), SHEET, 1.0)
    assert found is not None
    assert (found.left, found.bottom, found.right, found.top) == pytest.approx((101.0, 3.0, 297.0, 417.0), abs=1e-3)


def test_the_largest_of_several() -> None:
    """A disc in the middle leaves four strips; a long one is taken, and nothing lies in it."""
    disc = shapely.Point(120.0, 200.0).buffer(60.0)
    found = largest_offcut(laid(disc), SHEET, 1.0)
    assert found is not None
    assert shapely.box(found.left, found.bottom, found.right, found.top).distance(disc) >= 1.0 - 1e-9
    # beside the disc 297 - 181 = 116 wide and 414 high; above it 294 wide and 417 - 261 = 156 high
    assert found.width * found.height >= max(116.0 * 414.0, 294.0 * 156.0) - 1.0


def test_scraps_are_not_offered() -> None:
    """A strip of 50 is too narrow; a sheet smaller than a square has nothing."""
    assert largest_offcut(laid(shapely.box(3.0, 3.0, 246.0, 417.0)), SHEET, 1.0) is None
    assert largest_offcut(laid(), Box(0.0, 0.0, 5.0, 5.0), 1.0) is None
    assert largest_offcut(laid(shapely.box(3.0, 3.0, 297.0, 417.0)), SHEET, 1.0) is None
