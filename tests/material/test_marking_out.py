"""Layouts laid again from their measures alone: nothing lies over anything else, nothing is missing."""

from collections import Counter
from math import atan2, cos, degrees, radians, sin

import pytest
import shapely

from publisher.basics import CutPromise, CutReading, LayoutPromise, PlacePromise, Pose
from publisher.design import Design, SheetSize
from publisher.geometry import Part
from publisher.material import BoardNeeds, Item, Piece, lay_out
from publisher.material.marking_out import measures_of, readable

BLUR = 0.16  # mm; two measures to a tenth, on each of two pieces


def laid_again(place: PlacePromise, outline: shapely.Polygon) -> shapely.Geometry:
    """Return an outline where its measures put it: upright by one corner of its box, askew by two points."""
    first = place.measures[0]
    turn = place.turn
    if len(place.measures) == 2:
        (ax, ay), (bx, by) = (m.at for m in place.measures)
        (cx, cy), (dx, dy) = (m.own for m in place.measures)
        if place.mirrored:
            cx, dx = -cx, -dx
        turn = degrees(atan2(by - ay, bx - ax) - atan2(dy - cy, dx - cx))
    pose = Pose.carrying(first.own, first.at, turn, place.mirrored)
    a, b, c, d, e, f = pose.matrix()
    return shapely.affinity.affine_transform(outline, [a, c, b, d, e, f])


def insist_that_it_holds(promise: LayoutPromise, parts: dict[str, Part], gap: float) -> list[shapely.Geometry]:
    """Fail unless copies laid by their measures keep the gap and stay on the sheet."""
    shapes = {
        name: shapely.Polygon(p.outline.outer.points, [h.points for h in p.outline.holes]) for name, p in parts.items()
    }
    laid = [laid_again(place, shapes[place.part]) for place in promise.places]
    sheet = shapely.box(0, 0, promise.width, promise.height)
    for number, one in enumerate(laid):
        assert sheet.buffer(BLUR).covers(one)
        for other in laid[:number]:
            assert one.distance(other) >= gap - BLUR
            assert one.intersection(other).area <= BLUR * max(one.length, other.length)
    return laid


def worked(shop, *parts: Part, size=(297.0, 420.0)) -> tuple[Design, BoardNeeds]:
    design = shop.design(shop.board(size))
    return design, lay_out(design, parts)


@pytest.mark.parametrize("kind", ["tiles", "layers", "askew"])
def test_a_layout_is_laid_again_from_its_measures(shop, kind: str) -> None:
    parts = {
        "tiles": (shop.part("a", (shop.box(60.0, 41.3),), 9), shop.part("b", (shop.box(33.3, 77.7, 5.0, -3.0),), 5)),
        "layers": (shop.part("a", shop.layer(30.0, 90.0, 40.0), 7), shop.part("b", (shop.box(50.0, 50.0),), 4)),
        "askew": (shop.part("a", (shop.box(450.0, 20.0),), 4),),
    }[kind]
    design, needs = worked(shop, *parts)
    known = {part.id: part for part in parts}
    assert needs.layouts
    counts: Counter[str] = Counter()
    for promise in needs.layouts:
        insist_that_it_holds(promise, known, design.boards[0].knife_gap)
        counts.update(place.part for place in promise.places for _ in range(promise.alike))
        assert sorted(place.order for place in promise.places) == list(range(1, len(promise.places) + 1))
        points = {"tiles": {1}, "layers": {1, 2}, "askew": {2}}  # layers in a lattice have no side along the sheet's
        assert {len(place.measures) for place in promise.places} == points[kind]
    assert counts == {part.id: part.count for part in parts}


def test_a_measure_that_is_wrong_is_found(shop) -> None:
    """The judge of this file says so when a copy is measured out a millimetre off."""
    from dataclasses import replace

    parts = (shop.part("a", (shop.box(60.0, 41.3),), 9),)
    _, needs = worked(shop, *parts)
    (promise,) = needs.layouts
    first, *rest = promise.places
    (measure,) = first.measures
    moved = replace(first, measures=(replace(measure, at=(measure.at[0] + 1.0, measure.at[1])),))
    with pytest.raises(AssertionError):
        insist_that_it_holds(replace(promise, places=(moved, *rest)), {"a": parts[0]}, 1.0)


def test_measures_are_read_as_coarsely_as_the_layout_bears(shop) -> None:
    """Half a millimetre and thirty-seconds of an inch with a knife gap of 1 mm; tenths where two tiles are 0.1 mm apart."""
    parts = (shop.part("a", (shop.box(60.3, 41.3),), 9), shop.part("b", (shop.box(33.3, 77.7),), 5))
    _, needs = worked(shop, *parts)
    assert {(p.step_mm, p.parts_of_inch) for p in needs.layouts} == {(0.5, 32)}
    pieces = tuple(Piece(p.id, (p.outline.outer.points,), ()) for p in parts)
    close = (Item("a", 1, Pose(3.3, 3.0)), Item("a", 2, Pose(63.7, 3.0)))
    measures = tuple(measures_of(pieces[0], item, True) for item in close)
    read = readable(pieces, close, measures, needs.layouts[0], ())
    assert (read.step_mm, read.parts_of_inch) == (0.1, 32)  # on that rule both are rounded apart


def test_a_straight_cut_is_read_beside_the_piece() -> None:
    """A tile that ends at 78.1 mm, 3 5/64 in: the nearest thirty-second, 3 1/16, lies in it; the next ones lie beside it. A cut that
    ends on that one ends where it is read."""
    pieces = (Piece("a", (((0.0, 0.0), (74.94, 0.0), (74.94, 40.0), (0.0, 40.0)),), ()),)
    items = (Item("a", 1, Pose(3.16, 3.0)), Item("a", 2, Pose(3.16, 44.0)), Item("a", 3, Pose(79.1, 3.0)))
    measures = tuple(measures_of(pieces[0], item, True) for item in items)
    cuts = (CutPromise(False, 78.1, 0.0, 200.0, 2), CutPromise(True, 43.0, 0.0, 78.1, 1))
    read = readable(pieces, items, measures, SheetSize("small", 300.0, 200.0), cuts)
    assert (read.step_mm, read.parts_of_inch) == (0.5, 32)
    first, second = read.cuts
    assert first.mm == CutReading(78.0, 0.0, 200.0) and second.mm == CutReading(43.0, 0.0, 78.0)
    assert first.inches is not None and second.inches is not None
    assert first.inches.at * 32 / 25.4 == pytest.approx(3 * 32 + 3) and second.inches.end == first.inches.at


def test_a_piece_askew_is_marked_by_its_corners(shop) -> None:
    """The corners of a slip; of an ellipse, which has none, the ends of its long axis."""
    slip = Piece("s", (((0.0, 0.0), (90.0, 0.0), (90.0, 20.0), (0.0, 20.0)),), ())
    found = measures_of(slip, Item("s", 1, Pose(50.0, 50.0, 30.0)), False)
    assert {m.own for m in found} <= set(slip.rings[0]) and len(found) == 2
    ring = tuple((60.0 * cos(radians(k)), 40.0 * sin(radians(k))) for k in range(0, 360, 4))
    ends = measures_of(Piece("e", (ring,), ()), Item("e", 1, Pose(100.0, 100.0, 30.0)), False)
    assert sorted(abs(m.own[0]) for m in ends) == pytest.approx([60.0, 60.0])
