"""The block of what to buy: a row for each way, carried under its key, and lists that are no higher than they were counted."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from publisher.basics import TipPromise
from publisher.material.buying import CUT_BY_A_TIP
from publisher.pages import Words
from publisher.pages.front.what_to_buy import buy_block, work_block
from publisher.pages.sheet import make_frame
from publisher.pages.sheet.draft import Context, Numbers

NUMBERS = Numbers(3, 9, (), (), (("side", 5), ("side", 6), ("rib", 6)))


@pytest.mark.parametrize("slug", ["quay", "lock-stair", "bridge"])
@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_each_way_and_the_work_stand_where_they_are_carried(
    demo: Callable[..., Context], slug: str, paper: str
) -> None:
    context = demo(slug, paper)
    frame = make_frame(context.paper, False, 0.0)
    block, work = buy_block(context, frame), work_block(context, frame)
    assert work is not None and context.needs.work is not None
    body = block.draw(250.0, NUMBERS)
    assert [where.key for where in body.carried] == [way.key for way in context.needs.ways]
    assert [where.key for where in work.draw(100.0, NUMBERS).carried] == [context.needs.work.key]
    assert min(t.y for t in body.drawn if isinstance(t, Words)) > 250.0 - block.height
    said = [t.text for t in body.drawn if isinstance(t, Words)]
    assert sum(text.startswith("or ") and "sheet" in text for text in said) == len(context.needs.ways) - 1


def test_boards_are_named_where_there_are_several(demo: Callable[..., Context]) -> None:
    context = demo("lock-stair")
    one, other = context.needs.ways
    two = replace(context, needs=replace(context.needs, ways=(one, replace(other, board="thin_foam", key="buy:thin"))))
    said = [
        t.text
        for t in buy_block(two, make_frame(two.paper, False, 0.0)).draw(250.0, NUMBERS).drawn
        if isinstance(t, Words)
    ]
    assert {"Board", "foam", "thin foam", "2 sheets"} <= set(said)  # of another board it is no “or”
    assert "or 2 sheets" not in said


def test_a_pack_says_of_its_own_boards_how_far_a_blade_goes(demo: Callable[..., Context]) -> None:
    context = demo("quay")
    work = context.needs.work
    assert work is not None
    tips = (TipPromise(True, *CUT_BY_A_TIP[True]),)
    papered = replace(context, needs=replace(context.needs, work=replace(work, tips=tips)))
    frame = make_frame(context.paper, False, 0.0)

    def said(of: Context) -> str:
        block = work_block(of, frame)
        assert block is not None
        return " ".join(t.text for t in block.draw(100.0, NUMBERS).drawn if isinstance(t, Words))

    assert "2 to 4 m (7 to 13 ft) of bare board" in said(context)
    assert "1 to 2 m" in said(papered) and "bare" not in said(papered)
