"""Pages are counted as they would be made."""

from collections.abc import Callable

import pytest

from publisher.pages import count_pages
from publisher.pages.sheet.draft import Context
from publisher.pages.templates.template_pages import template_drafts
from publisher.pages.tiles.tile_pages import tile_drafts


@pytest.mark.parametrize(("slug", "paper"), [("bridge", "a4"), ("quay", "a4")])
def test_as_many_pages_as_a_pack_has(demo: Callable[..., Context], slug: str, paper: str) -> None:
    context = demo(slug, paper)
    found = count_pages(context.design, context.parts, context.joined, context.paper)
    assert found.templates == len(template_drafts(context))
    assert found.tiles == len(tile_drafts(context))
    tiled = {part for draft in tile_drafts(context) for part in draft.parts}
    assert set(found.tiled) == {p.letter for p in context.parts if p.id in tiled}
    assert found.pages == len(template_drafts(context)) + len(tile_drafts(context))
