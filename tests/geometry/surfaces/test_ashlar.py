"""Ashlar: courses of two heights, blocks of one or many lengths, joints that never come near those below."""

from collections.abc import Callable

import pytest
import shapely

from tests.geometry.surfaces.conftest import Drawing, in_rows, least_stagger, levels, pieces

On = Callable[..., Drawing]


def test_high_and_low_courses_in_turn(on: On, body: shapely.Polygon) -> None:
    marks, found = on(body, "ashlar", length=20.0, height=9.0, low=6.0)
    assert found == ()
    assert levels(marks) == pytest.approx([9, 15, 24, 30, 39, 45, 54, 60, 69, 75])
    rows = in_rows(marks, [0.0, *levels(marks)])
    assert least_stagger(rows) == pytest.approx(10.0)


@pytest.mark.parametrize("bond", ["running", "one_third", "random"])
@pytest.mark.parametrize("seed", range(8))
def test_bond_and_end_blocks(on: On, body: shapely.Polygon, bond: str, seed: int) -> None:
    marks, found = on(body, "ashlar", seed=seed, length=16.0, height=6.0, bond=bond)
    assert found == ()
    bottoms = [6.0 * k for k in range(14)]
    rows = in_rows(marks, bottoms)
    # TMS 402, running bond: at least a quarter of the unit's length
    assert least_stagger(rows) >= 16.0 / 4.0 - 1e-6
    for k, row in enumerate(rows[:13]):
        ends, middles = pieces(body, row, bottoms[k] + 3.0)
        assert min(ends) >= 4.0 - 0.002
        assert min(middles, default=16.0) >= 0.7 * 16.0 - 1e-5
        assert max(middles, default=16.0) <= 1.3 * 16.0 + 1e-5


def test_random_blocks_differ_by_seed_and_row(on: On) -> None:
    wall = shapely.box(0.0, 0.0, 300.0, 60.0)
    one, two = (on(wall, "ashlar", seed=s, length=16.0, height=6.0, bond="random")[0] for s in (1, 2))
    assert one != two
    rows = in_rows(one, [6.0 * k for k in range(10)])
    assert len({tuple(row) for row in rows}) == 10


@pytest.mark.parametrize(("sizes", "name"), [({"height": 30.0}, "height"), ({"height": 6.0, "low": 9.0}, "low")])
def test_blocks_that_cannot_be(on: On, body: shapely.Polygon, sizes: dict[str, float], name: str) -> None:
    marks, found = on(body, "ashlar", length=20.0, **sizes)
    assert marks == ()
    assert [f.check for f in found] == ["geometry/impossible-sizes"]
    assert name in found[0].hint
