import numpy as np
import pytest
import shapely

from publisher.joints.stacks.circles import farthest, largest_circle


def test_the_largest_circle_of_a_rectangle_and_a_triangle() -> None:
    assert largest_circle(shapely.box(0, 0, 30, 20)) == pytest.approx(10, abs=0.002)
    # inradius of a 3-4-5 triangle is 1
    assert largest_circle(shapely.Polygon([(0, 0), (4, 0), (0, 3)])) == pytest.approx(1, abs=0.002)
    assert largest_circle(shapely.Polygon()) == 0.0


def test_farthest_from_a_convex_base_is_a_corner() -> None:
    assert farthest(shapely.box(10, 0, 20, 10), shapely.box(0, 0, 10, 10)) == pytest.approx(10)
    assert farthest(shapely.Polygon(), shapely.box(0, 0, 1, 1)) == 0.0


def test_farthest_over_a_hollow_base_lies_inside() -> None:
    ring = shapely.box(0, 0, 60, 40).difference(shapely.box(10, 10, 50, 30))
    assert farthest(shapely.box(10, 10, 50, 30), ring) == pytest.approx(10, abs=0.02)


def test_farthest_agrees_with_a_fine_grid_for_random_shapes() -> None:
    rng = np.random.default_rng(4)
    for _ in range(10):
        base = shapely.union_all([shapely.box(x, y, x + w, y + h) for x, y, w, h in rng.uniform(5, 40, (3, 4))])
        area = shapely.box(0, 0, 80, 80).difference(base)
        grid = np.stack(np.meshgrid(np.arange(0, 80.01, 0.5), np.arange(0, 80.01, 0.5)), axis=-1).reshape(-1, 2)
        spots = shapely.points(grid[shapely.intersects_xy(area, grid[:, 0], grid[:, 1])])
        brute = float(shapely.distance(spots, base).max())
        assert brute - 1e-9 <= farthest(area, base) <= brute + 0.36  # half a diagonal of the grid


def test_the_largest_circle_of_a_terrace_agrees_with_plain_geometry() -> None:
    """A square ring that is wider on one side: the circle there touches both squares and the outer side."""
    outer = shapely.box(0, 0, 100, 100)
    assert largest_circle(shapely.difference(outer, shapely.box(10, 10, 90, 90))) == pytest.approx(
        10 / (1 + 0.5**0.5), abs=0.01
    )  # in the corner: its centre lies on the diagonal, d/√2-wise between the outer sides and the inner corner
    ring = shapely.difference(
        shapely.Point(0, 0).buffer(50, quad_segs=128), shapely.Point(4, 0).buffer(30, quad_segs=128)
    )
    assert largest_circle(ring) == pytest.approx(12.0, abs=0.01)  # (50 + 4 - 30) / 2
