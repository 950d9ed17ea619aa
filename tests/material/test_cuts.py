"""Straight cuts that pieces share, and the order in which a sheet is taken apart."""

from random import Random

import pytest

from publisher.basics import Box, Pose
from publisher.material.cuts import order_of_cuts, shared_cuts, straight_sides
from publisher.material.model import Item, Piece

SHEET = Box(0.0, 0.0, 300.0, 200.0)
TILE = Piece("tile", (((0.0, 0.0), (50.0, 0.0), (50.0, 40.0), (0.0, 40.0)),), ())
WEDGE = Piece("wedge", (((0.0, 0.0), (50.0, 10.0), (25.0, 40.0)),), ())


def laid(*places: tuple[float, float], piece: Piece = TILE, turn: float = 0.0) -> list[Item]:
    return [Item(piece.id, k, Pose(x, y, turn)) for k, (x, y) in enumerate(places, 1)]


def boxes(items: list[Item], wide: float = 50.0, high: float = 40.0) -> list[Box]:
    return [Box(i.pose.x, i.pose.y, i.pose.x + wide, i.pose.y + high) for i in items]


def test_sides_in_a_line_are_one_cut() -> None:
    """Two rows of three, 1 mm apart: two level lines for each row, and an upright one at either side of each column."""
    rows = laid(*((x * 51.0, y * 41.0) for y in range(2) for x in range(3)))
    assert shared_cuts(straight_sides((TILE,), rows)) == 4 + 6
    touching = laid(*((x * 50.0, y * 40.0) for y in range(2) for x in range(3)))
    assert shared_cuts(straight_sides((TILE,), touching)) == 3 + 4


def test_what_lies_apart_or_at_another_height_shares_none() -> None:
    assert shared_cuts(straight_sides((TILE,), laid((0.0, 0.0), (60.0, 0.2)))) == 0
    assert shared_cuts(straight_sides((TILE,), laid((0.0, 0.0), (60.0, 0.0)))) == 0
    assert shared_cuts(straight_sides((WEDGE,), laid((0.0, 0.0), (51.0, 0.0), piece=WEDGE))) == 0
    assert straight_sides((TILE,), []).shape == (0, 5)


def test_a_sheet_is_cut_into_strips_and_strips_into_pieces() -> None:
    """Two rows of tiles; the larger strip that is left, over them, is cut off first."""
    rows = laid(*((x * 51.0, y * 41.0) for y in range(2) for x in range(3)))
    cuts, order = order_of_cuts(SHEET, boxes(rows), straight_sides((TILE,), rows))
    assert [(c.level, c.at, c.start, c.end) for c in cuts] == [
        (True, 81.0, 0.0, 300.0),
        (False, 50.0, 0.0, 81.0),
        (False, 101.0, 0.0, 81.0),
        (True, 40.5, 0.0, 50.0),
        (True, 40.5, 50.0, 101.0),
        (True, 40.5, 101.0, 300.0),
    ]
    assert [cut.pieces for cut in cuts] == [3, 2, 2, 0, 0, 0]
    assert order == (0, 3, 1, 4, 2, 5)


def test_a_cut_that_frees_one_side_alone_keeps_off_it() -> None:
    """A hand that strayed by half a millimetre spoiled a piece for nothing: beyond it the board is waste."""
    one = laid((0.0, 0.0))
    ((cut,), _) = order_of_cuts(SHEET, boxes(one), straight_sides((TILE,), one))
    assert (cut.level, cut.at, cut.pieces) == (False, 52.0, 0)
    keep = Box(53.0, 0.0, 300.0, 200.0)
    (cut, *_), _ = order_of_cuts(SHEET, boxes(one), straight_sides((TILE,), one), keep)
    assert (cut.level, cut.at) == (False, 51.5)


def test_no_cut_goes_through_what_is_kept() -> None:
    """Rows below and what is kept over them: the strip beside it is not cut off, and no line of columns runs through it."""
    rows = laid(*((x * 51.0, y * 41.0) for y in range(2) for x in range(3)))
    keep = Box(60.0, 85.0, 297.0, 197.0)
    cuts, order = order_of_cuts(SHEET, boxes(rows), straight_sides((TILE,), rows), keep)
    assert cuts and sorted(order) == list(range(6))
    for cut in cuts:
        low, high, start, end = (
            (keep.bottom, keep.top, keep.left, keep.right)
            if cut.level
            else (keep.left, keep.right, keep.bottom, keep.top)
        )
        assert not (low < cut.at < high and start < cut.end and end > cut.start)
    corner = Box(100.0, 30.0, 297.0, 197.0)
    assert order_of_cuts(SHEET, [Box(0.0, 0.0, 90.0, 60.0)], straight_sides((), []), corner)[0] != ()


def test_what_no_line_parts_is_cut_along_its_outlines() -> None:
    """Four tiles round a middle one: from side to side no line is free."""
    ring = [Box(0, 0, 30, 10), Box(30, 0, 40, 30), Box(10, 30, 40, 40), Box(0, 10, 10, 40), Box(12, 12, 28, 28)]
    cuts, order = order_of_cuts(Box(0, 0, 40, 40), ring, straight_sides((), []))
    assert cuts == () and sorted(order) == [0, 1, 2, 3, 4]


@pytest.mark.parametrize("seed", range(5))
def test_no_cut_goes_through_a_piece_and_each_goes_from_side_to_side(seed: int) -> None:
    """Random tiles that do not lie over each other: what was cut off is no longer in the way of later cuts."""
    chance, places = Random(seed), list[Box]()
    while len(places) < 14:
        left, low = chance.uniform(0, 250), chance.uniform(0, 160)
        box = Box(left, low, left + chance.uniform(10, 50), low + chance.uniform(10, 40))
        if all(
            box.left >= b.right or b.left >= box.right or box.bottom >= b.top or b.bottom >= box.top for b in places
        ):
            places.append(box)
    cuts, order = order_of_cuts(SHEET, places, straight_sides((), []))
    assert sorted(order) == list(range(len(places)))
    for cut in cuts:
        for box in places:
            low, high, start, end = (
                (box.bottom, box.top, box.left, box.right) if cut.level else (box.left, box.right, box.bottom, box.top)
            )
            assert not (low + 0.02 < cut.at < high - 0.02 and start < cut.end - 0.02 and end > cut.start + 0.02)
