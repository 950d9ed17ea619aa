"""Shingles: rows from the eave, joints half a tile apart, shaped ends."""

from collections.abc import Callable

import pytest
import shapely

from tests.geometry.surfaces.conftest import Drawing, in_rows, least_stagger, levels, pieces

On = Callable[..., Drawing]


@pytest.mark.parametrize("tail", ["square", "pointed", "round"])
def test_joints_stand_over_the_middle_of_the_tile_below(on: On, body: shapely.Polygon, tail: str) -> None:
    marks, found = on(body, "shingles", width=8.0, shown=10.0, tail=tail)
    assert found == ()
    bottoms = [10.0 * k for k in range(9)]
    rows = in_rows(marks, bottoms)
    assert least_stagger(rows) == pytest.approx(4.0)
    tail_height = {"square": 0.0, "pointed": 3.2, "round": 4.0}[tail]
    for k, row in enumerate(rows[:8]):
        shaped = tail_height if k else 0.0  # the lowest row ends with the wall
        ends, middles = pieces(body, row, bottoms[k] + (10.0 + shaped) / 2.0)
        assert min(ends) >= 2.0 - 0.002
        assert middles == pytest.approx([8.0] * len(middles))


def test_square_rows_begin_at_the_lower_edge(on: On, body: shapely.Polygon) -> None:
    assert levels(on(body, "shingles", width=8.0, shown=10.0)[0]) == pytest.approx([10.0 * k for k in range(1, 9)])


def test_round_ends_are_half_circles(on: On) -> None:
    marks, _ = on(shapely.box(0.0, 0.0, 200.0, 60.0), "shingles", width=8.0, shown=10.0, tail="round")
    ends = [m for m in marks if len(m.path.points) > 2]
    assert len(ends) == 5  # one long line for each row but the lowest
    heights = [y for _, y in ends[0].path.points]
    assert max(heights) - min(heights) == pytest.approx(4.0, abs=1e-6)  # half of the width


def test_ends_higher_than_their_row(on: On, body: shapely.Polygon) -> None:
    (finding,) = on(body, "shingles", width=20.0, shown=10.0, tail="round")[1]
    assert finding.check == "geometry/impossible-sizes" and finding.limit == pytest.approx(10.0 / 0.9)
