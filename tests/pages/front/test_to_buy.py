"""What the buyer needs: amounts follow from the design, card from the pages, tools from what is done with them."""

from collections.abc import Callable
from dataclasses import replace

from publisher.basics import Place
from publisher.design import Blank, MaterialPlan
from publisher.pages.front.to_buy import at_hand, board_words, card_words, materials_words
from publisher.pages.sheet import paper_for
from publisher.pages.sheet.draft import Context, Numbers

NUMBERS = Numbers(3, 9, (), (), (("side", 5), ("side", 6), ("rib", 6)))


def test_a_board_is_named_with_its_measured_thickness(demo: Callable[..., Context]) -> None:
    assert board_words(demo("quay")) == (
        "Bare foam board, no paper on its faces (craft foam sheet, extruded foam sheet, floor underlay), sold as 5 mm, "
        "measured 5.00 mm (0.20 in) thick.",
        "Takes board from 4.7 to 5.3 mm (0.186 to 0.208 in). "
        "Boards sold as 5 mm are 4.8 to 5.2 mm, common practice: measure yours.",
    )


def test_an_amount_is_worked_out_from_facts(demo: Callable[..., Context]) -> None:
    context = demo("lock-stair")
    place = Place("spec.yaml", 1, 1)
    dowel = MaterialPlan("dowel", None, Blank("stair.climb + 10 mm", place), place)
    changed = replace(context, design=replace(context.design, materials=(dowel,)))
    assert materials_words(changed, NUMBERS)[0] == "wooden dowel: 100.0 mm (3.94 in)"


def test_things_and_board_are_named_as_shops_of_the_edition_name_them(demo: Callable[..., Context]) -> None:
    context = demo("quay")
    there = replace(context, paper=paper_for(context.design, "letter"))
    assert "steel rule, 300 mm (12 in) or longer" in at_hand(context)
    assert "metal ruler (steel rule), 12 in (300 mm) or longer" in at_hand(there)
    assert "its paper peeled off" in board_words(there)[0]


def test_card_is_counted_by_the_pages_of_templates(demo: Callable[..., Context]) -> None:
    """Two pages; three sheets more for each page of a part that is traced often; none where templates are pasted on board."""
    context = demo("quay")
    assert card_words(context, NUMBERS) == (
        "Thin card for the templates, 0.3 to 0.5 mm (0.012 to 0.02 in) thick: 2 sheets of A4 size.",
    )
    often = tuple(replace(row, part="side", letter="A", tracings=20, sturdy=True) for row in context.needs.cut_list[:1])
    worn = replace(context, needs=replace(context.needs, cut_list=often))
    assert card_words(worn, NUMBERS)[0].endswith(
        "2 sheets of A4 size, and 6 more for two layers and a spare of what is traced often: A (20 times)."
    )
    assert card_words(replace(context, design=replace(context.design, use="paste")), NUMBERS) == ()


def test_tape_is_needed_for_tiles_and_named_once(demo: Callable[..., Context]) -> None:
    context = demo("lock-stair")  # its spec names no tape
    one = Numbers(3, 9, (), (), (("step", 5), ("plinth", 6)))
    tiled = Numbers(3, 9, (), (), (("step", 5), ("plinth", 6), ("plinth", 7)))
    assert "masking tape" not in materials_words(context, one)
    assert materials_words(context, tiled).count("masking tape") == 1
    assert not any("thin card" in line for line in materials_words(context, one))
    assert materials_words(demo("quay"), tiled).count("masking tape") == 1


def test_tools_are_those_of_the_spec_its_steps_and_the_layouts(demo: Callable[..., Context]) -> None:
    tools = at_hand(demo("lock-stair"))
    assert {"steel rule, 300 mm (12 in) or longer", "pins", "set square", "pencil, sharp and blunt"} <= set(tools)
    assert len(set(tools)) == len(tools)
    context = demo("lock-stair")
    bare = replace(
        context,
        design=replace(context.design, tools=(), steps=(), use="paste"),
        needs=replace(context.needs, layouts=()),
    )
    assert at_hand(bare) == ("craft knife with spare blades", "steel rule, 300 mm (12 in) or longer", "cutting mat")
