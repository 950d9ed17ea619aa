"""A licence whose text is ours stands once in a pack."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from publisher.design import own_licence
from publisher.pages import Words
from publisher.pages.front import caution_drafts
from publisher.pages.instructions.steps import step_drafts
from publisher.pages.sheet.draft import Context, Numbers

NUMBERS = Numbers(8, 9, (("cautions:1", 6),), (), ())


@pytest.mark.parametrize(("slug", "in_steps"), [("bridge", True), ("quay", False)])
@pytest.mark.parametrize("words", ["personal use", "CC-BY-4.0"])
def test_a_licence_of_ours_stands_once(demo: Callable[..., Context], slug: str, in_steps: bool, words: str) -> None:
    """With the cautions where they leave room, else under the last step; with every word promised."""
    made = demo(slug)
    context = replace(made, design=replace(made.design, licence=words))
    own = own_licence(words, context.design.designer)
    found = {
        name: [promise.text for draft in drafts for promise in draft.body(NUMBERS).texts]
        for name, drafts in (("steps", step_drafts(context)), ("cautions", caution_drafts(context)))
    }
    for text in (own.title, *own.text) if own is not None else ():
        assert [text in found["steps"], text in found["cautions"]] == [in_steps, not in_steps]
    assert own is not None or not any("you may" in text.lower() for texts in found.values() for text in texts)


def test_a_licence_follows_even_where_no_step_is(demo: Callable[..., Context]) -> None:
    made = demo("bridge")
    (draft,) = step_drafts(replace(made, design=replace(made.design, licence="personal use", steps=())))
    assert draft.title == "What you may do" and "What you may do: personal use" in {
        word.text for word in draft.body(NUMBERS).drawn if isinstance(word, Words)
    }
