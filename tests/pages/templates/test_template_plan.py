"""Which template stands on which page."""

from collections.abc import Callable
from itertools import combinations

import pytest
import shapely

from publisher.basics import Pose
from publisher.design import Design
from publisher.geometry import Part, polygon
from publisher.pages.sheet.draft import Context
from publisher.pages.sheet.frame import PAGE_SQUARE
from publisher.pages.templates.page_words import Lying, Shown
from publisher.pages.templates.part_strokes import quiet_lines
from publisher.pages.templates.template_forms import PART_AWAY, PART_GAP
from publisher.pages.templates.template_labels import samples
from publisher.pages.templates.template_plan import Planner, planner_of
from publisher.pages.type.rectangles import as_polygon


def lay(context: Context) -> tuple[Shown, ...]:
    planner = Planner(context)
    wanted = tuple(s for p in context.parts for s in samples(context, p))
    pages, left = planner.plan(wanted)
    assert not left
    assert sorted((y.sample.part.id, y.sample.copy) for p in pages for y in p.lying) == sorted(
        (s.part.id, s.copy) for s in wanted
    )
    return pages


def outside(lying: Lying) -> shapely.Polygon:
    return polygon(lying.sample.part.template.outer, lying.pose)


def check(page: Shown) -> None:
    """Everything inside, apart from each other, clear of furniture; words on no line and in no other part."""
    frame = page.frame
    for y in page.lying:
        assert as_polygon(frame.limit).covers(outside(y))
        for box in frame.blocked:
            assert outside(y).distance(as_polygon(box)) >= PART_AWAY / 2 - 0.02
        lines = shapely.union_all(
            [polygon(y.sample.part.template, y.pose).boundary, quiet_lines(y.sample.part, y.pose)]
        )
        for spot in y.spots:
            assert as_polygon(frame.live).covers(spot.polygon)
            assert not spot.polygon.intersects(lines)
        ground = polygon(y.sample.part.template, y.pose)
        assert all(ground.covers(spot.polygon) for spot in y.inside)
        for one, other in combinations(y.spots, 2):
            assert not one.polygon.intersects(other.polygon)
    for one_lying, other_lying in combinations(page.lying, 2):
        assert outside(one_lying).distance(outside(other_lying)) >= PART_GAP - 0.02
        for a, b in ((one_lying, other_lying), (other_lying, one_lying)):
            assert all(outside(a).distance(spot.polygon) >= PART_GAP - 0.1 for spot in b.spots)
        for one in one_lying.spots:
            assert not any(one.polygon.intersects(other.polygon) for other in other_lying.spots)


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_stair_and_plinth(
    make_context: Callable[..., Context], draw: Callable[..., Part], stair_layer: Part, paper: str
) -> None:
    context = make_context(paper, parts=(stair_layer, draw("disc", "B", radius=92, count=1)))
    pages = lay(context)
    assert len(pages) <= Planner(context).bound(tuple(y.sample for p in pages for y in p.lying)) + 1
    for page in pages:
        check(page)
        assert page.frame.calibration and page.frame.calibration.width == PAGE_SQUARE


def test_small_parts_share_a_page_with_their_labels_beside_them(
    make_context: Callable[..., Context], make_part: Callable[..., Part]
) -> None:
    parts = tuple(make_part(f"p{i}", chr(65 + i), 20.0 + 4 * i, 12.0 + i) for i in range(6))
    pages = lay(make_context(parts=parts))
    assert len(pages) == 1
    check(pages[0])


def test_pasted_copies_are_all_printed_and_the_mirrored_ones_mirrored(
    make_context: Callable[..., Context], make_design: Callable[..., Design], draw: Callable[..., Part]
) -> None:
    part = draw(
        "spiral_stair_layer", count=5, mirrored=2, spare=1, core_radius=20, reach=60, step_angle=40, turn=20, notch=4
    )
    context = make_context(design=make_design(use="paste"), parts=(part,))
    pages = lay(context)
    for page in pages:
        check(page)
    lying = [y for p in pages for y in p.lying]
    assert sorted(y.sample.copy for y in lying) == [1, 2, 3, 4, 5, 6]
    assert {y.sample.copy for y in lying if y.pose.mirrored} == {4, 5}
    for y in lying:
        assert shapely.LinearRing(y.pose.apply_all(part.template.outer.points)).is_ccw is not y.pose.mirrored


