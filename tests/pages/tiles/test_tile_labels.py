"""The words on tiles: one carries all that the piece must not lose, the others letter and name."""

from collections.abc import Callable
from dataclasses import replace

from publisher.geometry import Part
from publisher.pages.sheet.draft import Context
from publisher.pages.templates.template_labels import samples
from publisher.pages.tiles.tile_labels import labelled, said_of, sides_said, tile_label
from publisher.pages.tiles.tile_plan import tiling


def test_one_tile_says_all_and_the_other_its_name(
    make_context: Callable[..., Context], make_part: Callable[..., Part]
) -> None:
    part = make_part(width=480, height=100)
    context = make_context(parts=(part,))
    plan = tiling(context, samples(context, part)[0])
    first, second = (
        tile_label(context, plan, cell, [], cell is labelled(context, plan)) for cell in plan.cutting.cells
    )
    assert first is not None and second is not None
    assert (first.label.form, second.label.form) == ("whole", "named")


def test_sides_are_said_in_words_with_the_top_as_the_part_lies(
    make_context: Callable[..., Context], make_part: Callable[..., Part]
) -> None:
    part = make_part(width=480, height=100)
    context = make_context(parts=(part,))
    said = replace(said_of(context, tiling(context, samples(context, part)[0])), top=True, face="the outside face")
    assert sides_said(said, 0.0).startswith("Part A, cut\u00a02. THIS SIDE UP: the outside face.")
    assert sides_said(said, 0.0).endswith("Its top is at the upper side of this page.")
    assert sides_said(said, 90.0).endswith("Its top is at the left of this page.")


def test_a_part_with_either_side_up_is_said_without_a_side(
    make_context: Callable[..., Context], make_part: Callable[..., Part]
) -> None:
    part = make_part(width=480, height=100)
    context = make_context(parts=(part,))
    said = replace(said_of(context, tiling(context, samples(context, part)[0])), sides=(), face="", top=False)
    assert sides_said(said, 0.0) == f"Part A, {said.cut}."
