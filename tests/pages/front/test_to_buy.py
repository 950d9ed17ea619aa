"""What the buyer needs: amounts follow from the design."""

from collections.abc import Callable
from dataclasses import replace

from publisher.basics import Place
from publisher.design import Blank, MaterialPlan
from publisher.pages.front.to_buy import board_lines, material_lines, tool_lines
from publisher.pages.sheet.draft import Context


def test_a_board_is_named_with_its_measured_thickness_and_its_sheets(demo: Callable[..., Context]) -> None:
    line, takes = board_lines(demo("quay"))
    assert line.startswith(
        "bare foam board, no paper on its faces, sold as 5 mm, measured 5.00 mm (0.20 in) thick: buy 1 sheet of 20 x 30 in"
    )
    assert takes == (
        "takes board from 4.7 to 5.3 mm (0.186 to 0.208 in). "
        "Boards sold as 5 mm are 4.8 to 5.2 mm, common practice: measure yours."
    )


def test_sheets_of_another_size_are_a_second_way(demo: Callable[..., Context]) -> None:
    (line,) = board_lines(demo("lock-stair"))
    assert line.endswith("buy 1 sheet of 20 x 30 in, or 2 sheets of 297 x 420 mm")


def test_an_amount_is_worked_out_from_facts(demo: Callable[..., Context]) -> None:
    context = demo("lock-stair")
    place = Place("spec.yaml", 1, 1)
    dowel = MaterialPlan("dowel", None, Blank("stair.climb + 10 mm", place), place)
    changed = replace(context, design=replace(context.design, materials=(dowel,)))
    assert material_lines(changed) == ("wooden dowel: 100.0 mm (3.94 in)",)


def test_tools_are_named_in_words(demo: Callable[..., Context]) -> None:
    assert "steel rule, 300 mm (12 in) or longer" in tool_lines(demo("quay"))
