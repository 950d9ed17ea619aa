"""Drafts: bodies add up, numbers are found."""

from collections.abc import Callable
from dataclasses import replace

from publisher.basics import Place, TextPromise
from publisher.design import Blank, Size, TextPlan
from publisher.geometry import Part
from publisher.pages.sheet.draft import Body, Context, Numbers


def test_bodies_add_up_in_order() -> None:
    one, two = Body(texts=(TextPromise(1, "a"),)), Body(texts=(TextPromise(1, "b"),))
    assert [t.text for t in (one + two).texts] == ["a", "b"]


def test_numbers_are_found() -> None:
    numbers = Numbers(3, 9, (("cover", 1), ("templates:1", 4)), (("templates", 4, 6),), (("wall", 4), ("wall", 6)))
    assert numbers.page_of("templates:1") == 4
    assert numbers.page_of("tiles:1") is None
    assert numbers.range_of("templates") == (4, 6)
    assert numbers.range_of("tiles") is None
    assert numbers.pages_of_part("wall") == (4, 6)
    assert numbers.pages_of_part("roof") == ()


def test_numbers_know_whether_a_page_named_another() -> None:
    numbers = Numbers(3, 9, (("cover", 1),), (("templates", 4, 6),), (("wall", 4), ("wall", 6)), (("Cut", 4, 6),))
    assert not numbers.names_others
    assert numbers.print_plan() == (("Cut", 4, 6),)
    assert numbers.names_others
    bare = numbers.unnumbered()
    assert not bare.names_others
    assert (bare.page_of("cover"), bare.range_of("templates"), bare.pages_of_part("wall")) == (0, (0, 0), (0, 0))
    assert bare.print_plan() == (("Cut", 0, 0),)


def test_a_context_knows_its_parts(make_context: Callable[..., Context]) -> None:
    context = make_context()
    part = context.part("wall")
    assert part is not None
    assert context.copies(part) == 2
    assert context.part("roof") is None
    assert context.say(None) == ""
    assert context.say(context.design.summary) == "A house."


def test_a_page_says_the_unit_of_its_edition_first(make_context: Callable[..., Context]) -> None:
    text = TextPlan(("It is ", Blank("wide", Place("")), " wide."), Place(""))
    sizes = (Size("wide", 92.0, "length", "92 mm", Place("")),)
    for paper, said in (("a4", "92 mm (3 5/8 in)"), ("letter", "3 5/8 in (92 mm)")):
        context = make_context(paper=paper)
        assert replace(context, design=replace(context.design, sizes=sizes)).say(text) == f"It is {said} wide."


def test_a_step_takes_a_part_or_its_pieces(
    make_context: Callable[..., Context], make_part: Callable[..., Part]
) -> None:
    """A part that is split is not cut whole: its pieces and plates are what the buyer takes in hand."""
    parts = (
        make_part("rib", "C"),
        make_part("side_1", "A1", whole="side"),
        make_part("side_plate_1", "A2", whole="side"),
    )
    context = make_context(parts=parts)
    assert [p.id for p in context.to_take("rib")] == ["rib"]
    assert [p.id for p in context.to_take("side")] == ["side_1", "side_plate_1"]
    assert context.to_take("roof") == ()


def test_a_step_takes_the_folded_piece_for_each_of_its_parts(
    make_context: Callable[..., Context], make_part: Callable[..., Part]
) -> None:
    piece = replace(make_part(), id="front_folded", folded=("front", "side"))
    context = make_context(parts=(piece,))
    assert context.to_take("front") == context.to_take("side") == (piece,)
    assert context.to_take("roof") == ()
