"""The pack's own acts: what follows from paper, variant and board, and stands before the steps of the design."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from publisher.basics import Box
from publisher.basics.wording import say_length
from publisher.material import MOST_TRACINGS
from publisher.pages.instructions.pack_acts import Act, pack_acts
from publisher.pages.instructions.step_block import acts_block
from publisher.pages.instructions.steps import step_drafts
from publisher.pages.sheet.draft import Context, Numbers, TruePage
from publisher.pages.tiles import plan_true_pages
from publisher.proof.checks import copies_said
from tests.proof.refused import refused_by

NUMBERS = Numbers(
    9, 10, (("cautions:1", 4),), (("cut_list", 3, 3),), (("side", 5), ("side", 6), ("deck", 7)), true=(2, 5, 6, 7),
    shown=tuple(TruePage(page, 210.0, 297.0, (), (), (), corner) for page, corner in ((2, 0.0), (5, 30.0), (6, 50.0), (7, 0.0))),
)  # fmt: skip


def act(context: Context, name: str, numbers: Numbers | None = NUMBERS) -> Act | None:
    return next((one for one in pack_acts(context, numbers) if one.key == f"act:{name}"), None)


def test_the_square_to_measure_is_the_largest_that_the_pages_have(demo: Callable[..., Context]) -> None:
    small = replace(NUMBERS, shown=NUMBERS.shown[:2])
    for numbers, said in ((NUMBERS, "the 50 mm square"), (small, "the 30 mm square"), (replace(NUMBERS, shown=()), "")):
        found = act(demo("quay"), "card", numbers)
        assert found is not None
        assert said in found.check if said else found.check == ""


def test_tiles_are_taped_where_the_paper_asks_for_it_and_nowhere_else(demo: Callable[..., Context]) -> None:
    context = demo("quay")
    found = act(context, "tape")
    assert found is not None and "A: pages 5-6; B: page 7." in found.say
    for one in plan_true_pages(context).cut:
        assert f"{one.name} measures {one.taped('mm')}" in found.check
    boxes = [Box(*one.laid.bounds) for one in plan_true_pages(context).cut]
    said = [float(found.check.split(word)[0].split()[-1]) for word in (" mm (0.09 in) along", " mm (0.01 in) along")]
    allowed = min(1.0 - context.joined.budget.least, context.joined.budget.most - 1.0, 0.005)
    for off, longer in zip(said, (max, min), strict=True):
        side = min(longer(box.width, box.height) for box in boxes)
        assert side * allowed - 0.1 <= off <= side * allowed, "as much as the print may be off"
    assert act(demo("bridge"), "tape") is not None
    assert act(demo("bridge", "a3"), "tape") is None


def test_the_pages_to_print_are_those_that_must_be_true_less_the_one_that_was_measured(
    demo: Callable[..., Context],
) -> None:
    found = act(demo("quay"), "print")
    assert found is not None and "print pages 5-7 the same way" in found.say
    assert found.check == "both readings lie between 99.5 and 100.5 mm (3.92 and 3.95 in)."


def test_where_the_print_check_is_all_that_prints_true_nothing_is_printed_after_it(
    demo: Callable[..., Context],
) -> None:
    found = act(demo("quay"), "print", replace(NUMBERS, true=(2,)))
    assert found is not None and found.say.endswith("measure its square across and down.")
    assert found.sketch is not None and "others" not in found.sketch.shows


@pytest.mark.parametrize(
    ("least", "most", "which", "must"),
    [
        (0.995, 1.005, "its outer square (4 in) or its inner one (100 mm)", "4 in, less than 1/64 in more or less, or both of the"),
        (0.9966, 1.001, "its inner square", "of the inner square (100 mm) lie between 3.93 and 3.94 in (99.7 and 100.1 mm)."),
    ],
)  # fmt: skip
def test_where_the_page_has_two_squares_each_has_its_limits(
    demo: Callable[..., Context], least: float, most: float, which: str, must: str
) -> None:
    context = demo("bridge", "letter")
    budget = replace(context.joined.budget, least=least, most=most)
    found = act(replace(context, joined=replace(context.joined, budget=budget)), "print")
    assert found is not None and which in found.say and must in found.check


def test_a_stack_that_must_meet_others_is_tried_as_a_pile_of_its_own_layers(demo: Callable[..., Context]) -> None:
    context = demo("lock-stair")
    found = act(context, "board")
    height = context.joined.fact("stair.height")
    layers = next(len(layers) for name, layers in context.joined.layers if name == "stair")
    assert height is not None and found is not None
    low, high = (say_length(height.value + off, first="mm") for off in (-2.5, 2.5))  # half of a layer
    assert f"{layers} scraps are between {low} and {high} high" in found.check
    toll = act(demo("toll-house"), "board")
    assert toll is not None and toll.check == "the board is from 4.7 to 5.3 mm (0.186 to 0.208 in) thick."
    assert "slot of part" in toll.say  # what fails first with any other


def test_a_template_that_is_traced_often_wants_a_spare_and_others_do_not(demo: Callable[..., Context]) -> None:
    context = demo("lock-stair")
    often = [row for row in context.needs.cut_list if row.tracings > MOST_TRACINGS]
    found, other = act(context, "card"), act(demo("toll-house"), "card")
    assert often and found is not None and f"{often[0].letter} ({often[0].tracings} times)" in found.say
    assert other is not None and "spare" not in other.say and "3 templates" in other.say
    assert (
        "49.75 and 50.25 mm (1.959 and 1.978 in)" in other.check
    )  # half of 99.5 and 100.5, as the print check says them


def test_what_is_pasted_has_no_cards(demo: Callable[..., Context]) -> None:
    context = demo("toll-house")
    pasted = replace(context, design=replace(context.design, use="paste"))
    assert act(pasted, "card") is None and act(context, "card") is not None


def test_all_pieces_are_counted_before_the_first_is_cut(demo: Callable[..., Context]) -> None:
    context = demo("quay")
    found = act(context, "mark")
    assert found is not None and "7 pieces (2 × A, 1 × B and 4 × C)" in found.check and "page 3 shows" in found.say


def test_a_design_without_steps_has_no_acts_either(demo: Callable[..., Context]) -> None:
    context = demo("toll-house")
    assert step_drafts(replace(context, design=replace(context.design, steps=(), licence=None))) == ()


@pytest.mark.parametrize(("width", "columns"), [(180.0, 2), (120.0, 1)])
def test_acts_stand_side_by_side_where_there_is_room(demo: Callable[..., Context], width: float, columns: int) -> None:
    context = demo("quay")
    acts = pack_acts(context, NUMBERS)[:2]  # of one row
    block = acts_block(context, acts, 1, Box(10.0, 10.0, 10.0 + width, 260.0), (9, 4))
    titles = [one for one in block.carried if one.key.endswith(":title")]
    assert len({round(one.box.left, 3) for one in titles}) == columns
    assert [one.key for one in titles] == [f"{one.key}:title" for one in acts]
    assert {text.text for text in block.texts} >= {one.check for one in acts}


def test_one_of_each_is_said_of_templates_alone(monkeypatch: pytest.MonkeyPatch) -> None:
    """“1 × A” beside the cards stands for the one print; anywhere else it would be a number that nobody worked out."""
    monkeypatch.setattr(copies_said, "OF_TEMPLATES", ("elsewhere:",))
    assert refused_by("toll-house") == {"proof/copies-said"}


def test_prints_that_are_pasted_are_cut_apart_closer_than_pieces_lie(demo: Callable[..., Context]) -> None:
    """Nobody said so: paper left round a print lay over the cut line of the next."""
    traced = demo("toll-house")
    pasted = replace(traced, design=replace(traced.design, use="paste"))
    gap = min(board.knife_gap for board in traced.design.boards)
    found, other = act(pasted, "mark"), act(traced, "mark")
    assert found is not None and other is not None and "Cut the prints apart" not in other.say
    assert f"by less than half of the {gap:g} mm" in found.say and "Lay them on the board as page 3 shows." in found.say
    close = replace(pasted.design, boards=tuple(replace(board, knife_gap=0.0) for board in pasted.design.boards))
    found = act(replace(pasted, design=close), "mark")
    assert found is not None and "Cut the prints apart along their cut lines." in found.say


def test_who_takes_a_knife_is_sent_to_its_caution(demo: Callable[..., Context]) -> None:
    """A strip of board, the templates and the coupon are cut."""
    for slug in ("toll-house", "lock-stair"):
        cuts = {act.key for act in pack_acts(demo(slug), None) if "craft_knife" in act.uses}
        assert cuts == {"act:board", "act:card", "act:mark"}, slug


def test_the_straight_cuts_of_a_layout_have_their_turn(demo: Callable[..., Context]) -> None:
    bridge = demo("bridge")
    whole = replace(bridge.needs, layouts=tuple(replace(one, cuts=()) for one in bridge.needs.layouts))
    for context, said in ((bridge, True), (replace(bridge, needs=whole), False)):
        (mark,) = [act for act in pack_acts(context, None) if act.key == "act:mark"]
        assert ("Make the straight cuts there once all is marked out" in mark.say) is said
    assert "2 × A" in mark.check and "traced in turn" in mark.check
