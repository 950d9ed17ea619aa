"""Problems: what turns are allowed, and what their keys depend on."""

from dataclasses import replace

import pytest

from publisher.basics import Pose
from publisher.material import Item
from publisher.material.problem import Problem, allowed_turns, alone, frames, net_area, piece_of


@pytest.mark.parametrize(
    ("turning", "grain", "turns"),
    [
        ("any", "none", ()),
        ("quarter", "none", (0.0, 90.0, 180.0, 270.0)),
        ("half", "none", (0.0, 180.0)),
        ("none", "none", (0.0,)),
        ("any", "along", (0.0, 180.0)),
        ("quarter", "across", (0.0, 180.0)),
        ("none", "along", (0.0,)),
    ],
)
def test_grain_and_turning(turning, grain, turns) -> None:
    """Along a grain a part lies as drawn or upside down; a stricter wish of the part holds."""
    assert allowed_turns(turning, grain) == turns


def problem(shop, **changes):
    """A bar that may not be turned, on a sheet of 100 × 300."""
    board = shop.board((100.0, 300.0), gap=1.0, margin=3.0)
    made = Problem((shop.piece((shop.box(200.0, 20.0),), 2, (0.0,)),), board, board.sheets[0], frames("none"), False)
    return replace(made, **changes)


def test_a_sheet_without_grain_may_be_turned_under_its_parts(shop) -> None:
    """The bar lies along the sheet's long side: all copies the same way; with a grain across it must."""
    upright = (Item("p", 1, Pose(30.0, 5.0, 90.0)), Item("p", 2, Pose(60.0, 5.0, 90.0)))
    assert problem(shop).flaws((upright,)) == ()
    assert problem(shop, frames=frames("across")).flaws((upright,)) == ()
    assert problem(shop, frames=frames("along")).flaws((upright,))
    mixed = (upright[0], Item("p", 2, Pose(60.0, 205.0, 270.0)))
    assert problem(shop).flaws((mixed,))


def test_keys_change_with_all_that_matters(shop) -> None:
    """Outline, sheet, gap, margin, angles, numbers, purpose: each gives another key; equal problems the same."""
    base = problem(shop)
    piece, board = base.pieces[0], base.board
    others = [
        replace(base, pieces=(replace(piece, rings=(shop.box(200.0, 20.01),)),)),
        replace(base, pieces=(replace(piece, angles=(0.0, 180.0)),)),
        replace(base, pieces=(replace(piece, count=3),)),
        replace(base, pieces=(replace(piece, mirrored=1),)),
        replace(base, pieces=(replace(piece, id="q"),)),
        replace(base, sheet=replace(base.sheet, width=101.0)),
        replace(base, board=replace(board, knife_gap=1.5)),
        replace(base, board=replace(board, edge_margin=2.0)),
        replace(base, frames=(0.0,)),
        replace(base, alone=True),
    ]
    keys = [base.key(), *(other.key() for other in others)]
    assert len(set(keys)) == len(keys)
    assert problem(shop).key() == base.key()


def test_keys_do_not_hang_on_the_last_bit(shop) -> None:
    """A coordinate that a float's last bit moves stays the same key, at sizes in mm and in 64ths of an inch."""
    for size in (105.2375, 4.7625, 92.005, 0.5 * 4.7625, 33.3335, 7 / 64 * 25.4):
        keys = {
            problem(shop, pieces=(shop.piece((shop.box(size * f, 20.0),), 1, (0.0,)),)).key()
            for f in (1.0, 1.0 + 2e-15, 1.0 - 2e-15)
        }
        assert len(keys) == 1


def test_alone_is_bounded_by_area(shop) -> None:
    """12 of 50 × 100 on 200 × 300 without margin; holes do not count as board."""
    board = shop.board((200.0, 300.0), margin=0.0)
    assert alone(shop.piece((shop.box(50.0, 100.0),)), board, board.sheets[0]).pieces[0].count == 12
    assert net_area(shop.piece((shop.box(10.0, 10.0), shop.box(5.0, 4.0, 1.0, 1.0)))) == 80.0


def test_a_part_as_a_piece(shop) -> None:
    """Spares are copies to cut; the finished outline is laid out."""
    part = shop.part("wall", (shop.box(30.0, 20.0), shop.box(5.0, 5.0, 4.0, 4.0)), 3, spare=2, mirrored=1)
    piece = piece_of(part, shop.board((200.0, 300.0)))
    assert (piece.count, piece.mirrored, len(piece.rings), piece.angles) == (5, 1, 2, ())
