"""Bevel guides: one for each steep bevel, of its very slope, only in free room."""

from collections.abc import Callable
from dataclasses import replace
from math import atan2, cos, degrees, radians

import pytest
import shapely

from publisher.geometry import Edge, Part, polygon
from publisher.geometry.making import edge_words
from publisher.pages.sheet.draft import Context, Numbers
from publisher.pages.templates.bevel_guides import (
    BLADE_OUT,
    GUIDE_LEAST,
    GUIDE_TALL,
    bevel_guides,
    guide_drawn,
    guide_height,
)
from publisher.pages.tiles.true_pages import true_page_drafts
from publisher.pages.type.text import Setter

PAPER = shapely.box(0.0, 0.0, 190.0, 240.0)


def bevelled(part: Part, *bevels: float) -> Part:
    edges = tuple(
        Edge(f"edge {n}", (0.0, 0.0), (60.0, 0.0), (0.0, 0.0), (60.0, 0.0), bevel=b) for n, b in enumerate(bevels)
    )
    return replace(part, edges=edges)


def test_steep_bevels_of_all_parts_have_one_guide_each(setter: Setter, make_part: Callable[..., Part]) -> None:
    parts = (bevelled(make_part("a", "A"), 45.0, -45.0, 14.9), bevelled(make_part("b", "B"), 45.0, 22.5))
    found = bevel_guides(setter, parts, PAPER)
    assert [(guide.bevel, guide.letters) for guide in found] == [(22.5, ("B",)), (45.0, ("A", "B"))]
    assert found[1].title == "Bevel guide 45° for A, B"
    assert found[0].box.overlap(found[1].box) < 0.0


@pytest.mark.parametrize(("bevel", "said"), [(30.7489, "30.75°"), (30.704, "30.7°"), (45.0, "45°"), (22.5, "22.5°")])
def test_a_guide_says_the_number_that_stands_on_the_template(
    setter: Setter, make_part: Callable[..., Part], bevel: float, said: str
) -> None:
    part = bevelled(make_part("a", "A"), bevel)
    (guide,) = bevel_guides(setter, (part,), PAPER)
    words = edge_words(part.edges, (), polygon(part.outline), part.thickness)
    assert said in [mark.text for mark in words]
    assert guide.title == f"Bevel guide {said} for A"


@pytest.mark.parametrize("bevel", [15.0, 22.5, 30.75, 45.0, 60.0])
def test_the_slope_leans_as_far_from_upright_as_the_bevel(
    setter: Setter, make_part: Callable[..., Part], bevel: float
) -> None:
    (guide,) = bevel_guides(setter, (bevelled(make_part(), bevel),), PAPER)
    body = guide_drawn(setter, guide, 3)
    tall, level = body.lengths
    assert tall.length == guide_height(bevel, make_part().thickness) <= GUIDE_TALL
    assert degrees(atan2(level.length, tall.length)) == pytest.approx(bevel)
    assert tall.start == level.start and tall.end[0] == tall.start[0] and level.end[1] == level.start[1]


def test_without_room_there_is_none_and_with_room_it_takes_no_page(
    setter: Setter, make_context: Callable[..., Context], make_part: Callable[..., Part]
) -> None:
    part = bevelled(make_part(), 45.0)
    assert bevel_guides(setter, (part,), shapely.box(0.0, 0.0, 40.0, 200.0)) == ()
    (draft,) = true_page_drafts(make_context(parts=(part,)))
    said = {text.text for text in draft.body(Numbers(1, 1, (), (), ())).texts}
    assert "Bevel guide 45° for A" in said


@pytest.mark.parametrize(("bevel", "thick"), [(15.0, 3.0), (45.0, 5.0), (45.0, 12.0), (60.0, 5.0), (60.0, 10.0)])
def test_a_blade_along_a_guide_comes_through_the_board_where_any_blade_does(bevel: float, thick: float) -> None:
    tall = guide_height(bevel, thick)
    reach = (tall + thick) / cos(radians(bevel))
    assert reach <= BLADE_OUT + 1e-9 or tall == GUIDE_LEAST
    assert tall == GUIDE_TALL or reach > BLADE_OUT - 1e-9
