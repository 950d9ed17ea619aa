"""The words of whole pages of templates: random parts on random papers, judged by geometry."""

from collections.abc import Callable
from dataclasses import replace
from itertools import combinations
from random import Random

import pytest
import shapely

from publisher.basics import polyline
from publisher.geometry import Part, Region, polygon
from publisher.pages.sheet.draft import Context
from publisher.pages.sheet.paper_table import papers
from publisher.pages.templates.label_words import TRACED, says
from publisher.pages.templates.labels import details
from publisher.pages.templates.page_words import Lying, Shown, _traced, free_paper, near, traced_drawn
from publisher.pages.templates.part_notes import mark_notes
from publisher.pages.templates.part_strokes import quiet_lines
from publisher.pages.templates.template_frames import free_area
from publisher.pages.templates.template_labels import samples
from publisher.pages.templates.template_plan import Planner
from publisher.pages.type import LEAST_SIZE, as_polygon
from tests.searches.profile import seeds

Draw = Callable[..., Part]


def random_part(random: Random, draw: Draw, letter: str) -> Part:
    """A part of a random shape and size, from some that hold no letter to some that fill a page."""
    size = random.choice((4.0, 8.0, 15.0, 30.0, 60.0, 90.0)) * random.uniform(0.8, 1.25)
    large, inner = max(size, 20.0), random.uniform(0.3, 0.93)
    disc = draw("disc", letter, radius=size, count=random.choice((1, 2, 14, 60)))
    own = {"count": disc.count}
    made: dict[str, Callable[[], Part]] = {
        "ring": lambda: draw(
            "ring", letter, radius=max(size, 8.0), hole_radius=max(3.0, min(size * inner, size - 3.0)), **own
        ),
        "disc": lambda: disc,
        "polygon": lambda: draw("regular_polygon", letter, radius=size, sides=random.randint(3, 9), **own),
        "stair": lambda: draw(
            "spiral_stair_layer", letter, core_radius=large * 0.3, reach=large, step_angle=40, turn=20, notch=2, **own
        ),
        "gable": lambda: draw("gable_wall", letter, span=2 * large, eaves=large, pitch=30, **own),
        "wall": lambda: draw("wall_panel", letter, width=2 * size, height=max(3.0, size * inner), **own),
        "loop": lambda: loop(random, disc, size, inner),
    }
    return made[random.choice(sorted(made))]()


def loop(random: Random, like: Part, size: float, inner: float) -> Part:
    """A round with corners, hollow where there is room for a hole."""
    points = [(random.uniform(0, 2 * size), random.uniform(0, 2 * size)) for _ in range(9)]
    hull = shapely.MultiPoint(points).convex_hull
    holes = [h for h in shapely.get_parts(hull.buffer(-0.5 * (1.0 - inner) * size)) if h.area > 1.0]
    rings = [
        polyline(tuple((float(x), float(y)) for x, y in ring.coords[:-1]), True, "edge")
        for ring in (hull.exterior, *(hole.exterior for hole in holes))
    ]
    region = Region(rings[0], tuple(rings[1:]))
    return replace(like, name="Loop", outline=region, template=region, marks=(), edges=())


def judge(context: Context, page: Shown) -> None:
    """All words inside the page's limit, apart from each other, off every line, and what a piece must not lose in its outline."""
    boxes: list[tuple[Lying, shapely.Polygon]] = []
    for y in page.lying:
        part = y.sample.part
        ground = polygon(part.template, y.pose)
        notes = mark_notes(part, y.pose, context.type, [spot.polygon.buffer(0.5) for spot in y.spots])
        lines = shapely.union_all([ground.boundary, quiet_lines(part, y.pose)])
        for spot in y.spots:
            boxes.append((y, spot.polygon))
            assert spot.label.style.size >= LEAST_SIZE
            assert as_polygon(page.frame.limit).covers(spot.polygon), (part.letter, spot)
            assert not any(as_polygon(b).intersects(spot.polygon) for b in page.frame.blocked)
            assert not lines.intersects(spot.polygon), (part.letter, spot.label.form)
        for note in notes:
            boxes.append((y, as_polygon(note.box)))
            assert ground.covers(as_polygon(note.box)) and not lines.intersects(as_polygon(note.box))
        assert all(ground.covers(spot.polygon) for spot in y.inside)
        if y.beside and not ground.intersects(y.beside.polygon):
            others = [polygon(one.sample.part.template.outer, one.pose) for one in page.lying if one is not y]
            least = min((other.distance(y.beside.polygon) for other in others), default=1e9)
            assert ground.distance(y.beside.polygon) <= least + 0.11, (part.letter, "nearer to another part")
        said = says(context, part, y.sample.copy, y.sample.mirrored)
        inside = " ".join(text for spot in y.inside for text in spot.label.promised)
        if y.flag is None:
            for text in (said.letter, said.cut.replace("\u00a0", " "), *said.sides):
                assert text in inside
        else:
            assert set(inside.split()) <= {said.letter}
            assert {said.letter, *said.sides} <= set(y.flag.label.promised)
    for (_, one), (_, other) in combinations(boxes, 2):
        assert not one.intersects(other)
    for y, box in boxes:
        for other_lying in page.lying:
            if other_lying is not y:
                assert not polygon(other_lying.sample.part.template, other_lying.pose).intersects(box)


