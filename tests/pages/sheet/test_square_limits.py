"""What a square may measure: one share of its side for all squares of a pack, rounded so that whoever keeps it keeps the true one."""

import pytest

from publisher.pages.sheet.square_limits import square_limits


@pytest.mark.parametrize(
    ("scales", "side", "said"),
    [
        ((0.995, 1.005), 100.0, ("99.5", "100.5")),
        ((0.995, 1.005), 50.0, ("49.75", "50.25")),
        ((0.995, 1.005), 30.0, ("29.85", "30.15")),
        ((0.9951, 1.0049), 100.0, ("99.6", "100.4")),
        ((0.9996, 1.0004), 100.0, ("100.0", "100.0")),
        ((0.9981, 1.0019), 50.0, ("49.95", "50.05")),
    ],
)
def test_a_square_keeps_its_share(scales: tuple[float, float], side: float, said: tuple[str, str]) -> None:
    assert square_limits(*scales, side) == said


def test_a_limit_lies_within_what_is_allowed() -> None:
    for thousandths in range(1, 60):
        least, most = 1.0 - thousandths / 10_000, 1.0 + thousandths / 10_000
        for side in (100.0, 50.0, 30.0):
            low, high = map(float, square_limits(least, most, side))
            assert side * least - 1e-9 <= low <= high <= side * most + 1e-9
