"""Flagstones and cobbles: irregular, the same every time, no slivers."""

from collections.abc import Callable
from math import sqrt

import numpy as np
import pytest
import shapely

from publisher.geometry.surfaces.flagstones import NARROWEST, lines
from publisher.geometry.surfaces.pattern import Ground
from publisher.geometry.values import Values, checked
from tests.geometry.surfaces.conftest import PLACE, Drawing, draw_on

On = Callable[..., Drawing]


def slabs(body: shapely.Polygon, size: float, seed: int) -> np.ndarray:
    from publisher.design import Parameter
    from publisher.geometry.surfaces.flagstones import PATTERN

    values, found = checked("p", PATTERN.info.parameters, (Parameter("size", size, "", PLACE),), "part p", PLACE)
    assert found == () and isinstance(values, Values)
    left, bottom, _, _ = body.bounds
    (family,) = lines(values, Ground(body, body.exterior, (left, bottom), (left, bottom), 0.0, seed))
    net = shapely.union_all([*family.lines, body.boundary])
    stones = shapely.get_parts(shapely.polygonize(list(shapely.get_parts(net))))
    return stones[shapely.contains(body, shapely.point_on_surface(stones))]


@pytest.mark.parametrize("seed", range(12))
def test_no_flagstone_is_a_sliver(body: shapely.Polygon, seed: int) -> None:
    size = 14.0
    stones = slabs(body, size, seed)
    assert shapely.area(stones).sum() == pytest.approx(body.area)
    room = shapely.buffer(stones, -NARROWEST * size / 2.0 * 0.999)
    assert not shapely.is_empty(room).any()
    assert len(stones) == pytest.approx(body.area / (size**2 * sqrt(3.0) / 2.0), rel=0.25)
    assert shapely.area(stones).max() < 4.0 * size**2


def test_stones_follow_their_seed(on: On, body: shapely.Polygon) -> None:
    for pattern, size in (("flagstones", 14.0), ("cobbles", 7.0)):
        same = [on(body, pattern, seed=3, size=size) for _ in range(2)]
        assert same[0] == same[1]
        assert same[0] != on(body, pattern, seed=4, size=size)


def test_cobbles_do_not_touch(on: On) -> None:
    marks, found = on(shapely.box(0.0, 0.0, 120.0, 80.0), "cobbles", size=8.0)
    assert found == ()
    stones = shapely.polygons([m.points for m in marks if m.closed])
    assert len(stones) >= 110
    tree = shapely.STRtree(stones)
    a, b = tree.query(stones, "dwithin", 0.2)
    assert (a == b).all()
    assert (np.sqrt(shapely.area(stones)) > 0.55 * 8.0).all()


def test_neighbouring_rows_of_cobbles_sit_in_gaps() -> None:
    marks, _ = draw_on(shapely.box(0.0, 0.0, 160.0, 80.0), "cobbles", size=8.0)
    middles = np.array([np.mean(m.points, axis=0) for m in marks if m.closed])
    row = np.round((middles[:, 1] - 4.0) / 8.0)
    for k in range(1, 8):
        below, above = middles[row == k, 0], middles[row == k + 1, 0]
        away = np.abs(above[:, None] - below[None, :]).min(axis=1)
        assert np.median(away) > 8.0 / 4.0  # a quarter of a stone at least
