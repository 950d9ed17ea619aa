"""No-fit polygons against Clipper's own Minkowski sum (every edge of one with every edge of the other: slow and plain)."""

from math import pi

import numpy as np
import pyclipper
import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from publisher.material.nfp import minkowski, no_fit, no_fit_fixed
from publisher.material.outlines import IntPath, on_grid, outline
from tests.searches.profile import cases


def region(rings: object) -> shapely.Geometry:
    """Return rings as a shapely geometry by their direction: outsides anticlockwise."""
    parts = [(shapely.Polygon(r), pyclipper.Orientation([tuple(p) for p in r])) for r in rings]  # type: ignore[attr-defined]
    solid = shapely.union_all([p for p, outside in parts if outside])
    return solid.difference(shapely.union_all([p for p, outside in parts if not outside]))


def plain_sum(a: IntPath, b: IntPath) -> shapely.Geometry:
    """Return a ⊕ b by sweeping one outline along the other and filling in one copy of each."""
    swept = pyclipper.MinkowskiSum(a.tolist(), b.tolist(), True)
    engine = pyclipper.Pyclipper()
    engine.AddPaths(swept, pyclipper.PT_SUBJECT, True)
    engine.AddPath((a + b[0]).tolist(), pyclipper.PT_SUBJECT, True)
    engine.AddPath((b + a[0]).tolist(), pyclipper.PT_SUBJECT, True)
    return region(engine.Execute(pyclipper.CT_UNION, pyclipper.PFT_NONZERO, pyclipper.PFT_NONZERO))


@st.composite
def stars(draw: st.DrawFn) -> IntPath:
    """Polygons, mostly not convex, whose corners go round a centre."""
    n = draw(st.integers(3, 12))
    radii = draw(st.lists(st.integers(10, 60), min_size=n, max_size=n))
    start = draw(st.integers(0, 89))
    angle = np.radians(start) + 2 * pi * np.arange(n) / n
    return on_grid(np.column_stack((radii * np.cos(angle), radii * np.sin(angle))))


@pytest.mark.search
@cases(20, 3000)
@given(stars(), stars())
def test_the_sum_is_that_of_clipper(a: IntPath, b: IntPath) -> None:
    """Both ways of computing a ⊕ b agree to rounding."""
    ours, plain = region(minkowski(a, b)), plain_sum(a, b)
    assert ours.symmetric_difference(plain).area < 1e-6 * plain.area


@pytest.mark.search
@cases(15, 1000)
@given(stars())
def test_parallel_edges(a: IntPath) -> None:
    """A shape beside itself, and beside itself turned by a half turn: every edge has a parallel one."""
    for b in (a, -a):
        ours, plain = region(minkowski(a, b)), plain_sum(a, b)
        assert ours.symmetric_difference(plain).area < 1e-6 * plain.area


def test_two_rectangles() -> None:
    """Closed form: the sum of two boxes is a box of the summed sides."""
    a, b = on_grid(np.array([(0, 0), (3, 0), (3, 2), (0, 2.0)])), on_grid(np.array([(0, 0), (5, 0), (5, 7), (0, 7.0)]))
    (ring,) = no_fit_fixed(a, b)
    assert ring.min(axis=0).tolist() == [-50_000, -70_000]
    assert ring.max(axis=0).tolist() == [30_000, 20_000]


@pytest.mark.parametrize("turn", [0.0, 17.0, 90.0, 200.0])
@pytest.mark.parametrize("mirrored", [False, True])
def test_a_piece_on_the_border_touches(shop: object, turn: float, mirrored: bool) -> None:
    """A piece put on a corner of the no-fit polygon touches the fixed one and does not overlap it; turned and mirrored alike."""
    shape = outline(shop.layer(30.0, 92.0, 40.0), 1.0)  # type: ignore[attr-defined]
    other = outline((shop.box(20.0, 50.0),), 1.0)  # type: ignore[attr-defined]
    fixed = shapely.Polygon(shape.path(turn, mirrored, True))
    rings = no_fit((shape, turn, mirrored), (other, 30.0, False))
    moved = other.path(30.0, False, True)
    for x, y in rings[0][::7]:
        there = shapely.Polygon(moved + np.array((x, y)))
        assert fixed.distance(there) <= 3.0
        assert fixed.intersection(there).area < 3.0 * fixed.length  # a few grid units along an edge: rounding
