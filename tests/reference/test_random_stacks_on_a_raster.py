"""Facts of random stacks that are no spirals against brute force: every layer rasterised at 0.1 mm, by plain counting.

Each stack is five or six layers of a random star with its own turns and shifts. Nothing of the geometry library is used here:
points lie in a polygon by the even-odd rule, distances are between grid points, balance is a centroid against the farthest ground
points in 720 directions. All agree within what the grid can show.
"""

import itertools
from math import inf
from random import Random

import numpy as np
import numpy.typing as npt
import pytest

from publisher.basics import Place, Pose, polyline
from publisher.design import Board, SheetSize, StackPlan, StackRow
from publisher.geometry import Part, Region
from publisher.joints.stacks.facts import facts_of, report_on
from publisher.joints.stacks.layers import lay_all
from tests.searches.profile import seeds

HERE = Place("spec.yaml", 1, 1)
BOARD = Board("foam", 5.0, 0.2, "bare", (SheetSize("20 x 30 in", 508.0, 762.0),), 1.0, 3.0, "none", HERE)
GRID = 0.1  # mm
SEEN = 0.16  # mm: half a diagonal of the grid at both ends of a distance

Mask = npt.NDArray[np.bool_]
Points = npt.NDArray[np.float64]


def star(rng: Random) -> list[tuple[float, float]]:
    angles = sorted(rng.uniform(0, 2 * np.pi) for _ in range(9))
    return [(r * float(np.cos(a)), r * float(np.sin(a))) for a in angles for r in (rng.uniform(9, 16),)]


def within(corners: tuple[tuple[float, float], ...], x: Points, y: Points) -> Mask:
    found = np.zeros(x.shape, dtype=bool)
    for (x0, y0), (x1, y1) in zip(corners, corners[1:] + corners[:1], strict=True):
        crosses = (y0 > y) != (y1 > y)
        found ^= crosses & (x < x0 + (y - y0) / (y1 - y0 + 1e-300) * (x1 - x0))
    return found


def rim(mask: Mask) -> Mask:
    """Grid points of a mask beside a grid point that is not of it."""
    inner = mask.copy()
    for axis in (0, 1):
        for step in (-1, 1):
            inner &= np.roll(mask, step, axis)
    return mask & ~inner


class Raster:
    """A stack as grids of points, and distances between them."""

    def __init__(self, corners: tuple[tuple[float, float], ...], poses: tuple[Pose, ...]) -> None:
        placed = [pose.apply_all(corners) for pose in poses]
        low, high = np.min(placed, axis=(0, 1)) - 1, np.max(placed, axis=(0, 1)) + 1
        self.x, self.y = np.meshgrid(np.arange(low[0], high[0], GRID), np.arange(low[1], high[1], GRID))
        self.layers = [within(p, self.x, self.y) for p in placed]

    def points(self, mask: Mask) -> Points:
        return np.column_stack([self.x[mask], self.y[mask]])

    def farthest(self, mask: Mask, base: Mask) -> float:
        """The greatest distance from a point of the mask to the nearest of the base."""
        return self.nearest(rim(mask & ~base), rim(base)).max(initial=0.0) if (mask & ~base).any() else 0.0

    def nearest(self, mask: Mask, to: Mask) -> Points:
        a, b = self.points(mask), self.points(to)
        return np.array([np.hypot(*(b - p).T).min() for p in a])

    def circle(self, mask: Mask) -> float:
        """The greatest distance from a point of the mask to the nearest outside it."""
        outside, every = self.points(rim(~mask)), self.points(mask)
        coarse = every[::7]  # 0.7 mm apart along the rows
        away = np.array([np.hypot(*(outside - p).T).min() for p in coarse])
        hopeful = coarse[away > away.max() - 0.5]
        near = every[np.array([np.hypot(*(hopeful - p).T).min() for p in every]) < 0.5]
        return float(max(np.hypot(*(outside - p).T).min() for p in near))


