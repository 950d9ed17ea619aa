"""Pieces drawn small are set in where their lines would be one, and nowhere else."""

import pytest
import shapely

from publisher.pages.sheet.clearing import LEAST_WHITE
from publisher.pages.sheet.set_apart import set_apart

LINE = 0.18


def test_pieces_a_hair_apart_keep_white_between_their_lines_and_far_ones_stay() -> None:
    close, beside, far = shapely.box(0, 0, 10, 8), shapely.box(10.1, 0, 20, 8), shapely.box(30, 0, 40, 8)
    a, b, c = set_apart([close, beside, far], LINE)
    assert a.distance(b) >= LINE + LEAST_WHITE and close.contains(a) and beside.contains(b)
    assert c.equals(far)


def test_a_piece_at_the_border_keeps_white_to_its_line() -> None:
    board = shapely.box(0, 0, 50, 30)
    (piece,) = set_apart([shapely.box(0.3, 5, 12, 20)], LINE, board.exterior, 0.5)
    assert piece.distance(board.exterior) >= (LINE + 0.5) / 2 + LEAST_WHITE


@pytest.mark.parametrize("wide", [0.3, 0.8])
def test_one_too_narrow_to_be_set_in_is_drawn_as_it_is(wide: float) -> None:
    thin, other = shapely.box(0, 0, wide, 20), shapely.box(wide, 0, 10, 20)
    shown, _ = set_apart([thin, other], LINE)
    assert shown.area >= 0.5 * thin.area
