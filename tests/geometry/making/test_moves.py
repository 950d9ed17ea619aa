"""Shapes placed and mirrored."""

from math import sqrt

import pytest

from publisher.basics import LineKind, Pose, Purpose, polyline
from publisher.geometry.making.moves import mirroring, placed, renamed
from publisher.geometry.model import Mark
from publisher.geometry.paths.rings import signed_area, straight
from publisher.geometry.registry import Shape
from publisher.geometry.registry.entry import edges_of

CHAIN = straight((((0.0, 0.0), "bottom"), ((4.0, 0.0), "slope"), ((0.0, 3.0), "left")))
MARK = Mark(LineKind.DRAW, Purpose.SURFACE, polyline(((1.0, 1.0), (2.0, 1.0))))
SHAPE = Shape(CHAIN, edges_of(CHAIN, ("bottom", "slope", "left")), (), (MARK,), (((0.0, 0.0), (1.0, 0.0), (0.0, 1.0)),))


def test_turned_and_placed() -> None:
    moved = placed(SHAPE, Pose(10.0, 20.0, 90.0))
    assert moved.outer.edges[0].end == pytest.approx((10.0, 24.0))
    assert moved.edges[0].end == pytest.approx((10.0, 24.0))
    assert moved.edges[0].end == moved.edges[0].nominal_end
    assert moved.marks[0].path.points[1] == pytest.approx((9.0, 22.0)) and moved.plain[0][1] == pytest.approx(
        (10.0, 21.0)
    )
    assert signed_area(moved.outer) == pytest.approx(6.0)


def test_mirrors_keep_the_material_on_the_left() -> None:
    pose = mirroring((0.0, 0.0), (1.0, 1.0))
    assert pose.apply((4.0, 0.0)) == pytest.approx((0.0, 4.0))
    over = placed(SHAPE, pose)
    assert signed_area(over.outer) == pytest.approx(6.0)
    slope = next(edge for edge in over.edges if edge.name == "slope")
    assert slope.start == pytest.approx((3.0, 0.0)) and slope.end == pytest.approx((0.0, 4.0))
    curve = next(curve for curve in over.outer.edges if curve.name == "slope")
    assert (curve.start, curve.end) == (pytest.approx(slope.start), pytest.approx(slope.end))
    x, y = mirroring((0.0, 1.0), (1.0, 2.0)).apply((0.0, 0.0))
    assert (x, y) == pytest.approx((-1.0, 1.0)) and x * x + y * y == pytest.approx(sqrt(2.0) ** 2)


def test_renamed() -> None:
    assert [c.name for c in renamed(SHAPE, str.upper).outer.edges] == [e.name for e in renamed(SHAPE, str.upper).edges]
