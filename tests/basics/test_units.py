"""The inch."""

import pytest

from publisher.basics.units import INCH_MM, inches


def test_the_inch_is_that_of_1959() -> None:
    # US Federal Register, 1 July 1959: 1 yard = 0.9144 m exactly, so 1 inch = 914.4 mm / 36
    assert INCH_MM == 914.4 / 36 == 25.4
    # never the survey foot of 0.3048006096 m (deprecated by NIST in 2023)
    assert INCH_MM * 12 != 304.8006096


def test_inches() -> None:
    assert inches(25.4) == 1.0
    assert inches(762.0) == pytest.approx(30.0)
