"""Lists of rectangles: on the least sheets that their area allows where that is known, and exactly."""

from publisher.material.box_lists import box_lists
from publisher.material.problem import Problem, frames

QUARTERS = (0.0, 90.0, 180.0, 270.0)


def listed(shop, *wanted, sheet=(200.0, 300.0), gap=0.0):
    """Return a problem of (width, height, count) rectangles."""
    board = shop.board(sheet, gap=gap, margin=0.0)
    pieces = tuple(
        shop.piece((shop.box(w, h),), count, QUARTERS, name=f"p{k}") for k, (w, h, count) in enumerate(wanted)
    )
    return Problem(pieces, board, board.sheets[0], frames("none"), False)


def test_a_sheet_cut_into_unlike_rectangles_goes_together_again(shop) -> None:
    """200 × 300 as 200 × 120, 120 × 180, 80 × 100 and 80 × 80: one sheet, without a hair to spare."""
    problem = listed(shop, (200, 120, 1), (120, 180, 1), (80, 100, 1), (80, 80, 1))
    fewest = min(box_lists(problem.pieces, problem), key=lambda packed: len(packed.sheets))
    assert problem.flaws(fewest.sheets) == ()
    assert len(fewest.sheets) == 1


def test_every_rule_holds_and_none_lays_more_than_asked(shop) -> None:
    """Seven sizes in 40 copies with a gap: each order and rule lays all of them, and the judge finds nothing."""
    problem = listed(shop, *((20 + 9 * k, 75 - 7 * k, 4 + k % 3) for k in range(7)), gap=1.0)
    found = list(box_lists(problem.pieces, problem))
    assert len(found) == 12
    assert all(problem.flaws(packed.sheets) == () for packed in found)


def test_nothing_for_parts_that_fill_too_little_or_fit_no_sheet(shop) -> None:
    """A disc among them, or one too long: other engines have that."""
    problem = listed(shop, (50, 60, 3))
    disc = shop.piece(shop.disc(20.0), 2, QUARTERS, name="disc")
    assert not list(box_lists((*problem.pieces, disc), problem))
    assert not list(box_lists(listed(shop, (301, 10, 1)).pieces, problem))
