"""Pages are counted as they would be made."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from publisher.pages import count_pages
from publisher.pages.sheet.draft import Context
from publisher.pages.templates import with_top_marks
from publisher.pages.templates.template_plan import planner_of
from publisher.pages.tiles.true_pages import true_page_drafts


@pytest.mark.parametrize(("slug", "paper"), [("bridge", "a4"), ("quay", "a4")])
def test_as_many_pages_as_a_pack_has(demo: Callable[..., Context], slug: str, paper: str) -> None:
    plain = demo(slug, paper)
    context = replace(plain, parts=with_top_marks(plain.parts, plain.joined))  # as a pack has them
    found = count_pages(context.design, context.parts, context.joined, context.paper)
    drafts = true_page_drafts(context)
    assert found.templates == sum(draft.kind == "templates" for draft in drafts)
    assert found.tiles == sum(draft.kind != "templates" for draft in drafts)
    assert found.pages == len(drafts)
    assert found.tiled == tuple(p.letter for p in context.parts if not planner_of(context).fits(p))
