"""What the improver is asked: one copy more, one sheet less."""

from publisher.material import strip_rounds as improving
from publisher.material.bottom_left import CopyKind
from publisher.material.container import upright
from publisher.material.outlines import outline
from publisher.material.packing import Packed, best_packing
from publisher.material.problem import Problem, alone
from publisher.material.strip_rounds import fewer_sheets, more_on_one_sheet

BOTH = ((2, False), (2, True))
QUARTERS = (0.0, 90.0, 180.0, 270.0)


def test_one_copy_more(shop) -> None:
    """From a poor layout of one the improver makes two, and with few seeds stops there."""
    board = shop.board((330.0, 270.0))
    problem = alone(shop.piece(shop.layer(30.0, 92.0, 40.0), 1, QUARTERS), board, board.sheets[0])
    piece = problem.pieces[0]
    kind = CopyKind(0, outline(piece.rings, 1.0), False, QUARTERS, piece.count)
    poor = best_packing((shop.piece(piece.rings, 1, QUARTERS),), upright(problem.free()), 1.0, 1, 1)
    better = more_on_one_sheet(problem, kind, piece, poor, BOTH, 5)
    assert sum(map(len, better.sheets)) == 2
    assert problem.flaws(better.sheets) == ()


def test_no_seed_no_question(shop, monkeypatch) -> None:
    """At the quick effort the improver is never asked."""
    monkeypatch.setattr(improving, "one_sheet", None)
    board = shop.board((330.0, 270.0))
    problem = alone(shop.piece(shop.disc(30.0)), board, board.sheets[0])
    kind = CopyKind(0, outline(problem.pieces[0].rings, 1.0), False, (0.0,), 5)
    poor = Packed((), "rows", 0)
    assert more_on_one_sheet(problem, kind, problem.pieces[0], poor, (), 5) is poor


def test_a_sheet_less(shop) -> None:
    """Two sheets, each with half of what one takes, become one."""
    board = shop.board((330.0, 270.0))
    piece = shop.piece(shop.layer(30.0, 92.0, 40.0), 4, QUARTERS, 1)
    problem = Problem((piece,), board, board.sheets[0], (0.0,), False)
    (sheet,) = best_packing((piece,), upright(problem.free()), 1.0, None, 2).sheets
    poor = Packed((sheet[:2], sheet[2:]), "bottom-left", 0)
    better = fewer_sheets(problem, poor, BOTH, 5)
    assert len(better.sheets) == 1
    assert problem.flaws(better.sheets) == ()
    assert fewer_sheets(problem, better, BOTH, 5) is better


def test_what_area_forbids_is_not_asked(shop, monkeypatch) -> None:
    """Two full sheets stay two without any question."""
    monkeypatch.setattr(improving, "one_sheet", None)
    board = shop.board((206.0, 106.0))
    piece = shop.piece((shop.box(98.0, 99.0),), 4, QUARTERS)
    problem = Problem((piece,), board, board.sheets[0], (0.0,), False)
    full = best_packing((piece,), upright(problem.free()), 1.0, None, 1)
    assert fewer_sheets(problem, full, BOTH, 5) is full
