"""Sizes solved for: on plain functions, where the answer is known."""

from math import ceil, radians, sin, sqrt
from random import Random
from types import SimpleNamespace

import pytest

from publisher.design import Fact, Kind, Size
from publisher.joints.advice.solving import MOST_TRIALS, Trials, grid_of, meets, solve
from publisher.joints.facts import NEED_CLOSE


def trials(make: SimpleNamespace, size: Size, of: object) -> Trials:
    def evaluate(tried: Size) -> tuple[Fact, ...] | None:
        assert (tried.name, tried.kind) == (size.name, size.kind)
        value = of(tried.value)  # type: ignore[operator]
        return None if value is None else (Fact("s.x", value, "length"),)

    return Trials(size, evaluate, (Fact("s.x", of(size.value), "length"),))  # type: ignore[operator]


def size(make: SimpleNamespace, value: float, kind: Kind = "length") -> Size:
    return Size("reach", value, kind, "", make.here)


def test_the_reach_for_a_base_of_25_mm_at_15_degrees(make: SimpleNamespace) -> None:
    """R = (b/2)(1 + sin(α/2))/sin(α/2) = 108.266: rounded away from failure 108.3, not 108.2."""
    s = sin(radians(15) / 2)
    assert 12.5 * (1 + s) / s == pytest.approx(108.266, abs=5e-4)
    need = make.need("s.x", 25.0, adjust="reach")
    found = solve(need, trials(make, size(make, 92.0), lambda r: 2 * r * s / (1 + s)))
    assert found.value == pytest.approx(108.3)
    assert found.upward


def test_random_monotone_functions_are_rounded_away_from_failure_within_the_bound(make: SimpleNamespace) -> None:
    rng = Random(7)
    for _ in range(200):
        now, power, upward = rng.uniform(5, 200), rng.choice([0.5, 1.0, 2.0]), rng.random() < 0.5
        root = now * (rng.uniform(1.01, 3.5) if upward else 1 / rng.uniform(1.01, 3.5))
        sign = 1.0 if upward else -1.0
        own = trials(make, size(make, now), lambda x, p=power, s=sign: 1000.0 + s * x**p)
        found = solve(make.need("s.x", 1000.0 + sign * root**power), own)
        assert found.value is not None
        assert found.upward == upward
        near = 1.1 * NEED_CLOSE / (power * root ** (power - 1.0))  # a need is met from there on
        assert -near <= (found.value - root) * sign <= 0.1 + 1e-6
        assert len(own.facts) <= MOST_TRIALS


def test_at_a_smaller_print_scale_more_is_needed(make: SimpleNamespace) -> None:
    own = trials(make, size(make, 20.0), lambda x: x)
    need = make.need("s.x", 25.0)
    assert solve(need, own).value == pytest.approx(25.0)
    assert solve(need, own, 0.995).value == pytest.approx(ceil(25 / 0.995 * 10) / 10)  # 25.2


def test_an_upper_limit_makes_a_size_smaller(make: SimpleNamespace) -> None:
    found = solve(make.need("s.x", None, 50.0), trials(make, size(make, 80.0), lambda x: x))
    assert found.value == pytest.approx(50.0)
    assert not found.upward


def test_without_a_solution_the_range_is_said(make: SimpleNamespace) -> None:
    own = trials(make, size(make, 100.0), lambda x: 10.0)
    found = solve(make.need("s.x", 25.0), own)
    assert (found.value, found.low, found.high) == (None, 25.0, 400.0)
    assert len(own.facts) <= MOST_TRIALS


def test_values_that_cannot_be_built_are_passed_over(make: SimpleNamespace) -> None:
    own = trials(make, size(make, 100.0), lambda x: None if 100 < x < 130 else x)
    found = solve(make.need("s.x", 110.0), own)
    assert found.value == pytest.approx(130.0)  # the least that can be built


def test_counts_are_whole_and_a_size_of_zero_is_left(make: SimpleNamespace) -> None:
    found = solve(make.need("s.x", 8.5), trials(make, size(make, 4.0, "count"), lambda n: n))
    assert found.value == 9.0
    nothing = solve(make.need("s.x", 3.21), trials(make, size(make, 0.0), lambda x: sqrt(x) * 2))
    assert nothing.value == pytest.approx(2.6)


def test_the_values_tried_are_those_that_a_designer_writes(make: SimpleNamespace) -> None:
    """1083 × 0.1 is 108.30000000000001 in binary fractions; what is tried is 108.3."""
    seen: list[float] = []
    own = Trials(size(make, 92.0), lambda tried: seen.append(tried.value), ())
    own.at(1083)
    own.at(1083)
    assert seen == [108.3]
    assert grid_of(size(make, 0.25, "number")) == pytest.approx(0.001)


def test_a_fact_that_is_not_there_meets_nothing(make: SimpleNamespace) -> None:
    assert not meets(make.need("s.y", 1.0), (Fact("s.x", 5.0, "length"),))
    assert not meets(make.need("s.x", 1.0, kind="angle"), (Fact("s.x", 5.0, "length"),))
    assert not meets(make.need("s.x", 1.0), None)
