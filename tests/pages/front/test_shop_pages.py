"""The pages of which a shop shows pictures."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from publisher.pages.front.shop_pages import SHOP_PICTURES, shop_drafts
from publisher.pages.model import PackImage, Picture, ShownPage, Words
from publisher.pages.sheet.draft import Body, Context
from tests.pages.conftest import a_context, a_design, some_numbers, words_of


def body_of(context: Context, name: str) -> Body:
    (draft,) = [draft for draft in shop_drafts(context) if draft.key == f"shop:{name}"]
    return draft.body(some_numbers())


@pytest.mark.parametrize("name", ["cover", "wide", "square"])
def test_the_piece_is_shown_with_its_sizes_in_mm_and_inches(demo: Callable[..., Context], name: str) -> None:
    context = demo("quay")
    body = body_of(context, name)
    keys = {where.key for where in body.carried}
    assert {key for key in keys if key.startswith("cover:whole:")}
    sizes = [one.text for one in context.joined.sentences if one.key in keys]
    assert len(sizes) == 3 and all("mm" in text and "in" in text for text in sizes)
    assert context.design.title in words_of(body)


@pytest.mark.parametrize(
    "sizes", [[(210, 297)] * 13, [(210, 297), (297, 210), (210, 297)], [(210, 297)], [(297, 210)] * 60]
)
def test_every_page_of_the_pack_is_shown_once_in_order_and_none_on_another(sizes: list[tuple[float, float]]) -> None:
    pages = tuple(ShownPage(PackImage(f"pack:{n:02}", b""), w, h) for n, (w, h) in enumerate(sizes))
    body = body_of(replace(a_context(), shown=pages), "contents")
    shown = [thing for thing in body.drawn if isinstance(thing, Picture)]
    assert [one.image for one in shown] == [page.image.name for page in pages]
    scales = {round(one.box.width / page.width, 9) for one, page in zip(shown, pages, strict=True)}
    assert len(scales) == 1 and 0.05 < scales.pop() <= 0.5
    for number, one in enumerate(shown):
        assert one.box.height / one.box.width == pytest.approx(pages[number].height / pages[number].width)
        assert all(one.box.overlap(other.box) <= 0.0 for other in shown[number + 1 :])
    (frame,) = {draft.frame.text for draft in shop_drafts(a_context()) if draft.key == "shop:contents"}
    lowest_word = min(thing.y for thing in body.drawn if isinstance(thing, Words))
    assert all(one.box.beyond(frame) <= 1e-9 and one.box.top < lowest_word for one in shown)


def test_a_very_long_title_is_set_smaller() -> None:
    title = "The bridge over the lower canal by the old toll house at the third lock " * 2
    sizes = {}
    for said in ("Bridge", title):
        words = body_of(a_context(design=a_design(title=said.strip())), "wide").drawn
        sizes[said] = max(thing.size for thing in words if isinstance(thing, Words))
    assert sizes[title] < sizes["Bridge"]


def test_the_names_of_the_pictures_are_all_there() -> None:
    assert [draft.key for draft in shop_drafts(a_context())] == [f"shop:{name}" for name, _, _ in SHOP_PICTURES]
