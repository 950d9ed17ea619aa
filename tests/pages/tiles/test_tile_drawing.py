"""What one tile shows and promises, wherever it stands."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from publisher.basics import Box, LineKind, Purpose, polyline
from publisher.geometry import Mark, Part
from publisher.pages.model import Fill, Words
from publisher.pages.sheet.draft import Body, Context, Numbers
from publisher.pages.templates.template_labels import samples
from publisher.pages.templates.top_marks import TOP
from publisher.pages.tiles.seam_drawing import Seamed, seam_bodies
from publisher.pages.tiles.tile_drawing import tile_body
from publisher.pages.tiles.tile_labels import tile_label
from publisher.pages.tiles.tile_plan import lay, tiling

NOTHING = Seamed(Body(), Body(), ())


@pytest.mark.parametrize("whole", [True, False])
def test_a_tile_promises_its_outline_in_its_window_and_its_sides_where_it_says_all(
    make_context: Callable[..., Context], make_part: Callable[..., Part], whole: bool
) -> None:
    part = make_part(width=480, height=100)
    context = make_context(parts=(part,))
    plan = tiling(context, samples(context, part)[0])
    cell = plan.cutting.cells[0]
    keys = tuple((plan.key(one), page) for page, one in enumerate(plan.cutting.cells, 5))
    seamed = seam_bodies(context.type, plan, cell, Numbers(5, 9, keys, (), ()))
    label = tile_label(context, plan, cell, seamed.boxes, whole)
    body = tile_body(context, plan, cell, 5, seamed, label, whole=whole, kept=(Box(0.0, 0.0, 1.0, 1.0),))
    (outline,) = body.outlines
    assert (outline.page, outline.row, outline.column, outline.window) == (5, 1, 1, plan.window(cell))
    assert [where.key for where in body.carried] == ([context.side(part, False).key] if whole else [])
    assert {seam.pages for seam in body.seams} == {(5, 6)}


@pytest.mark.parametrize(("arrow_at", "tile"), [(-5.0, 0), (3.0, 1), (12.0, 1)])
def test_the_arrow_that_says_where_the_top_is_stands_only_beside_its_word(
    make_context: Callable[..., Context], make_part: Callable[..., Part], arrow_at: float, tile: int
) -> None:
    """Just past a seam the arrow shows on both tiles, its word on one: there the other covers the arrow when all is taped."""
    bare = make_part(width=480, height=100)
    (seam,) = tiling(make_context(parts=(bare,)), samples(make_context(parts=(bare,)), bare)[0]).cutting.across
    x = seam + arrow_at
    arrow = Mark(LineKind.DRAW, Purpose.TOP, polyline(((x, 80.0), (x, 87.0))), name=TOP)
    word = Mark(LineKind.REFERENCE, Purpose.NAME, polyline(((x + 4.9, 83.5),)), name=TOP, text=TOP)
    part = make_part(width=480, height=100, marks=(arrow, word))
    context = make_context(parts=(part,))
    laid = lay(context, samples(context, part)[0], 0.0)
    plan = tiling(make_context(parts=(bare,)), samples(make_context(parts=(bare,)), bare)[0])
    plan = replace(laid.with_seams(context, replace(plan, sample=laid.sample)), places=plan.places)
    assert plan.cutting.across == (seam,)
    shows = []
    for number, cell in enumerate(plan.cutting.cells):
        body = tile_body(context, plan, cell, 5, NOTHING, None, whole=False)
        heads = [d for d in body.drawn if isinstance(d, Fill)]
        said = [d for d in body.drawn if isinstance(d, Words) and d.text == TOP]
        assert len(heads) == len(said) <= 1
        shows += [number] if said else []
    assert shows == [tile]
