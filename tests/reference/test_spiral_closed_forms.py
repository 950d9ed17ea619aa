"""Facts of spirals against closed forms, on random spirals.

A step is a sector between core radius r and reach R with sweep σ; each layer is turned by α; n = 360/α, m = σ/α.
The layers are built here from polygons of the same area as the circles they stand for (radius r·√(θ/sin θ) for steps of
θ), with α a whole number of steps, so that areas agree with the closed forms to rounding.

Facts of the trade (common practice, no source): 24 layers of 15° make a full turn, 22 stop short of covering a step.
"""

from math import ceil, cos, degrees, hypot, inf, pi, radians, sin, sqrt
from random import Random

import pytest

from publisher.basics import Place, polyline
from publisher.design import Board, SheetSize, StackPlan, StackRow
from publisher.geometry import Part, Region
from publisher.joints.stacks.facts import StackReport, facts_of, report_on
from publisher.joints.stacks.layers import lay_all
from tests.searches.profile import seeds

HERE = Place("spec.yaml", 1, 1)
BOARD = Board("foam", 5.0, 0.2, "bare", (SheetSize("20 x 30 in", 508.0, 762.0),), 1.0, 3.0, "none", HERE)


def arc(radius: float, first: float, last: float, step: float) -> list[tuple[float, float]]:
    """Points from first to last (degrees), ``step`` apart, on the circle whose polygon has the area of ``radius``."""
    theta = radians(step)
    equal = radius * sqrt(theta / sin(theta))
    count = round((last - first) / step)
    return [(equal * cos(radians(first + i * step)), equal * sin(radians(first + i * step))) for i in range(count + 1)]


def part(part_id: str, points: list[tuple[float, float]], thickness: float) -> Part:
    ring = polyline(points, True, "rim")
    region = Region(ring)
    return Part(
        part_id, "A", part_id, "foam", thickness, "", region, region, (), (), (), 1, 0, 0, "any", 0.0, HERE
    )  # fmt: skip


def step_of(r: float, reach: float, n: int, m: int, thickness: float) -> Part:
    alpha = 360.0 / n
    step = alpha / ceil(alpha / 1.0)  # 1° at 150 mm: a sagitta of 0.006 mm
    points = arc(reach, 0, m * alpha, step) + arc(r, m * alpha, 360, step)
    return part("step", points, thickness)


def spiral(rng: Random) -> tuple[float, float, int, int, float]:
    r = rng.uniform(10, 60)
    return r, r + rng.uniform(20, 100), rng.randint(8, 36), rng.randint(2, 4), rng.uniform(2, 10)


def facts(plan: StackPlan, *parts: Part, height: float = inf) -> tuple[dict[str, float], StackReport]:
    by_id = {p.id: p for p in parts}
    (stack,), _ = lay_all((plan,), by_id)
    report = report_on(stack, by_id, {"foam": BOARD}, height, HERE)
    return {f.name.removeprefix("s."): f.value for f in facts_of(report, by_id, {"foam": BOARD})}, report


def plan(count: int, turn: float, plinth: bool = False) -> StackPlan:
    rows = (StackRow("step", count, turn, (0.0, 0.0), HERE),)
    base = (StackRow("plinth", 1, 0.0, (0.0, 0.0), HERE),) if plinth else ()
    return StackPlan("s", base + rows, "", 0.0, False, HERE)


def tread_circle(r: float, reach: float, alpha: float) -> float:
    s = sin(radians(alpha) / 2)
    return min(reach * s / (1 + s), (reach - r) / 2)


@pytest.mark.search
@seeds(1, 60)
def test_random_spirals_agree_with_the_closed_forms(seed: int) -> None:
    rng = Random(seed)
    for _ in range(10):
        r, reach, n, m, t = spiral(rng)
        alpha, ring = 360.0 / n, pi * (reach * reach - r * r) / 360.0
        count = min(n - m + 1, 5)  # the higher layers lie alike; the turn as a whole is tested below
        found, report = facts(plan(count, alpha), step_of(r, reach, n, m, t))
        assert found["base_that_stands"] == pytest.approx(2 * tread_circle(r, reach, alpha), abs=0.01)
        assert found["tread"] == pytest.approx(alpha * ring, rel=1e-6)
        contact = report.plan.contact(0).area - pi * r * r
        assert contact == pytest.approx((m - 1) * alpha * ring, rel=1e-6)
        assert found["contact_least"] == pytest.approx(
            (pi * r * r + (m - 1) * alpha * ring) / (pi * r * r + m * alpha * ring), rel=1e-6
        )
        assert found["layers_to_a_turn"] == pytest.approx(n)
        assert found["height"] == pytest.approx(count * t)


