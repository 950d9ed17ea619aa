"""Templates and tiles planned together: fewer pages where they share them, else each on their own."""

from collections.abc import Callable
from itertools import combinations

import shapely

from publisher.basics import polyline
from publisher.geometry import Part, Region
from publisher.pages.sheet.draft import Body, Context, Numbers
from publisher.pages.templates.template_forms import PART_GAP
from publisher.pages.tiles.true_pages import plan_true_pages, true_page_drafts

Make = Callable[..., Context]
MakePart = Callable[..., Part]


def boards(make_part: MakePart) -> tuple[Part, ...]:
    """Two long boards and a small one: two tiles each and a template."""
    return (
        make_part("side", "A", width=280, height=75),
        make_part("deck", "B", width=280, height=75),
        make_part("wall", "C", width=75, height=75),
    )


def bodies(context: Context) -> list[Body]:
    drafts = true_page_drafts(context)
    keys = tuple((draft.key, page) for page, draft in enumerate(drafts, 1))
    return [draft.body(Numbers(page, len(drafts), keys, (), ())) for page, draft in enumerate(drafts, 1)]


def shown(body: Body) -> list[shapely.Polygon]:
    found = []
    for one in body.outlines:
        area = shapely.Polygon(one.pose.apply_all(one.rings[0]), [one.pose.apply_all(r) for r in one.rings[1:]])
        found.append(area.intersection(shapely.box(*one.window.sides)) if one.window else area)
    return found


def test_tiles_and_templates_share_pages_and_keep_apart(make_context: Make, make_part: MakePart) -> None:
    context = make_context(parts=boards(make_part))
    plan = plan_true_pages(context)
    assert not plan.templates and not plan.tilings and len(plan.shared) == 2  # apart they would be five
    pages = bodies(context)
    assert sorted((o.part, o.column) for body in pages for o in body.outlines) == [
        ("deck", 1), ("deck", 2), ("side", 1), ("side", 2), ("wall", 0),
    ]  # fmt: skip
    for body in pages:
        for one, two in combinations(shown(body), 2):
            assert one.distance(two) >= PART_GAP - 0.01


def test_every_tile_says_what_it_is_and_where_the_other_lies(make_context: Make, make_part: MakePart) -> None:
    context = make_context(parts=boards(make_part))
    pages = bodies(context)
    said = {text.text for body in pages for text in body.texts}
    assert {f"Tile {letter} {number} of 2" for letter in "AB" for number in (1, 2)} <= said
    where = {(o.part, o.column): page for page, body in enumerate(pages, 1) for o in body.outlines}
    seams = [seam for body in pages for seam in body.seams]
    assert seams and all(seam.pages == (where[seam.part, 1], where[seam.part, 2]) for seam in seams)


def test_what_saves_no_page_stays_apart(make_context: Make, make_part: MakePart) -> None:
    long, large = make_part("side", "A", width=480, height=150), make_part("wall", "B", width=180, height=180)
    plan = plan_true_pages(make_context(parts=(long, large)))
    assert not plan.shared and len(plan.templates) == 1 and len(plan.tilings) == 1


def test_a_part_lies_in_the_opening_of_another_where_that_saves_a_page(make_context: Make, make_part: MakePart) -> None:
    frame, panel = make_part("frame", "A", width=180, height=190), make_part("panel", "B", width=120, height=150)
    hole = polyline(((15.0, 15.0), (165.0, 15.0), (165.0, 175.0), (15.0, 175.0)), True)
    apart = plan_true_pages(make_context(parts=(frame, panel)))
    assert len(apart.templates) == 2
    frame = make_part("frame", "A", width=180, height=190, template=Region(frame.template.outer, (hole,)))
    (body,) = bodies(make_context(parts=(frame, panel)))
    inner, outer = sorted(shown(body), key=lambda shape: len(shape.interiors))
    assert shapely.Polygon(outer.interiors[0]).buffer(0.01 - PART_GAP).covers(inner)
