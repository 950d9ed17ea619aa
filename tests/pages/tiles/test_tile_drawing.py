"""What one tile shows and promises, wherever it stands."""

from collections.abc import Callable

import pytest

from publisher.basics import Box
from publisher.geometry import Part
from publisher.pages.sheet.draft import Context, Numbers
from publisher.pages.templates.template_labels import samples
from publisher.pages.tiles.seam_drawing import seam_bodies
from publisher.pages.tiles.tile_drawing import tile_body
from publisher.pages.tiles.tile_labels import tile_label
from publisher.pages.tiles.tile_plan import tiling


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