def test_a_part_is_turned_aslant_before_it_is_given_up(
    make_context: Callable[..., Context], make_part: Callable[..., Part]
) -> None:
    long = make_part(width=272.0, height=8.0)
    context = make_context(parts=(long,))
    assert Planner(context).fits(long)
    (page,) = lay(context)
    assert page.lying[0].pose.turn % 90.0 != 0.0
    check(page)


@pytest.mark.parametrize(
    ("width", "height", "fits"), [(190, 190, True), (480, 100, False), (284, 284, False), (330, 5, False)]
)
def test_what_fits_a_page(
    make_context: Callable[..., Context], make_part: Callable[..., Part], width: float, height: float, fits: bool
) -> None:
    part = make_part(width=width, height=height)
    assert Planner(make_context(parts=(part,))).fits(part) is fits


def test_the_square_shrinks_only_where_parts_leave_no_room(
    make_context: Callable[..., Context], make_part: Callable[..., Part]
) -> None:
    (tight,) = lay(make_context(parts=(make_part(width=190, height=206),)))
    (easy,) = lay(make_context(parts=(make_part(width=190, height=180),)))
    assert tight.frame.calibration and tight.frame.calibration.width < PAGE_SQUARE
    assert easy.frame.calibration and easy.frame.calibration.width == PAGE_SQUARE
    check(tight)


def test_parts_lie_as_they_were_drawn_when_it_costs_no_page(
    make_context: Callable[..., Context], make_part: Callable[..., Part]
) -> None:
    (page,) = lay(make_context(parts=(make_part(width=70, height=150),)))
    assert page.lying[0].pose.turn == 0.0


def test_the_same_parts_lie_the_same_way_every_time(
    make_context: Callable[..., Context], draw: Callable[..., Part], stair_layer: Part
) -> None:
    parts = (stair_layer, draw("disc", "B", radius=60), draw("regular_polygon", "C", sides=6, radius=40))
    first, second = lay(make_context(parts=parts)), lay(make_context(parts=parts))
    assert [y.pose for p in first for y in p.lying] == [y.pose for p in second for y in p.lying]
    assert Pose() != first[0].lying[0].pose


def test_templates_and_tiles_share_one_planner(make_context: Callable[..., Context]) -> None:
    context = make_context()
    assert planner_of(context) is planner_of(context)


def many(make_part: Callable[..., Part], number: int) -> tuple[Part, ...]:
    """Plates that all differ; the smallest carry their labels beside them."""
    letters = [chr(65 + i // 26) + chr(65 + i % 26) for i in range(number)]
    return tuple(make_part(f"p{i}", letters[i], 24.0 + 2.5 * i, 16.0 + (7 * i) % 40) for i in range(number))


def test_every_one_of_thirty_parts_is_placed_once(
    make_context: Callable[..., Context], make_part: Callable[..., Part]
) -> None:
    pages = lay(make_context(parts=many(make_part, 30)))
    assert sum(len(p.lying) for p in pages) == 30
    for page in pages:
        check(page)


def test_parts_that_fit_no_page_do_not_hide_those_that_do(
    make_context: Callable[..., Context], make_part: Callable[..., Part]
) -> None:
    large = tuple(make_part(f"l{i}", f"L{i}", 400.0 + i, 300.0) for i in range(9))
    parts = (*large, *many(make_part, 10))
    context = make_context(parts=parts)
    pages, left = Planner(context).plan(tuple(s for p in parts for s in samples(context, p)))
    assert {s.part.id for s in left} == {p.id for p in large}
    assert sum(len(p.lying) for p in pages) == 10
