"""The phone copy: every step on screens of its own, every picture once, cautions where words send."""

import re
from collections.abc import Callable
from dataclasses import replace

import pytest

from publisher.brief import Inputs
from publisher.pages import Pack, Words, compose
from publisher.pages.instructions import act_titles, phone_drafts
from publisher.pages.instructions.act_cells import pictures_of
from publisher.pages.instructions.step_acts import ActSketch
from publisher.pages.model import Stroke
from publisher.pages.sheet.draft import Context
from publisher.pages.type import tidy
from tests.pages.conftest import a_context

POINT = 25.4 / 72  # mm


def copy_of(context: Context) -> Pack:
    given = (context.design, context.parts, context.joined, context.needs, context.paper, Inputs(context.design.slug))
    return compose(*given, "phone", act_titles(context))


@pytest.fixture(params=["toll-house", "lock-stair"])
def copy(demo: Callable[..., Context], request: pytest.FixtureRequest) -> Pack:
    return copy_of(demo(request.param))


def test_no_word_is_smaller_than_ten_points_and_none_is_to_be_printed(copy: Pack) -> None:
    sizes = [thing.size for page in copy.pages for thing in page.drawn if isinstance(thing, Words)]
    assert min(sizes) >= 10 * POINT
    for page in copy.pages:
        assert any(thing.text == "Not for printing" for thing in page.drawn if isinstance(thing, Words))
    assert not any(page.true_size or page.corners for page in copy.promises.pages)
    assert copy.promises.outlines == () and copy.promises.lengths == () and copy.promises.codes == ()


def test_each_picture_and_each_word_of_a_step_stands_once(copy: Pack) -> None:
    keys = [where.key for where in copy.promises.carried]
    # a tool may stand in a sketch twice, and an act of many parts takes two sketches
    once = [key for key in keys if ":scene:" not in key and not key.rpartition(":")[0].endswith(":does")]
    assert len(set(once)) == len(once)
    wanted = {one.key for one in (*copy.promises.sentences, *copy.promises.drawings)}
    assert wanted and wanted <= set(keys)
    pictures = {key for key in keys if re.search(r":act:\d+$|:picture$", key)}
    on: dict[int, int] = {}
    for where in copy.promises.carried:
        if where.key in pictures:
            on[where.page] = on.get(where.page, 0) + 1
    assert set(on.values()) == {1}  # one act a screen


def test_acts_are_pictured_as_in_the_pack(demo: Callable[..., Context]) -> None:
    context = demo("toll-house")
    shown = [thing.tag for page in copy_of(context).pages for thing in page.drawn if isinstance(thing, Stroke)]
    steps = enumerate(context.design.steps, 1)
    acts = [one for n, step in steps for one in pictures_of(context, step, n) if isinstance(one, ActSketch)]
    assert len(acts) > 8 and all(f"figure:{tidy(act.shows)}" in shown for act in acts)


def test_steps_bear_the_numbers_of_the_pack(demo: Callable[..., Context]) -> None:
    context = demo("toll-house")
    before = len(act_titles(context))
    marks = [
        title for draft in phone_drafts(replace(context, acts=act_titles(context))) for title, _, _ in draft.bookmarks
    ]
    assert [int(mark.split()[0]) for mark in marks] == list(range(before + 1, before + len(context.design.steps) + 1))


def test_words_send_to_the_screen_of_the_caution(copy: Pack) -> None:
    found = 0
    for page in copy.pages:
        words = " ".join(thing.text for thing in page.drawn if isinstance(thing, Words))
        for title, number in re.findall(r"Caution: “([^”]+)” on page (\d+)\.", words):
            there = [thing.text for thing in copy.pages[int(number) - 1].drawn if isinstance(thing, Words)]
            assert title in " ".join(there) and copy.pages[int(number) - 1].kind == "cautions"
            found += 1
    assert found > 1


def test_a_step_of_very_many_words_makes_its_screen_taller(demo: Callable[..., Context]) -> None:
    context = demo("toll-house")
    step = context.design.steps[0]
    long = replace(
        step, say=replace(step.say, pieces=("Lay it down, and look at it once more before you go on. " * 40,))
    )
    drafts = phone_drafts(replace(context, design=replace(context.design, steps=(long,))))
    (tall,) = [draft for draft in drafts if draft.key == "step:1:1"]
    assert tall.frame.height > 200.0 and tall.frame.width == 90.0
    assert {draft.frame.height for draft in drafts if draft is not tall} == {160.0}


def test_a_design_without_steps_has_none() -> None:
    assert phone_drafts(a_context()) == ()
