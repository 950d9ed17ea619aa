"""What to try before layers are cut."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from publisher.pages import Words
from publisher.pages.front.cautions import caution_drafts
from publisher.pages.front.piles import Pile, piles
from publisher.pages.sheet.draft import Context, Numbers


def test_a_stack_whose_height_must_agree_is_tried_with_scraps(demo: Callable[..., Context]) -> None:
    context = demo("lock-stair")
    (said,) = piles(context.design, context.joined)
    assert "press a pile of 20 scraps" in said and "It is to be 100.0 mm (3.94 in) high" in said
    assert "For each 5.00 mm (0.20 in) that it lacks cut one layer more" in said
    assert "from 96.0 mm (3.78 in) to 105.0 mm (4.13 in)" in said  # 20 · 4.8; 20 · 5.2 + 19 · 0.05
    body = caution_drafts(context)[0].body(Numbers(7, 9, (), (), ()))
    assert [promise.text for promise in body.texts] == [said]
    words = " ".join(w.text for w in body.drawn if isinstance(w, Words))
    assert said in words.replace("\n", " ")


def test_a_low_stack_is_said_as_its_facts_are(demo: Callable[..., Context], monkeypatch: pytest.MonkeyPatch) -> None:
    """8.925 mm at least was said as 8.90: a figure that no room had worked out, which proof refused."""
    context = demo("lock-stair")
    low = Pile("slab", 2, 4.7625, 9.525, 8.925, 10.175, likely=False)
    monkeypatch.setattr("publisher.pages.front.piles.trials_of", lambda *_: (low,))
    assert "from 8.92 mm (0.35 in) to 10.2 mm (0.40 in)" in piles(context.design, context.joined)[0]


def test_a_stack_whose_height_nothing_asks_for_is_not(demo: Callable[..., Context]) -> None:
    context = demo("lock-stair")
    assert piles(replace(context.design, needs=(), meets=()), context.joined) == ()
    assert piles(demo("quay").design, demo("quay").joined) == ()
