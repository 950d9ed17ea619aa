"""The notes of tiles on shared pages: what they say, and that they stand free."""

from collections.abc import Callable
from dataclasses import replace

import shapely

from publisher.geometry import Part
from publisher.pages.sheet.draft import Context, Numbers
from publisher.pages.templates.page_words import Shown
from publisher.pages.tiles.tile_notes import note_drawn, tile_name, tile_notes
from publisher.pages.tiles.true_pages import plan_true_pages
from publisher.pages.type import as_polygon


def two_boards(make_context: Callable[..., Context], make_part: Callable[..., Part]) -> Context:
    return make_context(parts=tuple(make_part(f"board_{n}", n, width=280, height=75) for n in "AB"))


def test_a_note_names_its_tile_and_the_page_of_the_other(
    make_context: Callable[..., Context], make_part: Callable[..., Part]
) -> None:
    context = two_boards(make_context, make_part)
    plan = plan_true_pages(context)
    assert plan.shared and not plan.tilings
    for number, page in enumerate(plan.shared, 1):
        for tile in page.tiles:
            keys = tuple((f"shared:{n}", 10 + n) for n in range(1, len(plan.shared) + 1))
            body = note_drawn(
                context, tile.plan, tile.cell, tile.note, Numbers(10 + number, 20, keys, (), ()), whole=False
            )
            words = " ".join(thing.text for thing in body.drawn if hasattr(thing, "text"))
            assert words.startswith(tile_name(tile.plan, tile.cell))
            (other,) = (cell for cell in tile.plan.cutting.cells if cell is not tile.cell)
            elsewhere = tile.plan.key(other) != tile.plan.key(tile.cell)
            page_said = int(tile.plan.key(other).split(":")[1]) + 10
            assert (f"(page {page_said})" in words) == elsewhere
            assert "279" not in words and "280.0 × 75.0 mm" in words


def test_notes_lie_on_no_other_words_and_no_other_tile(
    make_context: Callable[..., Context], make_part: Callable[..., Part]
) -> None:
    for page in plan_true_pages(two_boards(make_context, make_part)).shared:
        for tile in page.tiles:
            box = as_polygon(tile.note.box)
            for other in page.tiles:
                if other is not tile or not tile.note.on_tile:
                    assert not box.intersects(as_polygon(other.plan.window(other.cell).grown(-4.0)))
                assert other is tile or not box.intersects(as_polygon(other.note.box))
                assert other.label is None or not shapely.intersects(box, other.label.polygon)


def test_where_a_note_has_no_room_there_is_no_page(
    make_context: Callable[..., Context], make_part: Callable[..., Part]
) -> None:
    context = two_boards(make_context, make_part)
    (page, *_) = plan_true_pages(context).shared
    tiles = tuple((t.plan, t.cell, [t.plan.window(t.cell)], t.label, t.whole) for t in page.tiles)
    full = Shown(page.shown.frame, page.shown.lying, tuple((c, at) for c, at in page.shown.chunks))
    assert tile_notes(context, full, tiles) is not None
    live = page.shown.frame.live
    blocked = tuple((t.plan, t.cell, [live], t.label, t.whole) for t in page.tiles)
    assert tile_notes(context, full, blocked) is None


def test_marks_beside_the_part_keep_their_paper_until_all_is_taped(
    make_context: Callable[..., Context], make_part: Callable[..., Part]
) -> None:
    """As in an arch that a seam runs through: who cuts the opening out first loses the marks in it."""
    context = two_boards(make_context, make_part)
    tile = plan_true_pages(context).shared[0].tiles[0]
    numbers = Numbers(11, 20, (("shared:1", 11), ("shared:2", 12)), (), ())
    for laid, said in ((tile.plan.laid, False), (tile.plan.laid.buffer(-30.0), True)):
        body = note_drawn(context, replace(tile.plan, laid=laid), tile.cell, tile.note, numbers, whole=False)
        words = " ".join(thing.text for thing in body.drawn if hasattr(thing, "text"))
        assert ("only when all is taped" in words) == said
