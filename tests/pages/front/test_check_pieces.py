"""The pieces of the print-check page use the height that they say."""

from collections.abc import Callable

import pytest

from publisher.basics import Box
from publisher.design import Design
from publisher.joints import Meeting
from publisher.pages.front.board_gauges import board
from publisher.pages.front.check_pieces import glued, how, limits, scrap, square, wrong
from publisher.pages.front.check_squares import CheckForm
from publisher.pages.front.print_check import CheckBlock
from publisher.pages.model import Words
from publisher.pages.sheet.draft import Context
from publisher.pages.sheet.page_checks import ink_box

BOX = Box(20.0, 30.0, 200.0, 250.0)


@pytest.mark.parametrize(("paper", "form"), [("a4", CheckForm(False)), ("letter", CheckForm(True))])
@pytest.mark.parametrize("piece", [square, how, limits, board, scrap, wrong, glued])
def test_a_piece_stays_in_the_height_that_it_returns(
    make_context: Callable[..., Context], piece: CheckBlock, paper: str, form: CheckForm
) -> None:
    meetings = (Meeting("wall.slot", "wall", "slot of part A for the tab of part B", 5.3, 5.29, 5.3),)
    context = make_context(paper, meetings=meetings)
    body, height = piece(context, BOX, 2, form)
    boxes = [b for t in body.drawn if (b := ink_box(context.type.faces, t)) is not None]
    assert boxes
    assert min(b.bottom for b in boxes) >= BOX.top - height - 1.0
    assert max(b.top for b in boxes) <= BOX.top + 0.2
    assert min(b.left for b in boxes) >= BOX.left - 0.3
    assert max(b.right for b in boxes) <= BOX.right + 0.2


@pytest.mark.parametrize("piece", [board, scrap])
def test_without_parts_there_is_no_board_to_gauge(
    make_context: Callable[..., Context], make_design: Callable[..., Design], piece: CheckBlock
) -> None:
    body, height = piece(make_context(design=make_design(parts=()), parts=()), BOX, 2, CheckForm(False))
    assert body.drawn == ()
    assert height == 0.0


@pytest.mark.parametrize("two", [False, True])
def test_only_the_inner_of_two_squares_is_called_so(make_context: Callable[..., Context], two: bool) -> None:
    body, _ = square(make_context("letter"), BOX, 2, CheckForm(two))
    assert any(thing.text.startswith("inside: ") for thing in body.drawn if isinstance(thing, Words)) == two
