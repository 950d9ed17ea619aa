"""The cut list and the boards: figures from the rooms above, links to templates, long lists that run on."""

from collections.abc import Callable
from dataclasses import replace

from publisher.pages import Link, Words
from publisher.pages.front.cut_list import cut_list_drafts
from publisher.pages.sheet.draft import Context, Numbers

NUMBERS = Numbers(3, 9, (), (), (("step", 4), ("plinth", 5)))


def words(context: Context) -> list[list[str]]:
    return [[w.text for w in d.body(NUMBERS).drawn if isinstance(w, Words)] for d in cut_list_drafts(context)]


def test_every_part_is_listed_with_count_size_and_page(demo: Callable[..., Context]) -> None:
    context = demo("lock-stair")
    first = words(context)[0]
    assert {"A", "Stair layer", "19 + 1 spare", "184.0 × 184.0 mm", "7.24 × 7.24 in", "4", "5"} <= set(first)
    links = [d for d in cut_list_drafts(context)[0].body(NUMBERS).drawn if isinstance(d, Link)]
    assert [link.page for link in links] == [4, 5]


def test_pages_of_a_part_that_are_apart_are_no_range(demo: Callable[..., Context]) -> None:
    context = demo("lock-stair")

    def said(*pages: int) -> list[str]:
        numbers = Numbers(3, 19, (), (), tuple(("step", page) for page in pages))
        return [w.text for w in cut_list_drafts(context)[0].body(numbers).drawn if isinstance(w, Words)]

    assert "4, 6-7" in said(4, 6, 7) and "4-6" not in said(4, 6)
    assert "4 … 12" in said(4, 6, 8, 10, 12), "the column is narrow"


def test_every_laid_out_sheet_has_a_picture(demo: Callable[..., Context]) -> None:
    context = demo("lock-stair")
    captions = [text for page in words(context) for text in page if ": sheet " in text or "laid out like this" in text]
    assert len(captions) == sum(len(need.sheets) for need in context.needs.yields)


def test_a_list_of_sixty_parts_runs_on_and_none_is_lost(demo: Callable[..., Context]) -> None:
    context = demo("lock-stair")
    row = context.needs.cut_list[0]
    many = tuple(replace(row, letter=f"L{k}", part=f"p{k}") for k in range(60))
    pages = words(replace(context, needs=replace(context.needs, cut_list=many)))
    assert len(pages) > 2
    assert [t for page in pages for t in page if t.startswith("L") and t[1:].isdigit()] == [f"L{k}" for k in range(60)]
    assert sum("Cut list, continued" in page for page in pages) >= 1
