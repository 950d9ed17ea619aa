"""Acts of the trade: those that a pack asks for, on pages of any size."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from publisher.geometry import Part
from publisher.pages.instructions import trade_acts as trade_act_module
from publisher.pages.instructions.trade_acts import remedies, trade_act_drafts, trade_acts
from publisher.pages.model import Fill, Stroke, Words
from publisher.pages.sheet import ink_box
from publisher.pages.sheet.draft import Context, Numbers

NUMBERS = Numbers(5, 9, (), (), ())


def test_only_what_the_pack_asks_for_is_told(demo: Callable[..., Context]) -> None:
    told = {slug: [act.title for act in trade_acts(demo(slug))] for slug in ("toll-house", "lock-stair", "bridge")}
    assert told["toll-house"][:3] == ["Pencil upright", "Lift the card first", "Blade upright"]
    assert "Push tabs home" in told["toll-house"] and "Push tabs home" not in told["lock-stair"]
    assert "Press the layers" in told["lock-stair"] and "Press the layers" not in told["toll-house"]
    assert "Cover, slit and bend" in told["bridge"] and "Bevel by its guide" in told["toll-house"]
    house = demo("toll-house")
    assert "A slot you cut is too wide" in dict(remedies(house)) and "A slot you cut is too wide" not in dict(
        remedies(demo("lock-stair"))
    )
    pasted = replace(house, design=replace(house.design, use="paste", tools=("file",)))
    assert [act.title for act in trade_acts(pasted)][:1] == ["Blade upright"]
    assert "Sand along a block" in [act.title for act in trade_acts(pasted)]
    board = replace(house.design.boards[0], peeled=True)
    assert trade_acts(replace(house, design=replace(house.design, boards=(board,))))[0].title == "Peel the paper"


@pytest.mark.parametrize("paper", ["a5", "a4", "letter", "a3"])
def test_pages_hold_all_of_it(paper: str, demo: Callable[..., Context]) -> None:
    context = demo("toll-house", paper)
    drafts = trade_act_drafts(context)
    assert len(drafts) == (1 if paper != "a5" else len(drafts))
    things = [(draft, thing) for draft in drafts for thing in draft.body(NUMBERS).drawn]
    boxes = [(draft.frame.text, ink_box(context.type.faces, thing)) for draft, thing in things]
    assert all(box.beyond(text.grown(0.5)) <= 0.0 for text, box in boxes if box)
    heads = [thing.text for _, thing in things if isinstance(thing, Words) and thing.tag == "h2"]
    assert heads == [*(act.title for act in trade_acts(context)), "If it went wrong"]
    shown = {thing.tag for _, thing in things if isinstance(thing, Stroke | Fill) and thing.tag.startswith("figure")}
    assert shown == {f"figure:{act.shows}" for act in trade_acts(context)}


@pytest.mark.parametrize(
    ("what", "slits", "title", "first"),
    [
        ("none", 12, "Slit and bend", "Cut each slit"),
        ("paper", 12, "Cover, slit and bend", "Glue paper over the whole outside of D. Cut"),
        ("tape", 0, "Cover, then bend", "Lay tape, strip beside strip, over the whole outside of D. Let it dry"),
    ],
)
def test_how_a_piece_is_bent_is_told_as_its_shape_asks_and_promised(
    what: str, slits: int, title: str, first: str, demo: Callable[..., Context]
) -> None:
    context = demo("bridge")
    parts = tuple(
        part if part.bending is None else replace(part, bending=replace(part.bending, covered=what, slits=slits))
        for part in context.parts
    )
    changed = replace(context, parts=parts)
    (found,) = [act for act in trade_acts(changed) if "bend" in act.title.casefold()]
    assert found.title == title and found.say.startswith(first)
    assert found.say in [text.text for draft in trade_act_drafts(changed) for text in draft.body(NUMBERS).texts]


def test_a_design_without_steps_has_none(make_context: Callable[..., Context], make_part: Callable[..., Part]) -> None:
    assert trade_act_drafts(make_context(parts=(make_part(),))) == ()


@pytest.mark.parametrize("way", [1.0, -1.0])
def test_a_guide_stands_on_what_the_blade_does_not_cut_and_is_made_where_no_page_has_one(
    way: float, demo: Callable[..., Context]
) -> None:
    house = demo("toll-house")
    parts = tuple(
        replace(part, edges=tuple(replace(edge, bevel=way * edge.bevel) for edge in part.edges)) for part in house.parts
    )
    (act,) = [act for act in trade_acts(replace(house, parts=parts)) if act.title == "Bevel by its guide"]
    assert act.say.startswith(
        f"Stand the guide on {'the waste or a scrap' if way > 0.0 else 'what is kept'} at the pencil line, fingers"
    )
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(trade_act_module, "guided", lambda *_: iter((True, False)))
        (bare,) = [act for act in trade_acts(replace(house, parts=parts)) if act.title == "Bevel by its guide"]
    assert bare.say == f"{trade_act_module.NO_GUIDE}{act.say}"
