"""The caution page names what the pack's own tools and materials call for."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from publisher.joints import Drawing, DrawingLabel
from publisher.pages import Words
from publisher.pages.front.cautions import caution_drafts, cautions_before
from publisher.pages.sheet import cautions_for
from publisher.pages.sheet.caution_words import material_words, tool_words
from publisher.pages.sheet.draft import Context, Numbers
from publisher.pages.sheet.saying import tongue_of
from publisher.pages.type import BODY, HEADING, SMALL, Setter

NUMBERS = Numbers(6, 9, (), (), ())
LICENCE = "What you may do: personal use"
SECTIONS = {"How to use a template", "How to cut a bevel", "Lines and what to do along them"}


def titles(context: Context) -> list[str]:
    return [
        w.text for d in caution_drafts(context) for w in d.body(NUMBERS).drawn if isinstance(w, Words) and w.tag == "h2"
    ]


def test_only_what_is_listed_brings_its_caution(demo: Callable[..., Context]) -> None:
    listed = titles(demo("toll-house"))
    assert "Knife" in listed
    assert "Hot wire" not in listed
    assert listed[0] == "Makers and rules come first"


def test_all_cautions_together_run_on_and_stay_inside_the_page(demo: Callable[..., Context]) -> None:
    context = demo("toll-house", "a5")
    design = replace(context.design, tools=tuple(t.key for t in (*tool_words(), *material_words())))
    drafts = caution_drafts(replace(context, design=design))
    assert len(set(titles(replace(context, design=design))) - SECTIONS - {LICENCE}) == 13
    for draft in drafts:
        for thing in draft.body(NUMBERS).drawn:
            if isinstance(thing, Words):
                assert thing.y >= draft.frame.text.bottom - 0.5


@pytest.mark.parametrize(("width", "across"), [(134.0, 1), (210.0, 2)])
def test_titles_stand_beside_each_other_only_where_they_are_whole(
    width: float, across: int, demo: Callable[..., Context]
) -> None:
    context = demo("toll-house", "a5")
    narrow = replace(context, paper=replace(context.paper, width=width))
    draft = caution_drafts(narrow)[0]
    heads = [w for w in draft.body(NUMBERS).drawn if isinstance(w, Words) and w.tag == "h2" and w.text not in SECTIONS]
    assert len({w.x for w in heads}) == across
    beside = min((w.x for w in heads if w.x > heads[0].x), default=draft.frame.text.right)
    assert all(w.x > heads[0].x or w.x + narrow.type.width(w.text, HEADING) < beside for w in heads)


def said(context: Context) -> str:
    return " ".join(w.text for d in caution_drafts(context) for w in d.body(NUMBERS).drawn if isinstance(w, Words))


def test_the_page_says_how_the_packs_own_templates_are_used(demo: Callable[..., Context]) -> None:
    house, stair, quay = demo("toll-house"), demo("lock-stair"), demo("quay")
    assert set(titles(house)) >= SECTIONS
    assert "How to cut a bevel" not in titles(stair)
    assert "outside the card" in said(stair)
    assert "0.4 mm (0.016 in)" in said(house)
    assert "copy the word “top”" in said(house)
    assert "copy the word “top”" not in said(stair)
    # only packs with tiles have a line to trim along
    assert "cut the paper of a tile off" in said(quay)
    assert "cut the paper of a tile off" not in said(house)


def test_a_pack_to_paste_has_no_pencil_to_explain(demo: Callable[..., Context]) -> None:
    context = demo("toll-house")
    paste = replace(context, design=replace(context.design, use="paste"))
    assert "How to use a template" not in titles(paste)


@pytest.mark.parametrize("language", ["en", "de"])
def test_each_caution_is_sent_for_to_the_page_that_shows_it(demo: Callable[..., Context], language: str) -> None:
    context = demo("toll-house", "a5")
    tools = tuple(t.key for t in (*tool_words(), *material_words()))
    design = replace(context.design, tools=tools, language=language)
    setter = Setter(context.type.faces, tongue_of(design))
    context = replace(context, design=design, type=setter)
    drafts = caution_drafts(context)
    assert len(drafts) > 2
    pages = set()
    for caution in cautions_for(tools):
        pages.add(page := cautions_before(context, caution.title))
        said = [thing.text for thing in drafts[page].body(NUMBERS).drawn if isinstance(thing, Words)]
        assert context.type.say(caution.title) in said, caution.title
    assert len(pages) > 1


def in_german(context: Context) -> Context:
    design = replace(context.design, language="de")
    return replace(context, design=design, type=Setter(context.type.faces, tongue_of(design)))


@pytest.mark.parametrize(
    ("few", "paper", "size", "count"),
    [(True, "a4", BODY.size, 1), (False, "a4", SMALL.size, 1), (False, "letter", BODY.size, 2)],
    ids=["room enough", "saves a page", "saves none"],
)
def test_what_is_said_beside_sketches_is_set_smaller_only_where_that_saves_a_page(
    few: bool, paper: str, size: float, count: int, demo: Callable[..., Context]
) -> None:
    """And no sentence is left out, and none stands below the page."""
    context = in_german(demo("toll-house", paper))
    steps = tuple(replace(step, uses=()) for step in context.design.steps)
    bare = replace(context, design=replace(context.design, tools=(), materials=(), steps=steps))
    drafts = caution_drafts(bare if few else context)
    items = [w for d in drafts for w in d.body(NUMBERS).drawn if isinstance(w, Words) and w.tag == "lbl"]
    assert (len(drafts), {w.size for w in items}) == (count, {size})
    assert [w.text for w in items] == ["1", "2", "3", "1", "2"]
    low = min(w.y for d in drafts for w in d.body(NUMBERS).drawn if isinstance(w, Words))
    assert low >= drafts[0].frame.text.bottom - 0.5


def test_of_the_signs_in_pictures_those_are_explained_that_this_pack_has(demo: Callable[..., Context]) -> None:
    context = demo("toll-house")
    pictures = context.joined.drawings
    bare = tuple(
        replace(d, lines=tuple(one for one in d.lines if one.weight == "outline"), labels=()) for d in pictures
    )
    topped = (replace(bare[0], labels=(DrawingLabel("top", (1.0, 1.0)),)), *bare[1:])
    behind = (replace(bare[0], lines=(replace(pictures[0].lines[0], weight="behind"),)), *bare[1:])
    plain = tuple(replace(plan, surface=None) for plan in context.design.parts)

    def said(drawn: tuple[Drawing, ...], **design: object) -> str:
        changed = replace(
            context, design=replace(context.design, **design), joined=replace(context.joined, drawings=drawn)
        )
        return " ".join(w.text for d in caution_drafts(changed) for w in d.body(NUMBERS).drawn if isinstance(w, Words))

    for drawn, told in (
        (pictures, "part and its pattern on the"), (topped, "“top” is at the upper end"), (behind, "on its face that looks away"),
    ):  # fmt: skip
        assert told in said(drawn)
    assert not any(
        word in said(bare) for word in ("short strokes", "upper end", "looks away")
    ) and "hatched board is waste" in said(bare)
    assert "hatched board" not in said(bare, steps=())
    assert "short strokes are on the inside of a part." in said(pictures, parts=plain)
