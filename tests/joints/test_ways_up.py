"""A step that puts parts together says which end of them is up and which face is outside; promised before any page."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from publisher.basics import Box, SentencePromise
from publisher.joints.promised_acts import InPieces
from publisher.joints.ways_up import WAYS_UP, ways_up
from publisher.pages.instructions.step_block import step_block
from publisher.pages.sheet.draft import Context


def said(context: Context, number: int, **of_sides: Callable[[str], bool]) -> str:
    """Return what the step says where sides are these, by the letters of their parts; "" where nothing."""
    joined = context.joined
    sides = tuple(
        replace(side, **{name: tell(side.letter) for name, tell in of_sides.items()}) for side in joined.sides
    )
    found = {one.key: one.text for one in ways_up(InPieces(context.design, context.parts, joined), sides)}
    return found.get(f"{WAYS_UP}{number}", "")


def changed(context: Context, number: int, **to: object) -> Context:
    """Return a context of which one step is another."""
    steps = tuple(replace(s, **to) if n == number else s for n, s in enumerate(context.design.steps, 1))
    return replace(context, design=replace(context.design, steps=steps))


def test_walls_say_their_top_and_their_outside_and_plain_ones_that_either_face_will_do(
    demo: Callable[..., Context],
) -> None:
    context = demo("bridge")
    number = next(n for n, step in enumerate(context.design.steps, 1) if step.stage == "dry_fit")
    told = said(context, number, alike=lambda letter: letter == "C", outer=lambda letter: letter != "B")
    assert "the word “top” is up on A and C." in told
    assert "The outside face of A looks outwards." in told and "Either face of C may be its outside." in told
    inner = said(context, number, alike=lambda _: False, outer=lambda _: False)
    assert inner == "Once it stands, the word “top” is up on A and C.", "inner walls look nowhere out"
    assert said(changed(context, number, stage="cut"), number) == "", "nothing is put together there"
    assert said(changed(context, number, parts=("pier_layer",)), number) == "", "a layer lies"


def test_the_sentences_stand_at_their_step_and_are_promised(demo: Callable[..., Context]) -> None:
    context = demo("bridge")
    number, built = next((n, step) for n, step in enumerate(context.design.steps, 1) if step.stage == "dry_fit")
    block = step_block(context, built, number, Box(10.0, 10.0, 190.0, 270.0), (3, 6))
    (promise,) = (one for one in context.joined.sentences if one.key == f"{WAYS_UP}{number}")
    assert promise.text == said(context, number)
    assert [where.page for where in block.carried if where.key == promise.key] == [3]


@pytest.mark.parametrize("lost", [True, False])
def test_a_page_that_says_another_way_up_or_none_is_refused(
    demo: Callable[..., Context], monkeypatch: pytest.MonkeyPatch, lost: bool
) -> None:
    """What pages take from ``joined`` may be spoilt; what is promised is worked out before."""
    from publisher.pages.instructions import step_block as maker
    from tests.proof.refused import refused_by

    right = maker.said_beside

    def wrong(context: Context, own: int) -> tuple[SentencePromise, ...]:
        kept = (one for one in right(context, own) if not (lost and one.key.startswith(WAYS_UP)))
        return tuple(replace(one, text=one.text.replace("up on A", "up on B")) for one in kept)

    monkeypatch.setattr(maker, "said_beside", wrong)
    assert "proof/sentence" in refused_by("bridge")
