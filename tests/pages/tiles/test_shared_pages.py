"""Tiles on shared pages: what the packer gets of them, and when there is no such way."""

from collections.abc import Callable

import pytest
import shapely

from publisher.geometry import Part
from publisher.pages.sheet.draft import Context
from publisher.pages.templates.template_labels import samples
from publisher.pages.templates.template_plan import Planner
from publisher.pages.tiles.shared_pages import together
from publisher.pages.tiles.true_pages import plan_true_pages
from publisher.pages.type import as_polygon


@pytest.mark.parametrize(("most", "cells", "found"), [(2, 4, True), (1, 4, False), (2, 3, False)])
def test_as_many_pages_and_tiles_as_are_allowed(
    make_context: Callable[..., Context], make_part: Callable[..., Part], most: int, cells: int, found: bool
) -> None:
    parts = tuple(make_part(f"board_{n}", n, width=280, height=75) for n in "AB")
    context = make_context(parts=parts)
    tiled = tuple(s for part in parts for s in samples(context, part))
    got = together(context, Planner(context), (), tiled, most, cells)
    assert (got is not None) == found
    assert got is None or got.count <= most


def test_a_tile_keeps_to_its_window_and_takes_its_seam_from_side_to_side(
    make_context: Callable[..., Context], make_part: Callable[..., Part]
) -> None:
    parts = tuple(make_part(f"board_{n}", n, width=280, height=75) for n in "AB")
    for page in plan_true_pages(make_context(parts=parts)).shared:
        for tile, (chunk, at) in zip(page.tiles, page.shown.chunks, strict=True):
            area = shapely.Polygon(at.apply_all(chunk.ring))
            window = as_polygon(tile.plan.window(tile.cell))
            assert window.buffer(0.3, join_style="mitre").covers(area)
            for box in tile.seamed.boxes:
                assert area.buffer(0.3, join_style="mitre").covers(as_polygon(box))
