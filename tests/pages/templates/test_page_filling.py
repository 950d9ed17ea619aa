"""One page is filled: which loads are offered to it, how often the packer is asked, what tells loads apart."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from publisher.basics import Point
from publisher.geometry import Part
from publisher.material import Item, Piece, pack
from publisher.pages.sheet import PAGE_SQUARE, Context
from publisher.pages.templates import page_filling
from publisher.pages.templates.page_filling import (
    FEW_PARTS,
    ORDERS,
    ORDERS_OF_MANY,
    Filler,
    alike_key,
    load_key,
    loads_of,
)
from publisher.pages.templates.page_words import Shown
from publisher.pages.templates.template_labels import Labels, first_sample
from tests.pages.templates.test_template_plan import lay, many


def packs(monkeypatch: pytest.MonkeyPatch, context: Context) -> tuple[list[tuple[int, int]], tuple[Shown, ...]]:
    """Plan a context's parts; return the number of pieces and of orders that each call of the packer was given, and the pages."""
    asked: list[tuple[int, int]] = []

    def counted(
        pieces: tuple[Piece, ...], ring: tuple[tuple[Point, ...], ...], gap: float, bins: int, tries: int
    ) -> tuple[tuple[Item, ...], ...]:
        asked.append((len(pieces), tries))
        return pack(pieces, ring, gap, bins, tries)

    monkeypatch.setattr(page_filling, "pack", counted)
    page_filling._packed.cache_clear()
    return asked, lay(context)


def test_the_packer_is_asked_a_few_times_for_each_page_whatever_the_number_of_parts(
    make_context: Callable[..., Context], make_part: Callable[..., Part], monkeypatch: pytest.MonkeyPatch
) -> None:
    for number in (15, 45):
        asked, pages = packs(monkeypatch, make_context(parts=many(make_part, number)))
        # two squares, two orientations, two corners, two places of labels; then the pages are laid straight
        assert len(asked) <= 2 * 8 * (len(pages) + 1) + 3 * len(pages)


def test_a_page_chooses_from_a_few_pages_worth_of_many_parts(
    make_context: Callable[..., Context], make_part: Callable[..., Part], monkeypatch: pytest.MonkeyPatch
) -> None:
    asked, pages = packs(monkeypatch, make_context(parts=many(make_part, 45)))
    assert len(pages) > 3
    assert max(pieces for pieces, _ in asked) < 45
    assert {tries for pieces, tries in asked if pieces > FEW_PARTS and tries != ORDERS} == {ORDERS_OF_MANY}


def test_a_page_takes_what_goes_on_it_and_nothing_twice(
    make_context: Callable[..., Context], make_part: Callable[..., Part]
) -> None:
    """Three plates of 150 × 100 mm: two of them go on a page of A4 with its square, and an opening in none makes no room."""
    parts = tuple(make_part(f"p{i}", "ABC"[i], 150.0, 100.0) for i in range(3))
    context = make_context(parts=parts)
    filler = Filler(context, Labels(context), False, ())
    wanted = tuple(first_sample(context, part) for part in parts)
    page = filler.page(wanted, PAGE_SQUARE, 0)
    assert page is not None
    keys = [load_key(load) for load in loads_of(page)]
    assert len(keys) == len(set(keys)) == 2
    assert filler.area(wanted) == pytest.approx(45000.0)


def test_copies_are_alike_unless_one_is_mirrored(
    make_context: Callable[..., Context], make_part: Callable[..., Part]
) -> None:
    sample = first_sample(make_context(), make_part())
    assert (
        alike_key(sample)
        == alike_key(replace(sample, copy=sample.copy + 1))
        != alike_key(replace(sample, mirrored=True))
    )
    assert load_key(sample) != load_key(replace(sample, copy=sample.copy + 1))
