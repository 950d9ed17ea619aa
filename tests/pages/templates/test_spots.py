"""Blocks of words in their places."""

from collections.abc import Callable

import pytest
import shapely

from publisher.basics import Pose
from publisher.geometry import Part
from publisher.pages.model import Words
from publisher.pages.sheet.draft import Context
from publisher.pages.templates.label_words import says
from publisher.pages.templates.labels import Label, identities
from publisher.pages.templates.spots import Spot, spot_drawn, spot_promises


def a_label(context: Context, part: Part) -> Label:
    return next(identities(context.type, says(context, part)))[0]


@pytest.mark.parametrize("turn", [0.0, 40.0, 90.0, 135.0, 180.0, 260.0])
def test_words_go_with_their_part_and_never_stand_on_their_heads(
    make_context: Callable[..., Context], make_part: Callable[..., Part], turn: float
) -> None:
    part = make_part()
    spot = Spot(a_label(make_context(), part), (10.0, 5.0), -30.0)
    carry = Pose(100.0, 50.0, turn)
    moved = spot.moved(carry)
    assert -90.0 < moved.turn <= 90.0
    where = shapely.Polygon(carry.apply_all(tuple(spot.polygon.exterior.coords)))
    assert moved.polygon.symmetric_difference(where).area < 1e-6


def test_promises_name_the_place_and_the_copy(
    make_context: Callable[..., Context], make_part: Callable[..., Part]
) -> None:
    context, part = make_context(), make_part()
    spot = Spot(a_label(context, part), (30.0, 40.0), 25.0)
    shown = [w for w in spot_drawn(context.type, spot, 0.0) if isinstance(w, Words)]
    assert {w.turn for w in shown} == {25.0}
    inside = spot_promises(3, spot, part.id, 2)
    assert [p.text for p in inside] == ["A", "cut 2", "THIS SIDE UP"]
    assert {(p.page, p.part, p.copy) for p in inside} == {(3, part.id, 2)}
    for promise in inside:
        assert promise.near and spot.polygon.contains(shapely.Point(promise.near))
        assert any(promise.text in w.text for w in shown)
    assert {p.part for p in spot_promises(3, spot)} == {""}
