"""Sections against closed forms: second moments of rectangles, triangles and tubes (any table of them, such as Roark's), turned."""

from math import pi

import numpy as np
import pytest
import shapely

from publisher.joints.necks import neck_of, section_of_area

AT = np.array([[50.0, 0.0]])
NOWHERE = np.zeros(2)


def box(wide: float, deep: float) -> shapely.Geometry:
    return shapely.box(-wide / 2, -deep / 2, wide / 2, deep / 2)


@pytest.mark.parametrize("turn", [0.0, 30.0, 90.0, 137.0])
def test_second_moments_are_those_of_the_tables_however_the_section_lies(turn: float) -> None:
    triangle = shapely.Polygon([(0, 0), (12, 0), (0, 6)])
    tube = shapely.difference(shapely.Point(0, 0).buffer(10.0, 400), shapely.Point(0, 0).buffer(8.0, 400))
    for area, moments in (
        (box(12.0, 6.0), (12.0**3 * 6.0 / 12.0, 12.0 * 6.0**3 / 12.0, 0.0)),
        (triangle, (12.0**3 * 6.0 / 36.0, 12.0 * 6.0**3 / 36.0, -((12.0 * 6.0) ** 2) / 72.0)),
        (tube, (pi / 4 * (10.0**4 - 8.0**4), pi / 4 * (10.0**4 - 8.0**4), 0.0)),
    ):
        c, s = np.cos(np.radians(turn)), np.sin(np.radians(turn))
        matrix = np.array([[c, -s], [s, c]])
        moved = shapely.transform(area, lambda xy, m=matrix: xy @ m.T + (300.0, -200.0))
        section = section_of_area(moved)
        assert section is not None
        xx, yy, xy = moments
        wanted = matrix @ np.array([[xx, xy], [xy, yy]]) @ matrix.T
        assert section.second == pytest.approx(wanted, rel=1e-4, abs=1e-3)
        assert section.middle == pytest.approx(shapely.get_coordinates(shapely.centroid(moved))[0], abs=1e-6)


def test_pieces_that_move_as_one_resist_as_one() -> None:
    pair = shapely.union_all([shapely.box(-30, -2, -26, 2), shapely.box(26, -2, 30, 2)])
    section = section_of_area(pair)
    assert section is not None and section.second[0, 0] == pytest.approx(2 * (4.0**4 / 12.0 + 16.0 * 28.0**2))


def test_a_load_along_an_axis_bends_by_six_f_e_over_w_h_squared() -> None:
    neck = neck_of(box(6.0, 10.0), AT, 0.3, 0.0, NOWHERE)
    assert neck is not None and neck.stress == pytest.approx(6 * 0.3 * 50.0 / (10.0 * 6.0**2))
    assert (neck.place, neck.arm, neck.size) == (0, pytest.approx(50.0), pytest.approx((6.0, 10.0)))
    assert neck.wider(neck.stress / 8.0) == pytest.approx(12.0)  # twice as large, an eighth of the stress


def test_the_worst_of_several_places_counts_and_what_is_no_area_has_no_neck() -> None:
    neck = neck_of(box(6.0, 10.0), np.array([[0.0, 60.0], [50.0, 0.0]]), 0.3, 0.0, NOWHERE)
    assert neck is not None and neck.place == 1  # less far off, over the thin side
    assert neck_of(box(0.5, 0.5), AT, 0.3, 0.0, NOWHERE) is None
    assert neck_of(box(6.0, 10.0), np.zeros((0, 2)), 0.3, 0.0, NOWHERE) is None
