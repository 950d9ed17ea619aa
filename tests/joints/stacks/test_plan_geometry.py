from types import SimpleNamespace

import numpy as np
import pytest

from publisher.joints.stacks.layers import lay_all
from publisher.joints.stacks.plan_geometry import PlanGeometry


def test_contact_bare_and_overhang_of_shifted_rectangles(make: SimpleNamespace) -> None:
    parts = {"a": make.rectangle("a", 0, 0, 60, 40)}
    (stack,), _ = lay_all((make.stack("s", ("a", 5, 0.0, (15, 0))),), parts)
    plan = PlanGeometry(stack.layers, parts)
    contact = plan.contact(2)
    assert contact.area == pytest.approx(45 * 40)
    assert contact.share == pytest.approx(0.75)
    assert contact.reach == pytest.approx(15)
    assert plan.bare(2).bounds == pytest.approx((30, 0, 45, 40))
    assert plan.covering(0) == []


def test_layers_that_come_over_a_tread_again(make: SimpleNamespace) -> None:
    parts = {"a": make.rectangle("a", 0, 0, 60, 40), "lid": make.rectangle("lid", 0, 0, 100, 40)}
    plan = make.stack("s", ("a", 3, 0.0, (15, 0)), ("lid", 1, 0.0, (-30, 0)))
    (stack,), _ = lay_all((plan,), parts)
    assert PlanGeometry(stack.layers, parts).covering(0) == [3]


def test_pairs_that_lie_alike_are_computed_once(make: SimpleNamespace) -> None:
    parts = {"step": make.stair_layer()}
    (stack,), _ = lay_all((make.stack("s", ("step", 30, 20.0, (0, 0))),), parts)
    plan = PlanGeometry(stack.layers, parts)
    assert plan.contact(0) is plan.contact(17)
    assert plan.key(0, 4) != plan.key(0, 5)


def test_random_stacks_agree_with_a_raster(make: SimpleNamespace) -> None:
    """Contact and bare area of random polygons against a count of points 0.5 mm apart."""
    rng = np.random.default_rng(7)
    for _ in range(5):
        angles = np.sort(rng.uniform(0, 2 * np.pi, 9))
        star = rng.uniform(20, 60, 9)
        corners = [(float(r * np.cos(a)), float(r * np.sin(a))) for a, r in zip(angles, star, strict=True)]
        parts = {"p": make.polygon("p", corners)}
        turn, shift = float(rng.uniform(-60, 60)), (float(rng.uniform(-8, 8)), float(rng.uniform(-8, 8)))
        (stack,), _ = lay_all((make.stack("s", ("p", 3, turn, shift)),), parts)
        plan = PlanGeometry(stack.layers, parts)
        grid = np.stack(np.meshgrid(np.arange(-90, 90, 0.5), np.arange(-90, 90, 0.5)), axis=-1).reshape(-1, 2)
        inside = [_within(stack.layers[k].pose.apply_all(tuple(corners)), grid) for k in (0, 1)]
        assert plan.contact(0).area == pytest.approx((inside[0] & inside[1]).sum() / 4, rel=0.02)
        assert plan.bare(0).area == pytest.approx((inside[0] & ~inside[1]).sum() / 4, abs=25)


def _within(corners: tuple[tuple[float, float], ...], points: np.ndarray) -> np.ndarray:
    """Even-odd rule, by hand: an independent test of which points lie in a polygon."""
    found = np.zeros(len(points), dtype=bool)
    for (x0, y0), (x1, y1) in zip(corners, corners[1:] + corners[:1], strict=True):
        crosses = (y0 > points[:, 1]) != (y1 > points[:, 1])
        at = x0 + (points[:, 1] - y0) / (y1 - y0 + 1e-300) * (x1 - x0)
        found ^= crosses & (points[:, 0] < at)
    return found
