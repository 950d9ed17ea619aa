"""Rows of one part on a sheet, counted."""

import pytest

from publisher.basics import Pose
from publisher.material import Item, Piece
from publisher.material.bottom_left import CopyKind
from publisher.material.container import container
from publisher.material.judge import flaws
from publisher.material.outlines import NESTING_GRID, outline
from publisher.material.rows import RowBook, rows


def laid(shop, rings, sheet, gap, turns, paired):
    """Return the number of copies, after the judge."""
    shape = outline(rings, gap)
    kind = CopyKind(0, shape, False, turns, 999)
    spots = rows(kind, RowBook(shape, paired, 12), container((shop.box(*sheet),)), turns)
    items = tuple(Item("p", i + 1, Pose(s.x / NESTING_GRID, s.y / NESTING_GRID, s.turn)) for i, s in enumerate(spots))
    allowed = tuple(sorted({t + h for t in turns for h in ((0.0, 180.0) if paired else (0.0,))}))
    assert flaws((Piece("p", rings, allowed, 999),), (shop.box(*sheet),), gap, (items,), complete=False) == ()
    return len(items)


def test_rectangles(shop) -> None:
    """12 of 50 × 100 on 200 × 300; 5 × 3 of 50 × 100 on 259 × 302 with gaps of 1 (5·50 + 4 = 254, 3·100 + 2 = 302)."""
    assert laid(shop, (shop.box(50.0, 100.0),), (200.0, 300.0), 0.0, (0.0,), False) == 12
    assert laid(shop, (shop.box(50.0, 100.0),), (259.0, 302.0), 1.0, (0.0,), False) == 15


def test_the_sheet_may_be_taken_either_way(shop) -> None:
    """Rows along the long side and rows along the short side give the same on a sheet and on the sheet turned."""
    triangle = (((0.0, 0.0), (60.0, 0.0), (60.0, 40.0)),)
    turns = (0.0, 90.0)
    assert laid(shop, triangle, (200.0, 310.0), 1.0, turns, True) == laid(
        shop, triangle, (310.0, 200.0), 1.0, turns, True
    )


def test_pairs_of_triangles(shop) -> None:
    """Right triangles 60 × 40 pair up to boxes: 2 × 3 × 5 = 30 of them on 180 × 200 without gap, 15 if none may be turned."""
    triangle = (((0.0, 0.0), (60.0, 0.0), (60.0, 40.0)),)
    assert laid(shop, triangle, (180.0, 200.0), 0.0, (0.0,), True) == 30
    assert laid(shop, triangle, (180.0, 200.0), 0.0, (0.0,), False) < 30


def test_discs_beat_their_grid(shop) -> None:
    """Discs of diameter 20 on 100 × 100: 25 in a grid; the shifted rows of 5, 4, 5, … have height 20 + 5·17.32 > 100, so on
    100 × 107 they give 5+4+5+4+5+4 = 27 against 25 (closed form)."""
    assert laid(shop, shop.disc(10.0), (100.0, 107.0), 0.0, (0.0,), False) == 27


@pytest.mark.parametrize("turns", [(0.0,), (0.0, 90.0)])
def test_too_small_a_sheet(shop, turns) -> None:
    """No room, no rows."""
    assert laid(shop, shop.layer(30.0, 92.0, 40.0), (100.0, 90.0), 1.0, turns, True) == 0
