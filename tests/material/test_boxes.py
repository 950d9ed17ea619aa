"""Parts laid as upright rectangles: which are, how they are turned, and that counts are exact."""

import pytest
import shapely

from publisher.material.boxes import box_form, laid_as_boxes, most_at_right_angles, steps
from publisher.material.problem import alone

QUARTERS = (0.0, 90.0, 180.0, 270.0)


def test_steps_hold_decimals_and_inches_exactly() -> None:
    """84.67 mm, 3/16 in (4.7625 mm) and a third are whole numbers of steps, the third rounded down."""
    assert steps(84.67) == 84_670_000
    assert steps(3 / 16 * 25.4) == 4_762_500
    assert steps(508.0 / 6) == 84_666_666


def test_a_rectangle_drawn_askew_is_laid_upright(shop) -> None:
    """60 × 20 turned by 30° on 63 × 43: two lie in it upright, when any turn is allowed."""
    askew = shapely.affinity.rotate(shapely.box(0, 0, 60, 20), 30.0, origin=(0, 0))
    form = box_form(shop.piece(shop.rings(askew)))
    assert (form.turn, form.rectangle, form.quarter) == (pytest.approx(60.0), True, True)
    board = shop.board((63.0, 43.0), gap=1.0, margin=1.0)
    problem = alone(shop.piece(shop.rings(askew)), board, board.sheets[0])
    laid = laid_as_boxes(problem.pieces[0], problem)
    assert len(laid) == 2
    assert problem.flaws((laid[:1],)) == ()


def test_what_nearly_fills_its_rectangle_is_laid_so_and_what_does_not_is_not(shop) -> None:
    """A wall with a tab fills 88 % of its rectangle; an L fills 56 % of it."""
    board = shop.board((200.0, 200.0))
    wall = shapely.union_all([shapely.box(0, 0, 80, 50), shapely.box(30, 50, 50, 55)])
    angle = shapely.box(0, 0, 90, 90).difference(shapely.box(30, 30, 90, 90))
    for shape, filled, some in ((wall, 0.932, True), (angle, 0.556, False)):
        problem = alone(shop.piece(shop.rings(shape), angles=QUARTERS), board, board.sheets[0])
        assert box_form(problem.pieces[0]).filled == pytest.approx(filled, abs=1e-3)
        assert bool(laid_as_boxes(problem.pieces[0], problem)) is some
        assert most_at_right_angles(problem) is None


def test_grain_lays_them_one_way_only(shop) -> None:
    """60 × 200 on 502 × 756 along the grain: 8 × 3 in rows; with quarter turns 28."""
    for grain, angles, most in (("along", (0.0, 180.0), 24), ("none", QUARTERS, 28)):
        board = shop.board((508.0, 762.0), grain=grain)
        problem = alone(shop.piece((shop.box(60.0, 200.0),), angles=angles), board, board.sheets[0])
        assert most_at_right_angles(problem) == most
        assert len(laid_as_boxes(problem.framed()[0][0], problem, more=1)) == most


def test_mirrored_copies_are_in_lists(shop) -> None:
    """Half of the copies mirrored: numbers and places hold on true outlines."""
    from publisher.material.box_lists import box_lists
    from publisher.material.problem import Problem, frames

    board = shop.board((300.0, 200.0))
    notched = shapely.box(0, 0, 80, 50).difference(shapely.box(0, 0, 10, 10))
    piece = shop.piece(shop.rings(notched), 8, QUARTERS, mirrored=4)
    problem = Problem((piece,), board, board.sheets[0], frames("none"), False)
    found = list(box_lists(problem.framed()[0], problem))
    assert found
    assert all(problem.flaws(packed.sheets) == () for packed in found)
