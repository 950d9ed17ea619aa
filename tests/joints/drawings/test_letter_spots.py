"""Letters of panels: on their face where a page leaves room for them, else beside it with a line to it."""

import numpy as np
import pytest
import shapely

from publisher.joints.drawings.letter_spots import (
    EXPLODED_ROOM,
    ROOM_ON_PAPER,
    letter_spot,
    on_face,
    room_on_paper,
    shown,
    spot_beside,
)
from publisher.joints.drawings.panel_solids import Solids


def faces(*levels: tuple[float, float, float, float, float]) -> Solids:
    """Level faces (left, bottom, right, top, depth), as solids."""
    areas: list[shapely.Geometry] = [shapely.box(*face[:4]) for face in levels]
    planes = [np.array([0.0, 0.0, face[4]]) for face in levels]
    return Solids(areas, planes, [], [], list(range(len(levels))))


def test_a_letter_takes_more_of_a_larger_whole() -> None:
    assert room_on_paper([shapely.box(0, 0, 30, 30)]) == ROOM_ON_PAPER
    assert room_on_paper([shapely.box(0, 0, 660, 30)]) == pytest.approx(10 * ROOM_ON_PAPER)


def test_a_face_with_room_keeps_its_letter() -> None:
    spot = on_face(faces((0, 0, 100, 60, 0)), 0, 20.0)
    assert spot is not None and 28.0 < spot[0] < 72.0 and spot[1] == pytest.approx(30.0, abs=3.0)
    assert on_face(faces((0, 0, 100, 20, 0)), 0, 20.0) is None


def test_a_hidden_part_of_a_face_is_no_room() -> None:
    half = faces((0, 0, 100, 60, 0), (0, -10, 60, 70, 5))
    spot = on_face(half, 0, 10.0)
    assert spot is not None and spot[0] > 65.0
    assert on_face(half, 0, 25.0) is None
    assert shown(half, 0) == pytest.approx(0.4, abs=0.05)


def test_a_letter_beside_is_clear_of_all_and_its_line_ends_on_what_is_seen() -> None:
    strips = faces((0, 0, 200, 6, 0), (0, 40, 200, 46, 0))
    spot = spot_beside(strips, 0, 8.0, [])
    assert spot is not None
    every = shapely.union_all(strips.areas)
    assert shapely.distance(every, shapely.Point(spot[0])) >= 8.0
    assert shapely.contains_xy(strips.areas[0], *spot[1])
    other = spot_beside(strips, 0, 8.0, [(float(spot[0, 0]), float(spot[0, 1]))])
    assert other is not None and np.hypot(*(other[0] - spot[0])) >= 20.0


def test_what_is_hidden_whole_has_no_line_to_it() -> None:
    assert spot_beside(faces((10, 10, 20, 20, 0), (0, 0, 100, 100, 5)), 0, 5.0, []) is None


def test_a_face_too_small_has_its_letter_at_an_end() -> None:
    spot = letter_spot(faces((0, 0, 60, 8, 0)), 0)
    assert spot is not None and shapely.distance(shapely.box(0, 0, 60, 8), shapely.Point(spot)) >= EXPLODED_ROOM
