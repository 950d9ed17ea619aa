"""A step that puts parts together says which end of them is up and which face is outside."""

from collections.abc import Callable
from dataclasses import replace

from publisher.basics import Box
from publisher.pages.instructions.step_block import step_block
from publisher.pages.instructions.ways_up import ways_up
from publisher.pages.sheet.draft import Context


def test_walls_say_their_top_and_their_outside_and_plain_ones_that_either_face_will_do(
    demo: Callable[..., Context],
) -> None:
    context = demo("bridge")
    built = next(step for step in context.design.steps if step.stage == "dry_fit")
    sides = tuple(replace(side, alike=side.letter == "C", outer=side.letter != "B") for side in context.joined.sides)
    said = ways_up(replace(context, joined=replace(context.joined, sides=sides)), built)
    assert "the word “top” is up on A and C." in said
    assert "The outside face of A looks outwards." in said and "Either face of C may be its outside." in said
    inner = tuple(replace(side, alike=False, outer=False) for side in sides)
    said = ways_up(replace(context, joined=replace(context.joined, sides=inner)), built)
    assert said == "Once it stands, the word “top” is up on A and C.", "inner walls look nowhere out"
    assert ways_up(context, replace(built, stage="cut")) == "", "nothing is put together there"
    assert ways_up(context, replace(built, parts=("pier_layer",))) == "", "a layer lies"


def test_the_sentences_stand_at_their_step_and_are_promised(demo: Callable[..., Context]) -> None:
    context = demo("bridge")
    number, built = next((n, step) for n, step in enumerate(context.design.steps, 1) if step.stage == "dry_fit")
    block = step_block(context, built, number, Box(10.0, 10.0, 190.0, 270.0), (3, 6))
    assert [(text.page, text.text) for text in block.texts] == [(3, ways_up(context, built))]
