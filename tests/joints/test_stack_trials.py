"""What to try before layers are cut."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any

from publisher.joints.stack_trials import Pile, pile_sentence, pile_sentences


def test_a_stack_whose_height_must_agree_is_tried_with_scraps(demo: Callable[..., Any]) -> None:
    context = demo("lock-stair")
    (sentence,) = pile_sentences(context.design, context.joined)
    said = sentence.text
    assert sentence.key == "pile:stair" and [number.value for number in sentence.numbers[:3]] == [20.0, 100.0, 5.0]
    assert "press a pile of 20 scraps" in said and "It is to be 100.0 mm (3.94 in) high" in said
    assert "For each 5.00 mm (0.20 in) that it lacks cut one layer more" in said
    assert "from 96.0 mm (3.78 in) to 105.0 mm (4.13 in)" in said  # 20 · 4.8; 20 · 5.2 + 19 · 0.05


def test_a_low_stack_is_said_as_its_facts_are() -> None:
    """8.925 mm at least was said as 8.90: a figure that no room had worked out, which proof refused."""
    low = Pile("slab", 2, 4.7625, 9.525, 8.925, 10.175, likely=False)
    assert "from 8.92 mm (0.35 in) to 10.2 mm (0.40 in)" in pile_sentence(low).text


def test_a_stack_whose_height_nothing_asks_for_is_not(demo: Callable[..., Any]) -> None:
    context = demo("lock-stair")
    assert pile_sentences(replace(context.design, needs=(), meets=()), context.joined) == ()
    assert pile_sentences(demo("quay").design, demo("quay").joined) == ()
