"""The boards that a pack is drawn for, in words."""

from collections.abc import Callable
from dataclasses import replace

from publisher.design import Design
from publisher.pages.sheet import Context
from publisher.pages.sheet.board_words import drawn_for


def test_each_board_that_a_part_is_cut_from_is_named_once_and_no_other(
    make_context: Callable[..., Context], make_design: Callable[..., Design]
) -> None:
    context = make_context(design=make_design())
    board = next(b for b in context.design.boards if b.id == context.parts[0].board)
    thin = replace(board, thickness=4.7625, sold_as="3/16 in")
    unused = replace(board, id="grey_card", thickness=1.0)
    card = replace(context.parts[0], id="lid", board="grey_card")
    two = (*context.parts, card)
    assert drawn_for((thin, unused), context.parts, "mm") == f"{board.id} 4.76 mm (0.187 in), sold as 3/16 in"
    assert drawn_for((board, unused), two, "in") == f"{board.id} 0.197 in (5.00 mm); grey card 0.039 in (1.00 mm)"
    assert drawn_for((unused,), context.parts, "mm") == ""
