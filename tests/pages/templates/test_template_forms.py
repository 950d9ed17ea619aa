"""Shapes for the packer."""

from collections.abc import Callable
from math import cos, radians, sin

import numpy as np
import pytest
import shapely

from publisher.basics import Pose, polyline
from publisher.geometry import Part, polygon
from publisher.pages.sheet.draft import Context
from publisher.pages.templates.label_words import says
from publisher.pages.templates.labels import flags
from publisher.pages.templates.template_forms import (
    PADDING,
    PART_GAP,
    beside,
    centring,
    cover,
    fits_turned,
    holds,
    least_rectangle,
    reach,
    sides,
)


def test_a_cover_hides_the_shape_and_little_more(stair_layer: Part) -> None:
    shape = polygon(stair_layer.template)
    ring = cover(shape)
    rough = shapely.Polygon(ring)
    assert rough.buffer(1e-6).covers(shape)
    assert shape.buffer(0.3).covers(rough)
    assert len(ring) < len(stair_layer.template.outer.points) / 2


def test_a_cover_of_a_rectangle_is_the_rectangle(make_part: Callable[..., Part]) -> None:
    shape = polygon(make_part().template)
    assert shapely.Polygon(cover(shape)).area == pytest.approx(shape.area)


def test_sides_and_reach_of_a_slanted_rectangle() -> None:
    slanted = shapely.Polygon(Pose(7, 8, 31.0).apply_all(((0, 0), (30, 0), (30, 40), (0, 40))))
    assert sorted(sides(shapely.oriented_envelope(slanted))) == pytest.approx([30, 40])
    assert reach(slanted) == pytest.approx(50)


def test_least_rectangle_lays_a_slanted_part_straight(make_part: Callable[..., Part]) -> None:
    from dataclasses import replace

    from publisher.geometry import Region

    c, s = cos(radians(20)), sin(radians(20))
    points = tuple((x * c - y * s, x * s + y * c) for x, y in ((0, 0), (50, 0), (50, 20), (0, 20)))
    part = replace(make_part(), template=Region(polyline(points, True)))
    spans = set()
    for turn in least_rectangle(part):
        left, bottom, right, top = polygon(part.template, Pose(turn=turn)).bounds
        spans.add((round(right - left, 6), round(top - bottom, 6)))
    assert spans == {(50.0, 20.0), (20.0, 50.0)}


def test_holds_looks_into_every_corner() -> None:
    free = shapely.box(0, 0, 100, 100).difference(shapely.box(60, 0, 100, 40))
    assert holds(free, 60, 100) and holds(free, 100, 60)
    assert not holds(free, 61, 61)


@pytest.mark.parametrize("turn", [0.0, 90.0])
@pytest.mark.parametrize("mirrored", [False, True])
def test_a_label_beside_a_part_touches_it_not_and_is_in_its_piece(
    make_context: Callable[..., Context], stair_layer: Part, turn: float, mirrored: bool
) -> None:
    context = make_context(parts=(stair_layer,))
    labels = flags(context.type, says(context, stair_layer))
    form = beside(stair_layer, turn, mirrored, labels)
    assert form.label
    shape = polygon(stair_layer.template, Pose(turn=turn, mirrored=mirrored))
    x, y = form.label_at
    box = shapely.box(x, y, x + form.label.width, y + form.label.height)
    assert PART_GAP + PADDING - 1e-6 <= box.distance(shape) < PART_GAP + PADDING + 3.0
    piece = shapely.Polygon(form.ring).buffer(1e-6)
    assert piece.covers(shape) and piece.covers(box)


def test_centring_brings_the_group_to_the_middle_when_nothing_is_in_the_way() -> None:
    free = shapely.box(0, 0, 100, 60)
    assert centring([shapely.box(0, 0, 20, 20)], free) == (40, 20)
    assert centring([], free) == (0.0, 0.0)


def test_centring_never_leaves_the_free_area() -> None:
    free = shapely.box(0, 0, 100, 100).difference(shapely.box(40, 0, 100, 60))
    piece = shapely.Point(19, 19).buffer(18.9)
    dx, dy = centring([piece], free)
    moved = shapely.transform(piece, lambda c: c + np.array((dx, dy)))
    assert free.buffer(0.02).covers(moved)
    assert dx + dy > 0


def test_a_long_shape_fits_a_page_only_aslant() -> None:
    rod = shapely.box(0, 0, 330, 4)
    assert not fits_turned(rod, (0.0, 90.0), 200.0, 280.0)
    assert fits_turned(rod, (0.0, 55.0), 200.0, 280.0)
    assert not fits_turned(shapely.box(0, 0, 330, 60), range(0, 180, 5), 200.0, 280.0)
