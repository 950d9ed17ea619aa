"""Lists laid with rows first."""

from publisher.material.engines import EFFORTS, Desk, solve
from publisher.material.problem import Problem, frames
from publisher.material.row_lists import main_piece


def test_the_main_piece_takes_most_board(shop) -> None:
    """By area of its plain copies; of fewer than four copies no rows are made."""
    pieces = (
        shop.piece((shop.box(10.0, 10.0),), 50),
        shop.piece((shop.box(100.0, 100.0),), 4, mirrored=1),
        shop.piece((shop.box(30.0, 30.0),), 6),
    )
    assert main_piece(pieces, (100.0, 10_000.0, 900.0)) is None
    assert main_piece(pieces, (100.0, 1_000.0, 900.0)) == 2


def test_stair_layers_lie_in_rows_beside_their_plinth(shop) -> None:
    """15 layers and a plinth on 508 × 762: few different turns, and the judge accepts it."""
    board = shop.board((508.0, 762.0))
    pieces = (shop.piece(shop.layer(30.0, 92.0, 40.0), 15, name="layer"), shop.piece(shop.disc(92.0), 1, name="plinth"))
    problem = Problem(pieces, board, board.sheets[0], frames("none"), False)
    packed = solve(problem, Desk(EFFORTS["quick"]))
    assert packed.engine == "rows, then bottom-left"
    assert len(packed.sheets) == 1
    assert len({round(i.pose.turn, 6) for i in packed.sheets[0] if i.part == "layer"}) <= 2
    assert problem.flaws(packed.sheets) == ()


def test_mirrored_copies_go_beside_the_rows(shop) -> None:
    """None is lost."""
    board = shop.board((508.0, 762.0))
    piece = shop.piece(shop.layer(30.0, 92.0, 40.0), 9, (0.0, 90.0, 180.0, 270.0), 3, name="layer")
    problem = Problem((piece,), board, board.sheets[0], frames("none"), False)
    packed = solve(problem, Desk(EFFORTS["quick"]))
    assert sum(i.pose.mirrored for i in packed.sheets[0]) == 3
    assert sum(map(len, packed.sheets)) == 9
