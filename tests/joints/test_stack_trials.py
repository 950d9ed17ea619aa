"""What to try before layers are cut."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest

from publisher.joints.stack_trials import Pile, pile_sentence, pile_sentences


def test_a_stack_whose_height_must_agree_is_tried_with_scraps(demo: Callable[..., Any]) -> None:
    context = demo("lock-stair")
    (sentence,) = pile_sentences(context.design, context.joined)
    said = sentence.text
    assert sentence.key == "pile:stair" and [number.value for number in sentence.numbers[:5]] == [
        20.0,
        100.0,
        97.5,
        102.5,
        5.0,
    ]
    assert "press a pile of 20 scraps" in said and "It is to be 100.0 mm (3.94 in) high" in said
    assert "between 97.5 mm (3.84 in) and 102.5 mm (4.04 in) go on. Where it is lower cut one layer more" in said
    assert "one for each further 5.00 mm (0.20 in) that it lacks" in said
    assert "from 96.0 mm (3.78 in) to 105.0 mm (4.13 in)" in said  # 20 · 4.8; 20 · 5.2 + 19 · 0.05


def test_a_low_stack_is_said_as_its_facts_are() -> None:
    """8.925 mm at least was said as 8.90: a figure that no room had worked out, which proof refused."""
    low = Pile("slab", 2, 4.7625, 9.525, 8.925, 10.175, likely=False)
    assert "from 8.92 mm (0.35 in) to 10.2 mm (0.40 in)" in pile_sentence(low).text


def test_a_stack_whose_height_nothing_asks_for_is_not(demo: Callable[..., Any]) -> None:
    context = demo("lock-stair")
    assert pile_sentences(replace(context.design, needs=(), meets=()), context.joined) == ()
    assert pile_sentences(demo("quay").design, demo("quay").joined) == ()


@pytest.mark.parametrize(
    ("scraps", "thick", "limits"),
    [(20, 5.0, (97.5, 102.5)), (11, 4.7625, (50.5, 54.5)), (4, 0.7, (2.5, 3.0)), (3, 0.1, (0.25, 0.35))],
)
def test_a_pile_is_right_within_half_a_layer_as_a_rule_shows_it(
    scraps: int, thick: float, limits: tuple[float, float]
) -> None:
    """One layer more was to be cut for a whole one that lacked: no board that the gauge lets through made that happen."""
    pile = Pile("pile", scraps, thick, scraps * thick, 0.0, 99.0, likely=False)
    assert pile.limits == pytest.approx(limits)
