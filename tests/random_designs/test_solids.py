"""The judge itself: bodies with known volumes and centres, and designs that it must refuse."""

from dataclasses import replace
from math import cos, pi, sin, sqrt

import pytest
from manifold3d import Manifold

from tests.random_designs.design import Piece, Rest, Touch
from tests.random_designs.judge import of_piece
from tests.random_designs.solids import (
    block,
    centroid,
    contact,
    hull,
    in_common,
    inside_by,
    plate,
    shared,
    standing,
    united,
)

TABLE = block((0, 0, 0), (100, 100, 5))
UPPER = block((0, 0, 5), (50, 100, 10))
LIES = Touch("low", "high", (0.0, 0.0, -1.0), 5000.0)


def piece(high: Manifold, touch: Touch = LIES, rests: tuple[Rest, ...] = ()) -> Piece:
    return Piece("pile", (("low", TABLE), ("high", high)), (touch,), (), rests)


def test_a_regular_pyramid_has_the_volume_and_the_centre_of_its_formula() -> None:
    base = [(30 * cos(k * pi / 3), 30 * sin(k * pi / 3), 0.0) for k in range(6)]
    solid = hull([*base, (0.0, 0.0, 40.0)])
    assert solid.volume() == pytest.approx(3 * sqrt(3) / 2 * 30**2 * 40 / 3)
    assert centroid(solid) == pytest.approx([0.0, 0.0, 10.0], abs=1e-9)


def test_contact_and_shared_space_of_two_blocks_are_those_of_the_hand() -> None:
    assert contact(TABLE, UPPER, (0.0, 0.0, -1.0), 0.02) == pytest.approx(5000.0)
    assert shared(TABLE, UPPER.translate([0, 0, -1])) == pytest.approx(5000.0)
    assert united([TABLE, UPPER]).volume() == pytest.approx(75_000.0)


def test_a_plate_has_its_holes_whichever_way_its_rings_run() -> None:
    outer, hole = [(0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0)], [(2.0, 2.0), (4.0, 2.0), (4.0, 4.0), (2.0, 4.0)]
    for rings in ((outer, hole), (outer[::-1], hole), (outer, hole[::-1])):
        assert plate(rings[0], 5.0, 0.0, [rings[1]]).volume() == pytest.approx(480.0)


def test_what_solids_have_in_common_is_counted_once_for_each_further_one() -> None:
    cubes = [block((x, 0, 0), (x + 10, 10, 10)) for x in (0, 6, 20)]
    assert in_common(cubes) == pytest.approx(400.0)
    assert in_common(cubes[1:]) == pytest.approx(0.0, abs=1e-6)


def test_an_upright_board_stands_left_of_its_line() -> None:
    solid = standing([(0, 0), (30, 0), (30, 20), (0, 20)], 5.0, (10.0, 0.0), 90.0)
    assert solid.bounding_box() == pytest.approx((5, 0, 0, 10, 30, 20))


def test_a_point_lies_inside_the_hull_of_an_area_by_its_distance_to_the_nearest_side() -> None:
    area = plate([(0, 0), (10, 0), (10, 4), (0, 4)], 1.0).slice(0.5)
    assert inside_by(area, (5.0, 1.0)) == pytest.approx(1.0)
    assert inside_by(area, (5.0, 5.0)) == pytest.approx(-1.0)


def test_a_pile_that_lies_well_is_true() -> None:
    assert of_piece(piece(UPPER)) == []


@pytest.mark.parametrize(
    ("bad", "word"),
    [
        (piece(UPPER.translate([0, 0, 1])), "touch on 0 of"),
        (piece(UPPER.translate([60, 0, 0])), "touch on"),
        (piece(UPPER.translate([0, 0, -1])), "share"),
        (Piece("pile", (("low", TABLE), ("high", UPPER)), ()), "nothing holds high"),
        (piece(block((90, 0, 5), (900, 100, 10)), replace(LIES, area=1000.0)), "falls over"),
        (piece(block((90, 0, 5), (120, 100, 10)), replace(LIES, area=1000.0), (Rest("high", ("low",)),)), "falls off"),
    ],
    ids=["a gap", "beside", "one in another", "nothing holds it", "top-heavy", "slides off"],
)
def test_a_pile_that_does_not_lie_well_is_refused(bad: Piece, word: str) -> None:
    assert any(word in text for text in of_piece(bad))
