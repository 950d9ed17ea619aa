"""Layers seen from above against rays cast through every layer."""

from types import SimpleNamespace

import numpy as np
import pytest
import shapely

from publisher.joints.drawings.lines import Sketch
from publisher.joints.drawings.stack_lines import Slab, draw_slabs
from publisher.joints.drawings.view import STACK_VIEW


def slab(points: list[tuple[float, float]], bottom: float, top: float) -> Slab:
    ring = np.asarray(points, dtype=float)
    return Slab((ring,), (np.ones(len(ring), dtype=bool),), bottom, top, np.zeros((0, 2)))


def lines_of(slabs: list[Slab]) -> shapely.Geometry:
    sketch = Sketch()
    draw_slabs(slabs, STACK_VIEW, sketch)
    return shapely.union_all(np.array(sketch.lines["outline"]))


def on_screen(x: float, y: float, z: float) -> shapely.Point:
    return shapely.Point((STACK_VIEW.axes()[:2] @ np.array([x, y, z])).tolist())


def blocked(point: np.ndarray, slabs: list[Slab]) -> bool:
    """Walk from a point towards the viewer in steps of 0.2 mm and look whether a layer is met."""
    walk = point + np.arange(0.3, 150, 0.2)[:, None] * STACK_VIEW.axes()[2]
    for s in slabs:
        inside = (walk[:, 2] > s.bottom + 0.05) & (walk[:, 2] < s.top - 0.05)
        if inside.any() and shapely.contains_xy(shapely.Polygon(s.rings[0]), walk[inside, 0], walk[inside, 1]).any():
            return True
    return False


def star(rng: np.random.Generator) -> list[tuple[float, float]]:
    angles = np.sort(rng.uniform(0, 2 * np.pi, 8))
    return [(float(r * np.cos(a)), float(r * np.sin(a))) for a, r in zip(angles, rng.uniform(15, 50, 8), strict=True)]


@pytest.mark.parametrize("seed", range(5))
def test_edges_of_random_layers_agree_with_rays(seed: int) -> None:
    rng = np.random.default_rng(seed)
    slabs = [slab(star(rng), 6.0 * i, 6.0 * i + 6.0) for i in range(4)]
    drawn = lines_of(slabs)
    checked = hidden = 0
    for s in slabs:
        area = shapely.Polygon(s.rings[0])
        for start, end in zip(s.rings[0], np.roll(s.rings[0], -1, axis=0), strict=True):
            for share in rng.uniform(0.1, 0.9, 5):
                x, y = start + share * (end - start)
                point = np.array([x, y, s.top])
                free = not blocked(point + np.array([0, 0, 0.06]), slabs)
                # what lies within half a millimetre of being hidden or seen turns on the step of the walk
                moved = [
                    not blocked(point + np.array([dx, dy, 0.06]), slabs) for dx in (-0.5, 0.5) for dy in (-0.5, 0.5)
                ]
                if any(m != free for m in moved) or area.area < 10:
                    continue
                checked += 1
                hidden += not free
                seen = shapely.distance(drawn, on_screen(x, y, s.top)) < 0.06
                if free:
                    assert seen, (seed, x, y, s.top)
    assert checked > 60
    assert hidden > 5


def test_nothing_is_drawn_of_a_layer_where_a_higher_one_hides_it() -> None:
    checked = 0
    for seed in range(12):
        rng = np.random.default_rng(50 + seed)
        slabs = [slab(star(rng), 6.0 * i, 6.0 * i + 6.0) for i in range(4)]
        together = lines_of(slabs)
        for at, s in enumerate(slabs[:-1]):
            higher, above = slabs[at + 1 :], lines_of(slabs[at + 1 :])
            for x, y in s.rings[0]:
                around = [(x + dx, y + dy) for dx in (-0.6, 0.0, 0.6) for dy in (-0.6, 0.0, 0.6)]
                deep = all(blocked(np.array([px, py, s.top]), higher) for px, py in around)
                corner = on_screen(float(x), float(y), s.top)
                # where no line of a higher layer passes, no line at all may pass over a corner hidden so deep
                if deep and shapely.distance(above, corner) > 0.5:
                    checked += 1
                    assert shapely.distance(together, corner) > 0.2, (seed, x, y)
    assert checked > 30


def test_a_box_shows_nine_edges(make: SimpleNamespace) -> None:
    drawn = lines_of([slab([(0, 0), (40, 0), (40, 30), (0, 30)], 0, 10)])
    up = STACK_VIEW.axes()[:2]
    length = sum(float(np.hypot(*(up @ v))) * n for v, n in (([40, 0, 0], 3), ([0, 30, 0], 3), ([0, 0, 10], 3)))
    assert drawn.length == pytest.approx(length, rel=1e-6)


def test_a_disc_shows_its_rim_twice_and_two_silhouettes(make: SimpleNamespace) -> None:
    rim = np.asarray(make.arc((0, 0), 40.0, 0, 360)[:-1])
    sketch = Sketch()
    draw_slabs([Slab((rim,), (np.zeros(len(rim), dtype=bool),), 0.0, 10.0, rim[::10])], STACK_VIEW, sketch)
    drawn = shapely.union_all(np.array(sketch.lines["outline"]))
    up = STACK_VIEW.axes()[:2]
    ellipse = shapely.LinearRing(np.column_stack([rim, np.full(len(rim), 10.0)]) @ up.T).length
    upright = float(np.hypot(*(up @ [0, 0, 10])))
    assert drawn.length == pytest.approx(1.5 * ellipse + 2 * upright, rel=0.01)
    ticks = shapely.get_parts(np.array(sketch.lines["detail"]))
    assert len(ticks) == pytest.approx(len(rim[::10]) / 2, abs=1.5)  # only those on the front
    assert shapely.length(ticks).max() == pytest.approx(upright, rel=0.01)


def test_what_shows_of_a_covered_layer(make: SimpleNamespace) -> None:
    square = [(0.0, 0.0), (40.0, 0.0), (40.0, 40.0), (0.0, 40.0)]
    shown = draw_slabs([slab(square, 0, 5), slab(square, 5, 10)], STACK_VIEW, Sketch())
    flat = abs(float(np.linalg.det(STACK_VIEW.plan_matrix())))
    assert shown[1].area == pytest.approx(1600 * flat)
    assert shown[0].area < 1.0
