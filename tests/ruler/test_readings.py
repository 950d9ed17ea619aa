"""Readings: units, uncertainty, and slips of the keyboard."""

import math

import pytest

from publisher.basics import Refusal
from publisher.ruler import TOOLS, take_reading


def test_uncertainties_are_those_of_the_guide() -> None:
    # JCGM 100:2008 4.3.7 (rectangular distributions) with the class II limit of 2014/32/EU Annex X, and DIN 862 for callipers;
    # the table in the measurement section of the check values: 0.354 mm and 0.083 mm on 100 mm
    two_ends = math.sqrt(2) * 0.5 / math.sqrt(12)
    assert pytest.approx(math.hypot(two_ends, 0.5 / math.sqrt(3)), abs=5e-4) == TOOLS["ruler"]
    aiming = math.sqrt(2) * 0.1 / math.sqrt(3)
    assert pytest.approx(math.hypot(aiming, 0.013), abs=5e-4) == TOOLS["calliper"]


@pytest.mark.keeps("ruler/reading-unusable")
def test_inches_are_those_of_1959() -> None:
    assert take_reading("across", 3.94, "in", 100.0, "ruler").read_mm == pytest.approx(100.076)


@pytest.mark.breaks("ruler/reading-unusable")
@pytest.mark.parametrize("value", [math.nan, math.inf, -97.0, 0.0])
def test_what_is_no_length_is_refused(value: float) -> None:
    with pytest.raises(Refusal, match="above zero"):
        take_reading("across", value, "mm", 100.0, "ruler")


@pytest.mark.parametrize(
    ("value", "unit", "hint"),
    [
        (3.94, "mm", "--unit in"),
        (9.7, "mm", "--unit in"),
        (30.0, "mm", "measure again"),
        (97.3, "in", "leave --unit out"),
    ],
)
def test_a_reading_in_the_wrong_unit_is_asked_about(value: float, unit: str, hint: str) -> None:
    with pytest.raises(Refusal) as caught:
        take_reading("across", value, unit, 100.0, "ruler")
    assert hint in caught.value.findings[0].hint


@pytest.mark.parametrize("true_mm", [0.0, -5.0, math.nan, 1e6])
def test_the_printed_length_must_be_possible(true_mm: float) -> None:
    with pytest.raises(Refusal, match="--of"):
        take_reading("down", 100.0, "mm", true_mm, "ruler")
