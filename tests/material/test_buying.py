"""Ways to buy board, and the work: from layouts and outlines alone."""

from dataclasses import replace

import pytest

from publisher.basics import LineKind, Purpose, polyline
from publisher.geometry import Mark
from publisher.material import lay_out
from publisher.material.buying import work_of


def test_every_sheet_that_takes_the_whole_list_is_a_way(shop) -> None:
    """A3 takes all, on one sheet; A5 does not take the long slips, so it is no way to buy."""
    parts = (shop.part("long", (shop.box(280.0, 20.0),), 4), shop.part("b", (shop.box(40.0, 40.0),), 2))
    needs = lay_out(shop.design(shop.board((297.0, 420.0), (148.0, 210.0))), parts)
    (way,) = needs.ways
    assert (way.key, way.label, way.sheets) == ("buy:foam:297 x 420 mm", "297 x 420 mm", 1)
    assert way.offcut is not None and way.offcut[0] <= 414.0 and way.offcut[1] <= 291.0
    assert {letter for letter, *_ in way.spares} <= {"long", "b", *(p.letter for p in parts)}


def test_the_work_is_that_of_all_copies(shop) -> None:
    """Three copies of a square with a hole, with a line to score and two of texture: lengths by hand; tips for 2 to 4 m."""
    ring = shop.box(100.0, 100.0)
    hole = tuple(reversed(shop.box(20.0, 10.0, 40.0, 40.0)))
    lines = (
        Mark(LineKind.SCORE, Purpose.BEND, polyline(((0.0, 50.0), (100.0, 50.0)))),
        Mark(LineKind.DRAW, Purpose.SURFACE, polyline(((0.0, 10.0), (100.0, 10.0)))),
        Mark(LineKind.DRAW, Purpose.SURFACE, polyline(((0.0, 20.0), (50.0, 20.0)))),
        Mark(
            LineKind.DRAW, Purpose.JOINT_TICK, polyline(((0.0, 0.0), (0.0, 4.0)))
        ),  # pressed into the edge, as stones are
        Mark(LineKind.DRAW, Purpose.NAME, polyline(((0.0, 30.0), (50.0, 30.0)))),
    )
    part = replace(shop.part("a", (ring, hole), 2, spare=1), marks=lines)
    work = work_of((shop.board((297.0, 420.0)),), (part,))
    assert (work.cut, work.score, work.texture) == pytest.approx((3 * 460.0, 300.0, 462.0))
    assert (work.holes, work.strokes, work.blades) == (3, 9, (1, 1))
    many = replace(part, count=19)
    assert work_of((shop.board((297.0, 420.0)),), (many,)).blades == (3, 5)  # 9.2 m
    papered = replace(shop.board((297.0, 420.0)), faces="paper_both")
    assert work_of((papered,), (many,)).blades == (5, 10)
