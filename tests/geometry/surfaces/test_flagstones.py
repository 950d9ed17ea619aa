"""Flagstones: irregular, the same every time, no slivers."""

from collections.abc import Callable
from math import sqrt

import numpy as np
import pytest
import shapely

from publisher.geometry.registry.given_parameters import Values, checked
from publisher.geometry.surfaces.flagstones import NARROWEST_SLAB, lines
from publisher.geometry.surfaces.pattern import Ground
from tests.geometry.surfaces.conftest import PLACE, Drawing

On = Callable[..., Drawing]


def slabs(body: shapely.Polygon, size: float, seed: int) -> np.ndarray:
    from publisher.design import Parameter
    from publisher.geometry.surfaces.flagstones import PATTERN

    values, found = checked("p", PATTERN.info.parameters, (Parameter("size", size, "", PLACE),), "part p", PLACE)
    assert found == () and isinstance(values, Values)
    left, bottom, _, _ = body.bounds
    families = lines(values, Ground(body, body.exterior, (left, bottom), (left, bottom), 0.0, seed))
    net = shapely.union_all([*(line for family in families for line in family.lines), body.boundary])
    stones = shapely.get_parts(shapely.polygonize(list(shapely.get_parts(net))))
    return stones[shapely.contains(body, shapely.point_on_surface(stones))]


@pytest.mark.parametrize("seed", range(40))
def test_no_flagstone_is_a_sliver(body: shapely.Polygon, seed: int) -> None:
    size = 14.0
    stones = slabs(body, size, seed)
    assert shapely.area(stones).sum() == pytest.approx(body.area)
    room = shapely.buffer(stones, -NARROWEST_SLAB * size / 2.0 * 0.999)
    assert not shapely.is_empty(room).any()
    assert len(stones) == pytest.approx(body.area / (size**2 * sqrt(3.0) / 2.0), rel=0.25)
    assert shapely.area(stones).max() < 5.0 * size**2


def test_flagstones_follow_their_seed(on: On, body: shapely.Polygon) -> None:
    same = [on(body, "flagstones", seed=3, size=14.0) for _ in range(2)]
    assert same[0] == same[1]
    assert same[0] != on(body, "flagstones", seed=4, size=14.0)


def test_level_joints_are_long_lines(on: On) -> None:
    """Few and long: a page holds a limited number of lines."""
    marks, found = on(shapely.box(0.0, 0.0, 300.0, 200.0), "flagstones", size=12.0)
    assert found == ()
    slabs_laid = 300.0 * 200.0 / (12.0**2 * sqrt(3.0) / 2.0)
    assert sum(len(m.path.points) for m in marks) < 4.5 * slabs_laid
    assert max(len(m.path.points) for m in marks) > 20
