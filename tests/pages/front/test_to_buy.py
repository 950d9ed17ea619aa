"""What the buyer needs: amounts follow from the design, card from the pages, tools from what is done with them."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from publisher.basics import CutPromise, Place
from publisher.design import Blank, MaterialPlan
from publisher.pages.front.to_buy import at_hand, board_words, card_words, materials_words
from publisher.pages.sheet import paper_for
from publisher.pages.sheet.draft import Context, Numbers
from publisher.pages.tiles import plan_true_pages

NUMBERS = Numbers(3, 9, (), (), (("side", 5), ("side", 6), ("rib", 6)))


def test_a_board_is_named_with_its_measured_thickness(demo: Callable[..., Context]) -> None:
    assert board_words(demo("quay")) == (
        "Bare foam board, no paper on its faces (extruded foam sheet, stiff floor underlay; not soft, rubbery foam), sold as 5 mm, "
        "measured 5.00 mm (0.197 in) thick.",
        "Takes board from 4.7 to 5.3 mm (0.186 to 0.208 in). "
        "Boards sold as 5 mm are usually 4.8 to 5.2 mm: measure yours.",
    )
    there = replace(demo("quay"), paper=paper_for(demo("quay").design, "letter"))
    assert (
        "Most boards sold as 3/16 in are thinner (usually 0.174 to 0.196 in (4.4 to 5.0 mm)): measure."
        in board_words(there)[1]
    )


def test_an_amount_is_worked_out_from_facts(demo: Callable[..., Context]) -> None:
    context = demo("lock-stair")
    place = Place("spec.yaml", 1, 1)
    dowel = MaterialPlan("dowel", None, Blank("stair.climb + 10 mm", place), place)
    changed = replace(context, design=replace(context.design, materials=(dowel,)))
    assert materials_words(changed)[0] == "wooden dowel: 100.0 mm (3.94 in)"


def test_things_and_board_are_named_as_shops_of_the_edition_name_them(demo: Callable[..., Context]) -> None:
    context = demo("quay")
    there = replace(context, paper=paper_for(context.design, "letter"))
    assert "steel rule, 508 mm (20 in) or longer" in at_hand(context)
    assert "metal ruler (steel rule), 20 in (508 mm) or longer" in at_hand(there)
    assert "its paper peeled off" in board_words(there)[0]


@pytest.mark.parametrize(
    ("long", "said"), [(300.0, "300 mm (12 in)"), (300.5, "420 mm (16.54 in)"), (419.0, "420 mm (16.54 in)")]
)
def test_straight_cuts_longer_than_the_rule_ask_for_one_as_long_as_the_sheet(
    long: float, said: str, demo: Callable[..., Context]
) -> None:
    context = demo("quay")
    cut = CutPromise(True, 100.0, 0.5, 0.5 + long, 2)
    sheets = tuple(replace(sheet, width=420.0, height=297.0, cuts=(cut,)) for sheet in context.needs.layouts)
    named = at_hand(replace(context, needs=replace(context.needs, layouts=sheets)))
    assert f"steel rule, {said} or longer" in named


def test_card_is_counted_by_the_pages_of_templates(demo: Callable[..., Context]) -> None:
    """Two pages; three sheets more for each page of a part that is traced often; none where templates are pasted on board."""
    context = demo("quay")
    assert card_words(context, NUMBERS) == (
        "Thin card for the templates, 0.3 to 0.5 mm (0.012 to 0.02 in) thick: 2 sheets of A4 size. A scrap of it for the fit coupon.",
    )
    often = tuple(replace(row, part="side", letter="A", tracings=20, sturdy=True) for row in context.needs.cut_list[:1])
    worn = replace(context, needs=replace(context.needs, cut_list=often))
    assert card_words(worn, NUMBERS)[0].endswith(
        "2 sheets of A4 size, and 6 more for two layers and a spare of what is traced often: A (20 times). "
        "A scrap of it for the fit coupon."
    )
    shared = (*often, replace(often[0], part="rib", letter="C", tracings=24))  # page 6 shows both
    both = card_words(replace(context, needs=replace(context.needs, cut_list=shared)), NUMBERS)[0]
    assert "and 6 more for two layers and a spare of what is traced often: A (20 times), C (24 times)." in both
    assert card_words(replace(context, design=replace(context.design, use="paste")), NUMBERS) == ()


def test_tape_is_needed_for_tiles_and_named_once(demo: Callable[..., Context]) -> None:
    whole = materials_words(demo("lock-stair"))
    assert "masking tape" not in whole and not any("thin card" in line for line in whole)
    quay = demo("quay")
    assert plan_true_pages(quay).cut
    for materials in (quay.design.materials, ()):
        named = replace(quay, design=replace(quay.design, materials=materials))
        assert materials_words(named).count("masking tape") == 1


def test_a_pack_to_paste_takes_no_card_for_templates_unless_a_step_uses_it(demo: Callable[..., Context]) -> None:
    quay = demo("quay")
    pasted = replace(quay.design, use="paste")
    assert not any("thin card" in line for line in materials_words(replace(quay, design=pasted)))
    backed = replace(pasted.steps[0], uses=("thin_card",))
    lines = materials_words(replace(quay, design=replace(pasted, steps=(backed, *pasted.steps[1:]))))
    assert "thin card for the templates" in lines


def test_a_pencil_sharp_and_blunt_is_listed_once(demo: Callable[..., Context]) -> None:
    context = demo("bridge")
    assert "blunt_pencil" in {key for step in context.design.steps for key in step.uses}
    assert [name for name in at_hand(context) if "pencil" in name] == ["pencil, sharp and blunt"]
