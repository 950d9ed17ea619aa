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
    (piece,) = set_apart([shapely.box(0.3, 5, 12, 20)], LINE, board, 0.5)
    assert piece.distance(board.exterior) >= (LINE + 0.5) / 2 + LEAST_WHITE


@pytest.mark.parametrize("wide", [0.3, 0.8])
def test_one_too_narrow_to_be_set_in_is_drawn_as_it_is(wide: float) -> None:
    thin, other = shapely.box(0, 0, wide, 20), shapely.box(wide, 0, 10, 20)
    shown, _ = set_apart([thin, other], LINE)
    assert shown.area >= 0.5 * thin.area


def test_what_lies_beside_one_that_is_too_narrow_is_set_in_by_all_that_is_missing() -> None:
    kerb, wall = shapely.box(0, 0, 0.4, 20), shapely.box(0.5, 0, 10, 20)
    shown, moved = set_apart([kerb, wall], LINE)
    assert shown.equals(kerb) and moved.distance(kerb) >= LINE + LEAST_WHITE


def test_openings_stay_as_they_are() -> None:
    hole = shapely.box(1, 1, 1.5, 3)
    piece = shapely.Polygon(shapely.box(0, 0, 10, 8).exterior, [hole.exterior])
    shown, _ = set_apart([piece, shapely.box(10.1, 0, 20, 8)], LINE)
    assert [shapely.Polygon(ring).equals(hole) for ring in shown.interiors] == [True]


def test_a_piece_is_set_in_only_where_the_other_is_near() -> None:
    """The thin crown of an arch far from its neighbour must not get thinner."""
    arch = shapely.box(0, 0, 40, 12).difference(shapely.Point(20, 0).buffer(11.5))
    shown, _ = set_apart([arch, shapely.box(40.1, 0, 60, 12)], LINE)
    assert shown.bounds[:2] == (0.0, 0.0) and shown.bounds[3] == 12.0 and shown.bounds[2] < 40.0
    far = shapely.box(0, 0, 30, 12)
    assert shown.intersection(far).equals(arch.intersection(far))


def test_what_a_window_cut_into_pieces_or_left_nothing_of_stays() -> None:
    cut = shapely.MultiPolygon([shapely.box(0, 0, 2, 8), shapely.box(6, 0, 8, 8)])
    beside = shapely.box(8.1, 0, 20, 8)
    shown = set_apart([cut, shapely.Polygon(), beside], LINE)
    assert shown[0] == cut and shown[1].is_empty
    assert beside.contains(shown[2]) and shown[2].distance(cut) >= LINE + LEAST_WHITE
