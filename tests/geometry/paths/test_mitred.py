"""Areas that are grown and shrunk stay sound."""

import numpy as np
import shapely

from publisher.geometry.paths.mitred import mitred

# a union of white areas of a sketch: two of its points lie a hair of 1e-14 mm apart
HAIR = (
    (40.18666666666667, 34.96666666666667), (43.034220246913584, 34.895834469135806), (4.600000000000001, 31.198666666666668),
    (18.834666666666667, 32.705866666666665), (22.08855981127307, 40.014230327807475), (21.86195307688107, 35.07979526511507),
    (18.83466666666667, 32.705866666666665),
)  # fmt: skip


def test_the_offset_of_an_outline_that_touches_itself_can_be_laid_under_lines() -> None:
    area = shapely.Polygon(HAIR)
    assert area.is_valid and not shapely.buffer(area, -0.05, join_style="mitre").is_valid  # else the case shows nothing
    inside = mitred(area, -0.05)
    assert inside.is_valid and area.covers(inside) and 0.0 < inside.area < area.area
    assert shapely.get_type_id(inside) in (3, 6)  # areas alone
    (x, y), *_ = inside.representative_point().coords
    line = shapely.LineString([(x - 50.0, y), (x + 50.0, y)])
    assert 0.0 < shapely.length(shapely.difference(line, inside)) < line.length


def test_corners_are_kept() -> None:
    assert mitred(shapely.box(0.0, 0.0, 10.0, 6.0), 1.0).equals(shapely.box(-1.0, -1.0, 11.0, 7.0))
    assert mitred(shapely.box(0.0, 0.0, 10.0, 6.0), -1.0).equals(shapely.box(1.0, 1.0, 9.0, 5.0))
    assert mitred(shapely.box(0.0, 0.0, 10.0, 6.0), -4.0).is_empty


def test_many_areas_are_mended_one_by_one() -> None:
    box, hair = shapely.box(0.0, 0.0, 10.0, 6.0), shapely.Polygon(HAIR)
    made = mitred(np.array([box, hair, box]), -0.05)
    assert shapely.is_valid(made).all() and made[0].equals(made[2]) and made[1].equals(mitred(hair, -0.05))
    assert len(mitred(np.array([], dtype=object), 1.0)) == 0
