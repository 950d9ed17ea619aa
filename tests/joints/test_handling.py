"""What the cover says of a hand: only of what a finger breaks, and rounded down."""

from collections.abc import Callable
from dataclasses import replace

from publisher.design import Fact
from publisher.joints import handling_sentences
from publisher.pages import Words
from publisher.pages.front.cover import cover_drafts
from publisher.pages.sheet.draft import Context, Numbers


def with_facts(context: Context, *facts: Fact) -> Context:
    return replace(context, joined=replace(context.joined, facts=facts))


def handling_lines(context: Context) -> tuple[str, ...]:
    return tuple(one.text for one in handling_sentences(context.joined))


def test_the_weakest_step_and_deck_are_said_rounded_down(demo: Callable[..., Context]) -> None:
    facts = (
        Fact("stair.step_carries", 0.496, "force"),
        Fact("tower.step_carries", 3.0, "force"),
        Fact("box.deck_carries", 4.89, "force"),
    )
    assert handling_lines(with_facts(demo("lock-stair"), *facts)) == (
        "Lift it by its foot: a step carries about 50 g at its outer edge, and a finger presses with about 500 g.",
        "Lift it by its foot: the deck carries about 490 g at its weakest place, and a finger presses with about 500 g.",
    )


def test_what_bears_a_finger_is_not_spoken_of(demo: Callable[..., Context]) -> None:
    assert handling_lines(with_facts(demo("lock-stair"), Fact("stair.step_carries", 5.0, "force"))) == ()
    assert handling_lines(demo("island")) == ()


def test_a_deck_of_unknown_strength_is_said_not_to_be_judged(demo: Callable[..., Context]) -> None:
    unknown, known = Fact("box.deck_span", 90.0, "length"), Fact("box.deck_carries", 6.0, "force")
    assert handling_lines(with_facts(demo("lock-stair"), unknown)) == (
        "What a deck bears was not judged: no bending strength of its board was given.",
    )
    assert handling_lines(with_facts(demo("lock-stair"), unknown, known)) == ()


def test_the_cover_promises_what_it_says(demo: Callable[..., Context]) -> None:
    context = demo("lock-stair")
    (line,) = handling_lines(context)
    body = cover_drafts(context)[0].body(Numbers(1, 9, (), (), (), ()))
    said = " ".join(w.text for w in body.drawn if isinstance(w, Words))
    assert line in said
    assert line in {promise.text for promise in body.texts}
    assert "cover:handling:step_carries" in {where.key for where in body.carried}
