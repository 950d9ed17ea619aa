"""Nested templates: which layers share a card, and that each keeps its words on its own ring."""

from collections.abc import Callable
from dataclasses import replace
from itertools import pairwise

import pytest
import shapely

from publisher.basics import Pose
from publisher.geometry import Part, polygon
from publisher.joints import StackLayer
from publisher.pages.sheet.draft import Context, Numbers
from publisher.pages.templates.nests import Nest, nest_note, nests_of, says_enough
from publisher.pages.templates.template_labels import Labels
from publisher.pages.templates.template_plan import Planner
from publisher.pages.tiles.true_pages import plan_true_pages, true_page_drafts


def hill(
    make_context: Callable[..., Context], make_part: Callable[..., Part], *, shifted: float = 0.0, ring: float = 35.0
) -> Context:
    """A stack of three square layers, each set in by half of ``ring``; the second one shifted."""
    sides = (150.0, 150.0 - ring, 150.0 - 2 * ring)
    parts = []
    for letter, side in zip("ABC", sides, strict=True):
        part = make_part(f"layer_{letter}", letter, width=side, height=side, count=1)
        moved = tuple((x - side / 2, y - side / 2) for x, y in part.template.outer.points)
        region = replace(part.template, outer=type(part.template.outer)(_lines(moved), True))
        parts.append(replace(part, outline=region, template=region))
    context = make_context(parts=tuple(parts))
    poses = (Pose(), Pose(x=shifted), Pose(x=shifted))
    layers = tuple(
        StackLayer(part.id, pose, 5.0 * n, 5.0, "", n + 1)
        for n, (part, pose) in enumerate(zip(parts, poses, strict=True))
    )
    return replace(context, joined=replace(context.joined, layers=(("hill", layers),)))


def _lines(points: tuple[tuple[float, float], ...]) -> tuple[object, ...]:
    from publisher.basics import polyline

    return polyline(points, True).edges


def letters(nests: tuple[Nest, ...]) -> list[str]:
    return ["".join(sample.part.letter for sample in nest.samples) for nest in nests]


@pytest.mark.parametrize(("shifted", "ring", "expected"), [(0.0, 35.0, ["ABC"]), (5.0, 35.0, ["BC"]), (0.0, 12.0, [])])
def test_layers_that_lie_over_each_other_with_a_ring_between_are_nested(
    make_context: Callable[..., Context],
    make_part: Callable[..., Part],
    shifted: float,
    ring: float,
    expected: list[str],
) -> None:
    context = hill(make_context, make_part, shifted=shifted, ring=ring)
    assert letters(nests_of(context, context.parts)) == expected


def test_what_is_pasted_is_never_nested(
    make_context: Callable[..., Context], make_part: Callable[..., Part], make_design: Callable[..., object]
) -> None:
    context = hill(make_context, make_part)
    pasted = replace(context, design=make_design(use="paste"))
    assert nests_of(pasted, pasted.parts) == ()


def test_nested_templates_are_drawn_as_they_are_and_keep_their_words_on_their_rings(
    make_context: Callable[..., Context], make_part: Callable[..., Part]
) -> None:
    context = hill(make_context, make_part)
    (nest,) = nests_of(context, context.parts)
    assert says_enough(Labels(context), nest)
    pages, left = Planner(context, nests=(nest,)).plan((nest.samples[0],))
    (page,), (note,) = pages, pages[0].notes
    assert not left and note.nest is nest
    for outer, inner in pairwise(page.lying):
        assert outer.pose == inner.pose and not outer.sample.drawn.template.holes
        inside = polygon(inner.sample.drawn.template, inner.pose)
        assert outer.inside and not any(spot.polygon.intersects(inside) for spot in outer.inside)


def test_a_nest_saves_pages_and_says_how_it_is_used(
    make_context: Callable[..., Context], make_part: Callable[..., Part]
) -> None:
    context = hill(make_context, make_part)
    assert len(plan_true_pages(replace(context, joined=replace(context.joined, layers=()))).templates) == 2
    (draft,) = true_page_drafts(context)
    body = draft.body(Numbers(1, 1, (), (), ()))
    assert sorted(outline.part for outline in body.outlines) == sorted(part.id for part in context.parts)
    assert "Nested templates: A, B, C" in {text.text for text in body.texts}


def test_no_note_where_there_is_no_room(make_context: Callable[..., Context], make_part: Callable[..., Part]) -> None:
    context = hill(make_context, make_part)
    (nest,) = nests_of(context, context.parts)
    assert nest_note(context.type, nest, Pose(), shapely.box(0, 0, 30, 10)) is None
