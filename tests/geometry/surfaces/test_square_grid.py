"""A square grid: true fields, both beginnings."""

from collections.abc import Callable

import pytest
import shapely

from publisher.geometry.surfaces.square_grid import centred
from tests.geometry.surfaces.conftest import Drawing, levels, uprights

On = Callable[..., Drawing]
FLOOR = shapely.box(0.0, 0.0, 100.0, 70.0)


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


def test_a_grid_too_fine(on: On) -> None:
    big = shapely.box(0.0, 0.0, 900.0, 900.0)
    assert [f.check for f in on(big, "square_grid", size=6.0)[1]] == ["geometry/surface-too-fine"]
