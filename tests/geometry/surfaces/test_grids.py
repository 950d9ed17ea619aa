"""Square and hexagonal grids: true fields, both beginnings."""

from collections.abc import Callable
from math import sqrt

import pytest
import shapely

from publisher.geometry.surfaces.square_grid import centred
from tests.geometry.surfaces.conftest import Drawing, levels, uprights

On = Callable[..., Drawing]
FLOOR = shapely.box(0.0, 0.0, 100.0, 70.0)


def fields(marks: tuple[object, ...]) -> list[shapely.Polygon]:
    lines = shapely.union_all([shapely.LineString(m.points) for m in marks])  # type: ignore[attr-defined]
    return list(shapely.get_parts(shapely.polygonize(list(shapely.get_parts(lines)))))


def test_square_fields_from_the_corner(on: On) -> None:
    marks, found = on(FLOOR, "square_grid", size=30.0)
    assert found == ()
    assert levels(marks) == [30.0, 60.0]
    assert sorted({a[0] for a, _ in uprights(marks)}) == [30.0, 60.0, 90.0]


def test_square_fields_from_the_middle_end_alike(on: On) -> None:
    marks, _ = on(FLOOR, "square_grid", size=30.0, start="middle")
    at = sorted({a[0] for a, _ in uprights(marks)})
    assert at == pytest.approx([20.0, 50.0, 80.0])
    assert at[0] == pytest.approx(100.0 - at[-1])
    assert levels(marks) == pytest.approx([5.0, 35.0, 65.0])
    assert centred(0.0, 60.0, 30.0) == 0.0


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


def test_grids_too_fine(on: On) -> None:
    for pattern in ("square_grid", "hex_grid"):
        big = shapely.box(0.0, 0.0, 900.0, 900.0)
        assert [f.check for f in on(big, pattern, size=6.0)[1]] == ["geometry/surface-too-fine"]