@pytest.mark.search
@seeds(1, 40)
def test_facts_agree_with_counting(seed: int) -> None:
    rng = Random(seed)
    corners = tuple(star(rng))
    ring = polyline(corners, True, "rim")
    part = Part("p", "A", "p", "foam", 5.0, "", Region(ring), Region(ring), (), (), (), 1, 0, 0, "any", 0.0, HERE)
    turn, shift = rng.uniform(-50, 50), (rng.uniform(-2, 2), rng.uniform(-2, 2))
    rows = (
        StackRow("p", 3, turn, shift, HERE),
        StackRow("p", rng.randint(2, 3), -turn * 0.7, (shift[1], shift[0]), HERE),
    )
    (stack,), _ = lay_all((StackPlan("s", rows, "", 0.0, False, HERE),), {"p": part})
    report = report_on(stack, {"p": part}, {"foam": BOARD}, inf, HERE)
    found = {f.name.removeprefix("s."): f.value for f in facts_of(report, {"p": part}, {"foam": BOARD})}
    raster = Raster(corners, tuple(layer.pose for layer in stack.layers))
    masks, count = raster.layers, len(raster.layers)
    per = GRID * GRID

    shares = [(a & b).sum() / min(a.sum(), b.sum()) for a, b in itertools.pairwise(masks)]
    assert [found[f"layer_{k + 2}.contact"] for k in range(count - 1)] == pytest.approx(shares, abs=0.01)
    reach = [raster.farthest(b, a & b) for a, b in itertools.pairwise(masks)]
    assert [found[f"layer_{k + 2}.overhang"] for k in range(count - 1)] == pytest.approx(reach, abs=SEEN)
    assert found["overhang_reach"] == pytest.approx(max(reach), abs=SEEN)

    ground, flying = masks[0], 0.0
    for mask in masks[1:]:
        ground = ground & mask
        flying = max(flying, raster.farthest(mask, ground))
    assert found["flying_reach"] == pytest.approx(flying, abs=SEEN)

    for k in range(count):
        bare = masks[k] & ~above_of(masks, k)
        key = f"layer_{k + 1}.tread"
        if key in found:
            assert found[key] == pytest.approx(bare.sum() * per, abs=3.0)
            if bare.sum() * per > 20.0:
                circle = 2 * raster.circle(bare)
                assert found[f"layer_{k + 1}.base_that_stands"] == pytest.approx(circle, abs=2 * SEEN)
        else:
            assert (masks[k] & ~masks[k + 1]).sum() * per < 3.0

    middles = np.array([raster.points(mask).mean(axis=0) for mask in masks])
    middle = middles.mean(axis=0)  # equal layers weigh the same
    foot = raster.points(rim(masks[0]))
    ways = np.array([(np.cos(a), np.sin(a)) for a in np.linspace(0, 2 * np.pi, 720, endpoint=False)])
    support = (ways @ foot.T).max(axis=1)
    assert found["balance_margin"] == pytest.approx(float((support - ways @ middle).min()), abs=SEEN)
    mass = found["mass"]
    treads = [m & ~above_of(masks, k) for k, m in enumerate(masks) if f"layer_{k + 1}.tread" in found]
    outermost = np.sort([(ways @ raster.points(rim(t)).T).max(axis=1) for t in treads], axis=0)[-2:]
    both = (mass * (ways @ middle) + 30.0 * outermost.sum(axis=0)) / (mass + 2 * 30.0)
    one = (mass * (ways @ middle) + 30.0 * outermost[-1]) / (mass + 30.0)
    worse = float(np.minimum(support - both, support - one).min())
    assert found["balance_with_figures"] == pytest.approx(worse, abs=2 * SEEN)


def above_of(masks: list[Mask], k: int) -> Mask:
    above = np.zeros_like(masks[0])
    for mask in masks[k + 1 :]:
        above |= mask
    return above
