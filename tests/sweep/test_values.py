"""Values that are tried."""

import pytest

from publisher.basics import Place
from publisher.design import Size, SizeSpan
from publisher.sweep.values import finest, grid_of, midway


def span(kind: str, least: float, most: float) -> SizeSpan:
    return SizeSpan(Size("reach", least, kind, "", Place("spec.yaml")), least, most)  # type: ignore[arg-type]


def test_values_are_even_and_written_to_a_hundredth() -> None:
    assert grid_of(span("length", 70.0, 71.0), 4) == (70.0, 70.33, 70.67, 71.0)
    assert grid_of(span("count", 3.0, 7.0), 41) == (3.0, 4.0, 5.0, 6.0, 7.0)
    assert grid_of(span("length", 70.123, 71.0), 2) == (70.123, 71.0)


def test_jumps_are_found_as_near_as_a_size_is_cut() -> None:
    assert [finest(span(kind, 0.0, 10.0)) for kind in ("length", "angle", "number")] == pytest.approx(
        [0.01, 0.01, 1e-4]
    )
    assert finest(span("count", 0.0, 10.0)) == 1.0


def test_midway_lies_on_the_grid_and_between() -> None:
    assert midway(70.0, 71.0, 0.01) == midway(71.0, 70.0, 0.01) == 70.5
    assert midway(70.0, 70.02, 0.01) == 70.01
    assert midway(70.0, 70.01, 0.01) is None
    assert midway(3.0, 4.0, 1.0) is None
