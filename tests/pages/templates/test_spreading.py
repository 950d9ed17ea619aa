"""Parts stand apart where a page has room, and nowhere nearer than the packer laid them."""

from collections.abc import Callable
from itertools import combinations
from random import Random

import pytest
import shapely

from publisher.basics import Pose
from publisher.geometry import Part, polygon
from publisher.pages.sheet import PAGE_SQUARE, Context
from publisher.pages.templates import PART_GAP, Chunk, Sample, Shown, frames, free_area
from publisher.pages.templates.page_words import Lying
from publisher.pages.templates.spreading import WIDE_ENOUGH, spread


def shapes(page: Shown) -> list[shapely.Polygon]:
    own = [polygon(y.sample.part.template.outer, y.pose) for y in page.lying]
    return own + [shapely.Polygon(pose.apply_all(chunk.ring)) for chunk, pose in page.chunks]


def least_gap(page: Shown) -> float:
    return min(one.distance(other) for one, other in combinations(shapes(page), 2))


def huddled(context: Context, parts: list[Part]) -> Shown:
    """All parts in a row from the lower left corner, as close as they may lie."""
    frame = frames(context.paper, PAGE_SQUARE)[0]
    left, bottom, *_ = free_area(frame).bounds
    lying = []
    for part in parts:
        lying.append(Lying(Sample(part, 0, False), Pose(left, bottom)))
        left = polygon(part.template.outer, lying[-1].pose).bounds[2] + PART_GAP
    return Shown(frame, tuple(lying))


def test_a_huddle_spreads_over_the_page(make_context: Callable[..., Context], make_part: Callable[..., Part]) -> None:
    context = make_context()
    close = huddled(context, [make_part("a", "A", 40.0, 60.0), make_part("b", "B", 50.0, 30.0)])
    apart = spread(close)
    assert least_gap(close) == pytest.approx(PART_GAP) and 12.0 < least_gap(apart) <= WIDE_ENOUGH
    edge = free_area(apart.frame).exterior
    assert min(shape.distance(edge) for shape in shapes(apart)) > 12.0
    assert [y.pose.turn for y in apart.lying] == [y.pose.turn for y in close.lying]


@pytest.mark.parametrize("seed", range(4))
def test_no_gap_falls_below_the_least(
    make_context: Callable[..., Context], make_part: Callable[..., Part], seed: int
) -> None:
    random, context = Random(seed), make_context()
    parts = [make_part(f"p{n}", "ABC"[n], random.uniform(15, 50), random.uniform(15, 200)) for n in range(3)]
    close = huddled(context, parts)
    chunk = Chunk("@p", ((0.0, 0.0), (90.0, 0.0), (90.0, 20.0), (0.0, 20.0)), 1800.0)
    top = free_area(close.frame).bounds[3]
    close = Shown(close.frame, close.lying, ((chunk, Pose(20.0, top - 20.0)),))
    apart = spread(close)
    assert least_gap(apart) >= PART_GAP - 1e-6
    ground = free_area(apart.frame).buffer(0.02)
    assert all(ground.covers(shape) for shape in shapes(apart))


def test_a_lone_part_and_a_full_page_stay(make_context: Callable[..., Context], make_part: Callable[..., Part]) -> None:
    context = make_context()
    for parts in ([make_part()], [make_part("a", "A", 95.0, 200.0), make_part("b", "B", 95.0, 200.0)]):
        close = huddled(context, parts)
        assert spread(close) is close