@pytest.mark.search
@seeds(1, 60)
def test_the_layer_that_covers_comes_where_the_closed_form_says(seed: int) -> None:
    rng = Random(1000 + seed)
    for _ in range(2):
        r, reach, n, m, t = spiral(rng)
        open_stair, _ = facts(plan(n - m + 1, 360.0 / n), step_of(r, reach, n, m, t))
        assert open_stair["headroom"] == open_stair["cover_begins"] == inf
        found, report = facts(plan(n - m + 2, 360.0 / n), step_of(r, reach, n, m, t), height=0.5 * t)
        assert found["headroom"] == pytest.approx((n - m) * t)
        # layer k + n − m + 1 is the first over tread k: the lowest tread's is number n − m + 2 from 1
        assert found["cover_begins"] == n - m + 2
        assert [tread.covered_by for tread in report.treads if tread.covered_by is not None] == [n - m + 1]
        # a tread that is covered only higher up than the figure is high stays a tread
        assert found["base_that_stands"] == pytest.approx(2 * tread_circle(r, reach, 360.0 / n), abs=0.01)


@pytest.mark.search
@seeds(1, 60)
def test_the_centre_of_mass_is_the_mean_of_the_turned_centroids(seed: int) -> None:
    rng = Random(2000 + seed)
    for _ in range(3):
        r, reach, n, m, t = spiral(rng)
        count, alpha = rng.randint(2, n), radians(360.0 / n)
        half = m * alpha / 2
        plinth = part("plinth", arc(reach, 0, 360, 1.0)[:-1], t)
        found, _ = facts(plan(count, degrees(alpha), plinth=True), step_of(r, reach, n, m, t), plinth)
        sector = m * alpha * (reach**2 - r**2) / 2
        arm = 2.0 / 3.0 * sin(half) / half * (reach**3 - r**3) / (reach**2 - r**2)
        x = sum(sector * arm * cos(half + k * alpha) for k in range(count))
        y = sum(sector * arm * sin(half + k * alpha) for k in range(count))
        whole = count * (pi * r * r + sector) + pi * reach * reach
        # the hull of the plinth is its polygon: the nearest side lies between both radii of its flattening
        assert found["balance_margin"] == pytest.approx(reach - hypot(x, y) / whole, abs=0.01)


def test_a_full_turn_has_its_centre_of_mass_on_the_axis() -> None:
    step, plinth = step_of(30, 92, 18, 2, 5), part("plinth", arc(92, 0, 360, 1.0)[:-1], 5)
    found, _ = facts(plan(18, 20, plinth=True), step, plinth)
    assert found["balance_margin"] == pytest.approx(92, abs=0.01)


def test_reach_for_a_base_is_the_inverse_of_the_tread_circle() -> None:
    """R = max((b/2)(1 + sin(α/2))/sin(α/2), r + b): 18 to a turn and 32 mm bases need 108.266."""
    s = sin(radians(10))
    reach = max(16 * (1 + s) / s, 30 + 32)
    assert reach == pytest.approx(108.14, abs=0.005)
    found, _ = facts(plan(14, 20), step_of(30, reach, 18, 2, 5))
    assert found["base_that_stands"] == pytest.approx(32, abs=0.01)


@pytest.mark.parametrize(("layers", "covered"), [(22, False), (23, False), (24, True)])
def test_twenty_two_layers_of_fifteen_degrees_leave_every_step_open(layers: int, covered: bool) -> None:
    found, _ = facts(plan(layers, 15), step_of(30, 92, 24, 2, 5))
    assert (found["headroom"] < inf) is covered
    assert found["total_turn"] == (layers - 1) * 15


def test_twenty_four_layers_of_fifteen_degrees_make_a_full_turn() -> None:
    found, _ = facts(plan(24, 15), step_of(30, 92, 24, 2, 5))
    assert found["layers_to_a_turn"] == 24
    assert found["headroom"] == pytest.approx(22 * 5)
    assert found["cover_begins"] == 24
