"""Editions change units, words and the sheets on sale; never a size."""

import re
from collections.abc import Callable

import pytest

from publisher.material import BoardNeeds
from publisher.pages.sheet.caution_words import material_words, short_name, thing_name, tool_words
from publisher.pages.sheet.draft import Context
from publisher.pages.sheet.editions import OTHER, edition_called, editions, needs_in
from publisher.pages.sheet.paper_table import papers

HERE, THERE = edition_called(OTHER), edition_called("north_american")


def sizes(needs: BoardNeeds) -> list[str]:
    return [one.sheet.label for one in needs.yields]


def test_every_paper_is_of_an_edition_that_sets_its_unit() -> None:
    first = {one.name: one.first for one in editions()}
    assert {paper.name: paper.first for paper in papers()} == {p.name: first[p.edition] for p in papers()}
    assert {p.edition for p in papers()} == set(first) == {HERE.name, THERE.name}


def test_names_of_there_are_those_of_known_things() -> None:
    known = {thing.key for thing in (*tool_words(), *material_words())}
    for edition in editions():
        assert {key for key, _, _ in edition.names} <= known
    assert thing_name("steel_rule", HERE) == "steel rule, 300 mm (12 in) or longer"
    assert thing_name("steel_rule", THERE) == "metal ruler (steel rule), 12 in (300 mm) or longer"
    assert (short_name("filler", HERE), short_name("filler", THERE)) == (
        "lightweight filler",
        "lightweight spackling (filler)",
    )


@pytest.mark.parametrize("edition", editions(), ids=lambda one: one.name)
def test_sizes_on_sale_are_upright_and_said_as_they_are(edition) -> None:
    assert all(one.width <= one.height for one in edition.sheets)
    said = {tuple(map(float, pair)) for pair in re.findall(r"(\d+) × (\d+)", edition.sold)}
    worth = 1.0 if edition.first == "mm" else 25.4
    known = {(round(s.width / worth), round(s.height / worth)) for s in edition.sheets}
    assert said <= known | {(w / 12, h / 12) for w, h in known}


def test_a_pack_shows_the_sheets_that_are_on_sale_where_its_paper_is(demo: Callable[..., Context]) -> None:
    needs = demo("lock-stair").needs
    assert sizes(needs) == ["20 x 30 in", "297 x 420 mm"]
    here, there = needs_in(HERE, needs), needs_in(THERE, needs)
    assert (sizes(here), sizes(there)) == (["297 x 420 mm"], ["20 x 30 in"])
    for kept, label in ((here, "297 x 420 mm"), (there, "20 x 30 in")):
        assert {way.label for way in kept.ways} == {one.sheet for one in kept.layouts} == {label}
    assert here.cut_list == there.cut_list == needs.cut_list


def test_a_board_without_a_sheet_on_sale_there_keeps_all_it_has(demo: Callable[..., Context]) -> None:
    needs = demo("bridge").needs
    assert sizes(needs_in(HERE, needs)) == sizes(needs) == ["20 x 30 in"]
