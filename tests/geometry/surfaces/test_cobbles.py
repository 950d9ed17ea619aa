"""Cobbles: rounded, apart, in rows that sit in each other's gaps."""

from collections.abc import Callable

import numpy as np
import shapely

from tests.geometry.surfaces.conftest import Drawing, draw_on

On = Callable[..., Drawing]


def test_cobbles_follow_their_seed(on: On, body: shapely.Polygon) -> None:
    same = [on(body, "cobbles", seed=3, size=7.0) for _ in range(2)]
    assert same[0] == same[1]
    assert same[0] != on(body, "cobbles", seed=4, size=7.0)


def test_cobbles_do_not_touch(on: On) -> None:
    marks, found = on(shapely.box(0.0, 0.0, 120.0, 80.0), "cobbles", size=8.0)
    assert found == ()
    stones = shapely.polygons([m.path.points for m in marks if m.path.closed])
    assert len(stones) >= 110
    tree = shapely.STRtree(stones)
    a, b = tree.query(stones, "dwithin", 0.2)
    assert (a == b).all()
    assert (np.sqrt(shapely.area(stones)) > 0.55 * 8.0).all()


def test_neighbouring_rows_of_cobbles_sit_in_gaps() -> None:
    marks, _ = draw_on(shapely.box(0.0, 0.0, 160.0, 80.0), "cobbles", size=8.0)
    middles = np.array([np.mean(m.path.points, axis=0) for m in marks if m.path.closed])
    row = np.round((middles[:, 1] - 4.0) / 8.0)
    for k in range(1, 8):
        below, above = middles[row == k, 0], middles[row == k + 1, 0]
        away = np.abs(above[:, None] - below[None, :]).min(axis=1)
        assert np.median(away) > 8.0 / 4.0  # a quarter of a stone at least
