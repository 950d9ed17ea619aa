"""The map of the tiles."""

from collections.abc import Callable
from itertools import combinations

import shapely

from publisher.basics import Box
from publisher.geometry import Part
from publisher.pages.model import Stroke, Words
from publisher.pages.sheet.draft import Context, Numbers
from publisher.pages.templates.template_labels import samples
from publisher.pages.tiles.tile_map import map_drawn, overview_draft
from publisher.pages.tiles.tile_plan import Tiling, tiling
from publisher.pages.type.rectangles import as_polygon
from publisher.pages.type.styles import PICTURE_DETAIL


def a_plan(context: Context, part: Part) -> Tiling:
    return tiling(context, samples(context, part)[0])


def test_every_tile_has_its_page_number_inside_it(
    make_context: Callable[..., Context], draw: Callable[..., Part]
) -> None:
    part = draw("ring", radius=150, hole_radius=110)
    context = make_context(parts=(part,))
    plan = a_plan(context, part)
    place = Box(10, 10, 60, 60)
    pages = {c: 20 + i for i, c in enumerate(plan.cutting.cells)}
    drawn, used = map_drawn(context.type, plan, pages, place, plan.cutting.cells[1])
    assert used.beyond(place) <= 1e-6
    words = [d for d in drawn if isinstance(d, Words)]
    assert [w.text for w in words] == [str(p) for p in pages.values()]
    boxes = [shapely.box(w.x, w.y, w.x + 2.6, w.y + 1.6) for w in words]
    assert not any(a.intersects(b) for a, b in combinations(boxes, 2))
    outline = shapely.union_all(
        [
            shapely.LineString(p.points)
            for d in drawn
            if isinstance(d, Stroke) and d.style == PICTURE_DETAIL
            for p in d.paths
        ]
    )
    assert not outline.is_empty and not any(outline.intersects(b) for b in boxes)
    assert as_polygon(used).covers(outline)


def test_the_map_page_names_all_pages(make_context: Callable[..., Context], draw: Callable[..., Part]) -> None:
    part = draw("disc", radius=142, name="Plinth")
    context = make_context(parts=(part,))
    plan = a_plan(context, part)
    draft = overview_draft(context, plan)
    assert (draft.kind, draft.title) == ("overview", "Map of A Plinth")
    keys = tuple((plan.key(c), 11 + i) for i, c in enumerate(plan.cutting.cells))
    body = draft.body(Numbers(3, 20, keys, (), ()))
    assert {f"page {n}" for n in (11, 12, 13, 14)} <= {t.text for t in body.texts}
    shown = {w.text for w in body.drawn if isinstance(w, Words)}
    assert {f"page {n}" for n in (11, 12, 13, 14)} <= shown
    for word in (w for w in body.drawn if isinstance(w, Words)):
        assert Box(word.x, word.y, word.x, word.y).beyond(draft.frame.text) <= 0.01
