"""The caution page names what the pack's own tools and materials call for."""

from collections.abc import Callable
from dataclasses import replace

from publisher.pages import Words
from publisher.pages.cautions import caution_drafts
from publisher.pages.draft import Context, Numbers
from publisher.pages.words import material_words, tool_words

NUMBERS = Numbers(6, 9, (), (), ())


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
    assert len(titles(replace(context, design=design))) == 11
    for draft in drafts:
        for thing in draft.body(NUMBERS).drawn:
            if isinstance(thing, Words):
                assert thing.y >= draft.frame.text.bottom - 0.5
