from math import inf, pi
from types import SimpleNamespace

import numpy as np
import pytest
import shapely

from publisher.design import Figure
from publisher.joints.footing import areal_mass, hull_sides
from publisher.joints.stacks.balance import Balance, balance_of
from publisher.joints.stacks.layers import lay_all
from publisher.joints.stacks.plan_geometry import PlanGeometry
from publisher.joints.stacks.treads import treads_of


def balance(make: SimpleNamespace, plans: tuple[object, ...], *parts: object, faces: str = "bare") -> Balance:
    by_id = {p.id: p for p in parts}  # type: ignore[attr-defined]
    _, (stack,) = lay_all(plans, by_id)  # type: ignore[arg-type]
    plan = PlanGeometry(stack.layers, by_id)
    every = treads_of(stack, plan, inf, range(len(stack.layers)))
    return balance_of(
        stack, plan, treads_of(stack, plan, inf), every, by_id, {"foam": make.board(faces=faces)}, Figure()
    )


def test_the_assumed_masses(make: SimpleNamespace) -> None:
    """150 g/m² bare and 300 g/m² with both papers, for 5 mm board (stated assumptions)."""
    assert areal_mass(make.board(), 5.0) * 1e6 == pytest.approx(150)
    assert areal_mass(make.board(faces="paper_both"), 5.0) * 1e6 == pytest.approx(300)


def test_two_blocks_by_hand(make: SimpleNamespace) -> None:
    """Base 40 × 40, on it 100 × 40 shifted so that 60 mm overhang: areas 1600 and 4000, centroids at 20 and 50."""
    base, beam = make.rectangle("base", 0, 0, 40, 40), make.rectangle("beam", 0, 0, 100, 40)
    found = balance(make, (make.stack("s", ("base", 1, 0.0, (0, 0)), ("beam", 1, 0.0, (0, 0))),), base, beam)
    centre = (1600 * 20 + 4000 * 50) / 5600
    assert found.empty == pytest.approx(40 - centre)
    assert found.empty < 0
    # two 30 g figures at the far end of the beam: m = 0.24 g + 0.6 g of board
    mass = 5600 * 150e-6
    assert found.mass == pytest.approx(mass)
    assert found.with_figures == pytest.approx(40 - (mass * centre + 60 * 100) / (mass + 60), abs=1e-9)


def test_the_worked_example_a_light_stair_proves_nothing_empty(make: SimpleNamespace) -> None:
    """A 100 mm stair of papered board, about 48 g, balances empty by tens of mm and tips with one 30 g figure outside."""
    step = make.stair_layer(core=37.4, reach=108.3)
    plan = (make.stack("s", ("step", 20, 20.0, (0, 0))),)
    found = balance(make, plan, step, faces="paper_both")
    assert found.mass == pytest.approx(48, abs=2)
    assert 30 < found.empty < 40
    assert found.with_figures < 0
    # one figure: moment about the hull's nearest side, with the hull of the lowest layer
    hull = shapely.convex_hull(shapely.Polygon(step.outline.outer.points))
    normals, limits = hull_sides(hull)
    turned = [step.outline.outer.points]
    centre = np.mean([_turn(_centroid(turned[0]), 20 * k) for k in range(20)], axis=0)
    outer = np.array([_turn((108.3, 0.0), a) for a in range(0, 420, 2)])
    tips = (found.mass * (normals @ centre) + 30 * (normals @ outer.T).max(axis=1)) / (found.mass + 30) > limits
    assert tips.any()


def test_least_plinth_radius_of_the_demo_stair_is_76(make: SimpleNamespace) -> None:
    """14 layers of 5 mm bare board, two 30 g figures on the worst steps: a plinth of radius 76 or more."""
    found = balance(make, (make.stack("s", ("step", 14, 20.0, (0, 0))),), make.stair_layer())
    assert 75 < found.plinth_radius <= 76
    wide = make.disc(radius=found.plinth_radius + 0.1)
    held = balance(
        make, (make.stack("s", ("plinth", 1, 0.0, (0, 0)), ("step", 14, 20.0, (0, 0))),), wide, make.stair_layer()
    )
    assert 0 <= held.with_figures < 0.2
    narrow = make.disc(radius=found.plinth_radius - 0.1)
    tips = balance(
        make, (make.stack("s", ("plinth", 1, 0.0, (0, 0)), ("step", 14, 20.0, (0, 0))),), narrow, make.stair_layer()
    )
    assert tips.with_figures < 0


def test_a_loose_section_must_stand_on_its_own_contact(make: SimpleNamespace) -> None:
    block, beam = make.rectangle("block", 0, 0, 60, 60), make.rectangle("beam", 0, 0, 100, 20)
    plans = (
        make.stack("a_low", ("block", 2, 0.0, (0, 0))),
        make.stack("a_top", ("beam", 1, 0.0, (0, 0)), on="a_low", loose=True),
    )
    assert balance(make, plans, block, beam).empty == pytest.approx(10 - 0, abs=1e-6)  # 20 wide: 10 to either side
    glued = (plans[0], make.stack("a_top", ("beam", 1, 0.0, (0, 0)), on="a_low"))
    assert balance(make, glued, block, beam).empty > 10


def test_hull_sides_of_a_square() -> None:
    normals, limits = hull_sides(shapely.box(-2, -1, 2, 1))
    assert sorted(limits) == pytest.approx([1, 1, 2, 2])
    assert np.hypot(normals[:, 0], normals[:, 1]) == pytest.approx(np.ones(4))
    assert hull_sides(shapely.LineString([(0, 0), (1, 1)]))[1][0] == -inf


def _centroid(points: tuple[tuple[float, float], ...]) -> tuple[float, float]:
    p = np.asarray(points)
    q = np.roll(p, -1, axis=0)
    cross = p[:, 0] * q[:, 1] - q[:, 0] * p[:, 1]
    return tuple(((p + q) * cross[:, None]).sum(axis=0) / (3 * cross.sum()))


def _turn(point: tuple[float, float], degrees: float) -> tuple[float, float]:
    c, s = np.cos(degrees * pi / 180), np.sin(degrees * pi / 180)
    return float(c * point[0] - s * point[1]), float(s * point[0] + c * point[1])
