"""Instructions: every step once, whole, with its picture, what is needed and its cautions."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from publisher.pages import Stroke, Words
from publisher.pages.instructions import steps
from publisher.pages.instructions.pack_acts import pack_acts
from publisher.pages.instructions.steps import step_drafts
from publisher.pages.sheet import MOST_ON_A4, operators
from publisher.pages.sheet.draft import Context, Numbers

NUMBERS = Numbers(8, 9, (("cautions:1", 6),), (), ())


def said(context: Context) -> list[str]:
    return [w.text for d in step_drafts(context) for w in d.body(NUMBERS).drawn if isinstance(w, Words)]


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_every_step_stands_on_one_page_inside_the_text_column(demo: Callable[..., Context], paper: str) -> None:
    context = demo("toll-house", paper)
    drafts = step_drafts(context)
    marks = [title for d in drafts for title, _, _ in d.bookmarks]
    acts = len(pack_acts(context, None))
    assert [m.split()[0] for m in marks] == [str(k) for k in range(1, acts + len(context.design.steps) + 1)]
    for draft in drafts:
        for thing in draft.body(NUMBERS).drawn:
            if isinstance(thing, Words):
                assert draft.frame.text.bottom - 0.5 <= thing.y <= draft.frame.text.top


def test_placeholders_are_filled_in_both_units(demo: Callable[..., Context]) -> None:
    text = " ".join(said(demo("quay")))
    assert "100 mm (3 15/16 in)" in text
    assert "{" not in text


def test_steps_send_to_the_page_of_the_cautions_and_do_not_say_them_again(demo: Callable[..., Context]) -> None:
    text = " ".join(said(demo("toll-house")))
    assert "Fit a sharp blade" not in text
    assert "Caution: read “Knife” on page 6." in text


def test_cutting_steps_name_the_knife_and_short_names_stand_in_lists(demo: Callable[..., Context]) -> None:
    context = demo("toll-house")
    step = next(n for n, s in enumerate(context.design.steps, 1) if s.stage == "cut" and not s.uses)
    lists = [w for w in said(context) if "craft knife, steel rule, cutting mat" in w]
    assert step and lists
    assert not [w for w in said(context) if "spare blades" in w]


def test_parts_are_named_with_letter_and_count(demo: Callable[..., Context]) -> None:
    text = said(demo("toll-house"))
    assert "You need now" in text
    assert {"Gable wall", "2 ×"} <= set(text)
    assert "A" in text


def test_the_plan_of_a_layer_is_drawn_at_its_step(demo: Callable[..., Context]) -> None:
    context = demo("lock-stair")
    assert context.joined.drawing("plan:stair:3") is not None
    styles = {s.style.name for d in step_drafts(context) for s in d.body(NUMBERS).drawn if isinstance(s, Stroke)}
    assert {"picture_outline", "picture_cue"} <= styles


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize("slug", ["island", "bridge", "lock-stair"])
def test_no_page_has_so_many_lines_that_promised_pictures_are_thinned(
    demo: Callable[..., Context], slug: str, paper: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The hollow island was refused: its layers with their hatches lost lines that were promised."""
    context, pages = demo(slug, paper), []
    for most in (MOST_ON_A4, 2200):
        monkeypatch.setattr(steps, "MOST_ON_A4", most)
        made = steps.step_drafts(replace(context))
        pages.append(len(made))
        several = [draft for draft in made if len(draft.bookmarks) > 1]
        for draft in several:
            assert sum(map(operators, draft.body(NUMBERS).drawn)) <= most - steps.AROUND_STEPS, draft.title
    assert pages[1] > pages[0], "fewer lines a page, more pages"
