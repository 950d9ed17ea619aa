"""Whether a part fits a sheet, to a hundredth; and what a grid of bounding boxes gives."""

from math import hypot

import pytest
import shapely

from publisher.material.fitting import best_turn, grid_count, grid_sheets

BOTH = (0.0, 90.0)


def test_a_hundredth_too_large(shop) -> None:
    """A bar 300.01 long on 300 × 50 that may not be tilted is too long by 0.01 mm; one of 300 fits."""
    quarters = (0.0, 90.0, 180.0, 270.0)
    assert best_turn(shop.piece((shop.box(300.01, 40.0),), angles=quarters), 300.0, 50.0, BOTH)[1] == pytest.approx(
        0.01
    )
    assert best_turn(shop.piece((shop.box(300.0, 40.0),), angles=quarters), 300.0, 50.0, BOTH)[1] <= 0.0


def test_a_diagonal_fits_when_any_turn_is_allowed(shop) -> None:
    """A bar of 480 × 5 lies on A3 only askew (its diagonal is 514.4); one longer than the diagonal does not."""
    turn, over = best_turn(shop.piece((shop.box(480.0, 5.0),)), 297.0, 420.0, BOTH)
    assert over <= 0.0
    tilted = shapely.affinity.rotate(shapely.box(0, 0, 480, 5), turn)
    assert tilted.bounds[2] - tilted.bounds[0] <= 297.0
    assert tilted.bounds[3] - tilted.bounds[1] <= 420.0
    assert best_turn(shop.piece((shop.box(hypot(297.0, 420.0) + 1, 5.0),)), 297.0, 420.0, BOTH)[1] > 0.0


def test_the_least_turn_is_found_between_degrees(shop) -> None:
    """A bar that fits at one turn only (to a thousandth of a degree): excess below 0.001 mm."""
    # at 30.5 degrees a bar of 200 × 10 is 200·cos + 10·sin wide and 200·sin + 10·cos high
    tilted = shapely.affinity.rotate(shapely.box(0, 0, 200, 10), 30.5).bounds
    over = best_turn(shop.piece((shop.box(200.0, 10.0),)), tilted[2] - tilted[0], tilted[3] - tilted[1], BOTH)[1]
    assert over < 0.001


def test_frames_turn_the_sheet(shop) -> None:
    """A part that may not be turned fits the sheet turned, where the board has no grain."""
    bar = shop.piece((shop.box(300.0, 40.0),), angles=(0.0,))
    assert best_turn(bar, 50.0, 320.0, (0.0,))[1] > 0.0
    assert best_turn(bar, 50.0, 320.0, BOTH)[1] <= 0.0


def test_grid_of_boxes(shop) -> None:
    """508 × 762 inside margins of 3, gap 1: 502 // 61 ... by arithmetic; on its side when that gives more."""
    piece = shop.piece((shop.box(60.0, 200.0),))
    assert grid_count(piece, 502.0, 756.0, 1.0, BOTH) == max(8 * 3, 2 * 12)
    assert grid_count(shop.piece((shop.box(60.0, 200.0),), angles=(0.0,)), 210.0, 61.0, 1.0, (0.0,)) == 0
    assert grid_count(piece, 210.0, 61.0, 1.0, BOTH) == 1
    assert grid_count(shop.piece((shop.box(50.0, 100.0),)), 200.0, 300.0, 0.0, BOTH) == 12


def test_grid_sheets(shop) -> None:
    """12 boxes of 50 × 100 take one sheet of 200 × 300, 13 take two; a box that does not fit is in no sheet."""
    for count, sheets in ((12, 1), (13, 2), (25, 3)):
        assert grid_sheets((shop.piece((shop.box(50.0, 100.0),), count, (0.0,)),), 200.0, 300.0, 0.0, (0.0,)) == sheets
    assert grid_sheets((shop.piece((shop.box(500.0, 100.0),), 4),), 200.0, 300.0, 0.0, BOTH) == 0