@pytest.mark.search
@seeds(few=7, many=1000)
def test_random_pages(make_context: Callable[..., Context], draw: Draw, seed: int) -> None:
    random = Random(seed)
    paper = random.choice([p.name for p in papers()])
    parts = tuple(random_part(random, draw, chr(65 + i)) for i in range(random.choice((1, 2, 4, 7))))
    context = make_context(paper, parts=parts)
    pages, _ = Planner(context).plan(tuple(s for p in parts for s in samples(context, p)))
    for page in pages:
        judge(context, page)


def test_long_words_stand_in_line_with_their_part_or_near_it_or_nowhere(
    make_context: Callable[..., Context], make_part: Callable[..., Part]
) -> None:
    context = make_context()
    groups = list(details(context.type, says(context, make_part())))
    shape = shapely.box(40.0, 100.0, 80.0, 130.0)
    page = shapely.box(0.0, 0.0, 200.0, 280.0)
    free = page.difference(shape.buffer(2.0))
    spot = near(shape, groups[0], free)
    assert spot and free.covers(spot.polygon) and spot.box.left == 40.0 and 2.0 < shape.distance(spot.polygon) < 4.0
    far = page.difference(shapely.box(0.0, 60.0, 200.0, 280.0))
    away = near(shape, groups[0], far)
    assert away and far.covers(away.polygon) and away.box.top > 55.0
    assert near(shape, groups[0], shapely.box(0.0, 0.0, 12.0, 280.0)) is None


def test_words_never_stand_nearer_to_another_copy(
    make_context: Callable[..., Context], make_part: Callable[..., Part]
) -> None:
    """“1 of 2” stood beside the second of two triangles, with the free room of the page there alone."""
    context = make_context()
    groups = list(details(context.type, says(context, make_part())))
    shape, other = shapely.box(10.0, 10.0, 50.0, 40.0), shapely.box(100.0, 100.0, 140.0, 130.0)
    room = shapely.box(60.0, 90.0, 190.0, 170.0).difference(other.buffer(2.0))
    assert near(shape, groups[0], room) is not None
    assert near(shape, groups[0], room, other) is None
    assert near(other, groups[0], room, shape) is not None, "it is its own"


def test_a_page_says_how_its_templates_are_traced_where_no_label_has_room_for_it(
    make_context: Callable[..., Context], draw: Draw
) -> None:
    part = draw("wall_panel", "B", width=100.0, height=60.0)
    context = make_context("a4", parts=(part,))
    planner = Planner(context)
    ((page,), _) = planner.plan(tuple(samples(context, part)))
    assert page.traced is None  # its label says it
    (lying,) = page.lying
    says_less = replace(planner.labels.said(lying.sample), notes=())
    spots = tuple(replace(spot, label=replace(spot.label, says=says_less)) for spot in lying.spots)
    box = _traced(
        planner.labels,
        [replace(lying, flag=None, beside=None, inside=spots)],
        free_paper(free_area(page.frame), [lying]),
    )
    assert box is not None and not polygon(part.template.outer, lying.pose).intersects(as_polygon(box))
    body = traced_drawn(context.type, box, 5)
    assert [text.text for text in body.texts] == [TRACED]
    assert _traced(planner.labels, [lying], shapely.Polygon()) is None
