"""Planks: butt joints that break joint, both ways of running, grain inside each plank."""

from collections.abc import Callable

import pytest
import shapely

from tests.geometry.surfaces.conftest import Drawing, in_rows, least_stagger, levels, pieces

On = Callable[..., Drawing]


@pytest.mark.parametrize("seed", range(10))
def test_butt_joints_break_joint_also_at_openings(on: On, body: shapely.Polygon, seed: int) -> None:
    marks, found = on(body, "planks", seed=seed, width=7.0, length=44.0)
    assert found == ()
    assert levels(marks) == pytest.approx([7.0 * k for k in range(1, 12)])
    bottoms = [7.0 * k for k in range(12)]
    rows = in_rows(marks, bottoms)
    assert least_stagger(rows) >= 44.0 / 4.0 - 1e-6
    for k, row in enumerate(rows[:11]):
        ends, middles = pieces(body, row, bottoms[k] + 3.5)
        assert min(ends) >= 11.0 - 0.002
        assert middles == pytest.approx([44.0] * len(middles))


def test_planks_that_run_up_are_the_same_turned(on: On) -> None:
    lying, _ = on(shapely.box(0.0, 0.0, 120.0, 60.0), "planks", width=7.0, length=44.0, grain=2.0)
    standing, _ = on(shapely.box(0.0, 0.0, 60.0, 120.0), "planks", width=7.0, length=44.0, grain=2.0, run="up")
    turned = {tuple(sorted((y, x) for x, y in m.path.points)) for m in standing}
    assert turned == {tuple(sorted(m.path.points)) for m in lying}


def test_grain_keeps_off_the_joints(on: On) -> None:
    floor = shapely.box(0.0, 0.0, 200.0, 70.0)
    plain, _ = on(floor, "planks", width=7.0, length=44.0)
    grained, _ = on(floor, "planks", width=7.0, length=44.0, grain=2.0)
    joints = shapely.linestrings([m.path.points for m in plain])
    grain = shapely.linestrings([m.path.points for m in set(grained) - set(plain)])
    assert len(grain) > 50
    assert set(plain) <= set(grained)
    assert shapely.distance(grain[:, None], joints[None, :]).min() >= 7.0 / 3.0 - 1e-6


def test_planks_that_cannot_be(on: On, body: shapely.Polygon) -> None:
    assert [f.check for f in on(body, "planks", width=50.0, length=44.0)[1]] == ["geometry/impossible-sizes"]
    (finding,) = on(body, "planks", width=3.0, length=44.0, grain=4.0)[1]
    assert finding.check == "geometry/surface-too-fine"
    assert finding.value == pytest.approx(0.6) and finding.limit == 1.0
