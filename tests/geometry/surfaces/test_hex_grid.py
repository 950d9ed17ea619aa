"""A hexagonal grid: true fields, both ways up, both beginnings."""

from collections.abc import Callable
from math import sqrt

import pytest
import shapely

from publisher.geometry import Mark
from tests.geometry.surfaces.conftest import Drawing

On = Callable[..., Drawing]
FLOOR = shapely.box(0.0, 0.0, 100.0, 70.0)


def fields(marks: tuple[Mark, ...]) -> list[shapely.Polygon]:
    lines = shapely.union_all([shapely.LineString(m.path.points) for m in marks])
    return list(shapely.get_parts(shapely.polygonize(list(shapely.get_parts(lines)))))


@pytest.mark.parametrize("top", ["corner", "flat"])
@pytest.mark.parametrize("start", ["corner", "middle"])
def test_hexagons_are_regular(on: On, top: str, start: str) -> None:
    size = 12.0
    marks, found = on(FLOOR, "hex_grid", size=size, top=top, start=start)
    assert found == ()
    whole = [f for f in fields(marks) if f.area > 1.0]
    assert len(whole) >= 20
    for field in whole:
        assert field.area == pytest.approx(size**2 * sqrt(3.0) / 2.0, rel=1e-6)
        left, bottom, right, upper = field.bounds
        across, along = (right - left, upper - bottom) if top == "corner" else (upper - bottom, right - left)
        assert across == pytest.approx(size) and along == pytest.approx(2.0 * size / sqrt(3.0))


def test_a_grid_too_fine(on: On) -> None:
    big = shapely.box(0.0, 0.0, 900.0, 900.0)
    assert [f.check for f in on(big, "hex_grid", size=6.0)[1]] == ["geometry/surface-too-fine"]
