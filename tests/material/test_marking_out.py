"""Layouts laid again from their measures alone: nothing lies over anything else, nothing is missing."""

from collections import Counter
from math import atan2, degrees

import pytest
import shapely

from publisher.basics import LayoutPromise, PlacePromise, Pose
from publisher.design import Design
from publisher.geometry import Part
from publisher.material import BoardNeeds, lay_out

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
        assert {len(place.measures) for place in promise.places} == {2 if kind == "askew" else 1}
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
