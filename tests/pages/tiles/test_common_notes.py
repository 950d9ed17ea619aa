"""Tiles of long strips lie beside each other on few pages, and one note says what to do with all of them."""

from collections.abc import Callable

import pytest
import shapely

from publisher.geometry import Part, polygon
from publisher.pages.sheet import Context, Numbers
from publisher.pages.tiles import plan_true_pages, true_page_drafts
from publisher.pages.type import as_polygon
from tests.pages.conftest import drawn_part

STRIPS = ((600.0, 10.0), (500.0, 12.0), (450.0, 9.0), (700.0, 8.0), (330.0, 25.0))


def strips(sizes: tuple[tuple[float, float], ...] = STRIPS) -> tuple[Part, ...]:
    return tuple(
        drawn_part("rectangle", letter, width=width, height=height)
        for letter, (width, height) in zip("ABCDEFGHIJKL", sizes, strict=False)
    )


@pytest.fixture(scope="module")
def context() -> Context:
    from tests.pages.conftest import a_context

    return a_context(parts=strips())


def test_strips_take_a_few_pages_and_no_seam_more(context: Context) -> None:
    plan = plan_true_pages(context)
    assert plan.order == (7, 2)  # as many seams as alone, where they take 12 pages
    for page in plan.shared:
        areas = [
            polygon(tile.plan.sample.part.template, tile.plan.pose(tile.cell)).intersection(
                as_polygon(tile.plan.window(tile.cell))
            )
            for tile in page.tiles
        ]
        assert page.common is not None and all(tile.note is None for tile in page.tiles)
        note = as_polygon(page.common.box)
        assert all(note.distance(area) >= 3.0 for area in areas)
        assert shapely.union_all(areas).area == pytest.approx(sum(area.area for area in areas))


@pytest.mark.parametrize(("sizes", "elsewhere"), [(STRIPS, False), (((600.0, 10.0),) * 6, True)])
def test_the_note_names_every_tile_and_where_its_neighbours_are(
    make_context: Callable[..., Context],
    words: Callable[..., str],
    sizes: tuple[tuple[float, float], ...],
    elsewhere: bool,
) -> None:
    context = make_context(parts=strips(sizes))
    drafts = true_page_drafts(context)
    keys = tuple((draft.key, page) for page, draft in enumerate(drafts, 5))
    said = ""
    for page, draft in enumerate(drafts, 5):
        body = draft.body(Numbers(page, 9, keys, (), ()))
        drawn = words(body)
        assert all(promise.text in drawn for promise in body.texts)
        assert all(seam.label in drawn for seam in body.seams)
        said += drawn
    assert ("On other pages: D 2 (page 6)." in said) == elsewhere and ("On other pages" in said) == elsewhere
    # drawn smaller, to be traced
    assert (
        "599.2 × 9.2 mm (23.59 × 0.36 in); the piece cut on the pencil line 600.0 × 10.0 mm (23.62 × 0.39 in)." in said
    )
    for plan in plan_true_pages(context).sharing:
        assert f"{plan.name} 1" in said


def test_a_narrow_part_beside_many_others_shares_alone(make_context: Callable[..., Context]) -> None:
    wide = tuple(drawn_part("wall_panel", letter, width=900, height=600) for letter in "XY")
    plan = plan_true_pages(make_context(parts=(*strips(STRIPS[:2]), *wide)))
    assert {one.sample.part.letter for one in plan.sharing} == {"A", "B"}
    assert {one.sample.part.letter for one in plan.tilings} == {"X", "Y"}
    assert len(plan.shared) == 1
    assert all(one.mapped for one in plan.tilings) and not any(one.mapped for one in plan.sharing)
