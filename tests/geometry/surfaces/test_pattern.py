"""What patterns are made of: lines from arrays, forecasts of units."""

import numpy as np
import shapely

from publisher.geometry.registry.given_parameters import Values
from publisher.geometry.surfaces.pattern import Ground, per_area, segments
from tests.geometry.surfaces.conftest import PLACE


def test_segments_are_broadcast() -> None:
    lines = segments(0.0, np.array([1.0, 2.0]), 9.0, np.array([1.0, 2.0]))
    assert [list(line.coords) for line in lines] == [[(0.0, 1.0), (9.0, 1.0)], [(0.0, 2.0), (9.0, 2.0)]]


def test_ground_and_forecast() -> None:
    piece = shapely.box(1.0, 2.0, 11.0, 7.0)
    ground = Ground(piece, piece.exterior, (1.0, 2.0), (1.0, 2.0), 0.0, 0)
    assert (ground.box.width, ground.box.height) == (10.0, 5.0)
    assert per_area(lambda _: 2.0)(Values("p", PLACE, (), ()), ground) == 25.0
