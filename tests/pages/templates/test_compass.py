"""Compass strips: which parts they draw, and that the holes stand as far apart as the finished radius."""

from collections.abc import Callable
from dataclasses import replace
from itertools import combinations
from math import dist

import pytest

from publisher.basics import LineKind, Pose, Purpose, polyline
from publisher.geometry import Mark, Part
from publisher.pages.model import Words
from publisher.pages.sheet.draft import Context
from publisher.pages.sheet.page_checks import words_box
from publisher.pages.templates.compass import strip_body, strip_chunk, strip_of
from publisher.pages.tiles.true_pages import plan_true_pages, true_page_drafts

Make = Callable[..., Context]
Draw = Callable[..., Part]


@pytest.mark.parametrize("turn", [0.0, 90.0])
def test_holes_stand_as_far_apart_as_the_finished_radii(make_context: Make, draw: Draw, turn: float) -> None:
    ring = draw("ring", radius=120, hole_radius=80)
    context = make_context(parts=(ring,))
    strip = strip_of(context, ring)
    assert strip is not None and strip.radii == (120.0, 80.0)
    body = strip_body(context, strip, strip_chunk(context, strip), Pose(150.0, 40.0, turn), 4)
    (promise,) = body.compasses
    assert [dist(promise.pin, pencil) for pencil in promise.pencils] == pytest.approx([120.0, 80.0])
    assert [length.length for length in body.lengths] == [120.0, 80.0]
    said = {length.label.split(" (")[0] for length in body.lengths}
    assert said == {"pencil, radius 120.0 mm", "pencil, radius 80.0 mm"}


ROOMS = [
    (150, 140),
    (150, 136),
    (120, 110),
    (104, 96),
    (250, 235),
    (110, 20),
    (130, 6.5),
    (50, 40),
    (41, 35),
    (300, 10),
]


@pytest.mark.parametrize(("outer", "hole"), ROOMS)
def test_words_of_a_strip_lie_clear_of_each_other_whatever_the_radii(
    make_context: Make, draw: Draw, outer: float, hole: float
) -> None:
    ring = draw("ring", radius=outer, hole_radius=hole)
    context = make_context(parts=(ring,))
    if (strip := strip_of(context, ring)) is None:
        assert (outer, hole) in {(41, 35), (50, 40)}, "a strip with room for its words is refused"
        return
    chunk = strip_chunk(context, strip)
    body = strip_body(context, strip, chunk, Pose(20.0, 20.0), 4)
    boxes = {w.text: words_box(context.type.faces, w) for w in body.drawn if isinstance(w, Words)}
    for (one, box), (other, near) in combinations(boxes.items(), 2):
        assert near.right <= box.left or box.right <= near.left or near.top <= box.bottom or box.top <= near.bottom, (
            one,
            other,
        )
    for said, box in boxes.items():
        assert box.left >= 20.0 and box.right <= 20.0 + chunk.ring[2][0] and box.top <= 20.0 + chunk.ring[2][1], said


def test_holes_that_would_tear_into_one_another_have_no_strip(make_context: Make, draw: Draw) -> None:
    ring = draw("ring", radius=120, hole_radius=115)
    assert strip_of(make_context(parts=(ring,)), ring) is None


def test_only_round_parts_that_are_traced_and_bear_no_other_marks_have_one(
    make_context: Make, make_design: Callable[..., object], draw: Draw, make_part: Draw
) -> None:
    disc = draw("disc", radius=90)
    context = make_context(parts=(disc,))
    assert strip_of(context, disc) is not None
    lap = Mark(LineKind.REFERENCE, Purpose.LAP, polyline(((0.0, 0.0), (5.0, 0.0))), "next", "")
    for other in (
        make_part(),
        draw("disc", radius=30),
        replace(disc, marks=(*disc.marks, lap)),
        draw("regular_polygon", sides=6, radius=50),
    ):
        assert strip_of(context, other) is None
    assert strip_of(make_context(design=make_design(use="paste"), parts=(disc,)), disc) is None


def test_a_strip_stands_for_a_disc_where_it_saves_a_seam_or_a_page(
    make_context: Make, draw: Draw, stair_layer: Part
) -> None:
    large = plan_true_pages(make_context(parts=(draw("disc", letter="B", radius=145), stair_layer)))
    assert not large.cut and len(large.templates) == 1
    alone = plan_true_pages(make_context(parts=(draw("disc", radius=90),)))
    assert not alone.templates[0].chunks


def test_a_strip_that_is_longer_than_the_paper_is_none(make_context: Make, draw: Draw, stair_layer: Part) -> None:
    context = make_context(parts=(draw("disc", letter="B", radius=300), stair_layer))
    plan = plan_true_pages(context)
    assert plan.whole and {tiling.sample.part.letter for tiling in plan.cut} == {"B"}


def test_the_strip_is_promised_on_the_page_that_lists_its_part(
    make_context: Make, draw: Draw, stair_layer: Part, numbers: Callable
) -> None:
    plinth = replace(draw("disc", letter="B", radius=145), id="plinth")
    (draft,) = true_page_drafts(make_context(parts=(plinth, stair_layer)))
    body = draft.body(numbers(1))
    assert set(draft.parts) == {plinth.id, stair_layer.id}
    assert [c.part for c in body.compasses] == [plinth.id] and [o.part for o in body.outlines] == [stair_layer.id]
