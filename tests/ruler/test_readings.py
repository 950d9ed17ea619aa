"""Readings: units, uncertainty, and slips of the keyboard."""

import math

import pytest

from publisher.basics import Refusal
from publisher.ruler import TOOLS, take_reading, take_readings


def test_uncertainties_are_those_of_the_guide() -> None:
    # JCGM 100:2008 4.3.7 (rectangular distributions) with the class II limit of 2014/32/EU Annex X, and DIN 862 for callipers;
    # the table in the measurement section of the check values: 0.354 mm and 0.083 mm on 100 mm
    two_ends = math.sqrt(2) * 0.5 / math.sqrt(12)
    assert pytest.approx(math.hypot(two_ends, 0.5 / math.sqrt(3)), abs=5e-4) == TOOLS["ruler"].u_mm
    aiming = math.sqrt(2) * 0.1 / math.sqrt(3)
    assert pytest.approx(math.hypot(aiming, 0.013), abs=5e-4) == TOOLS["calliper"].u_mm


@pytest.mark.keeps("ruler/reading-unusable")
def test_inches_are_those_of_1959() -> None:
    assert take_reading("across", 3.94, "in", 100.0, "ruler").read_mm == pytest.approx(100.076)


@pytest.mark.breaks("ruler/reading-unusable")
@pytest.mark.parametrize("value", [math.nan, math.inf, -97.0, 0.0])
def test_what_is_no_length_is_refused(value: float) -> None:
    with pytest.raises(Refusal, match="above zero"):
        take_reading("across", value, "mm", 100.0, "ruler")


@pytest.mark.parametrize("true_mm", [0.0, -5.0, math.nan, 1e6])
def test_the_printed_length_must_be_possible(true_mm: float) -> None:
    with pytest.raises(Refusal, match="--of"):
        take_reading("down", 100.0, "mm", true_mm, "ruler")


def test_both_readings_are_of_one_ruler_and_the_finer_marks_count() -> None:
    one, two = take_readings("100", "99.5")
    assert one.tool == two.tool == TOOLS["0.5mm"]
    one, two = take_readings("100", "3 15/16 in")
    assert (one.tool, two.tool) == (TOOLS["1mm"], TOOLS["1/16in"])
    one, two = take_readings("100", "100", tool="calliper")
    assert one.tool == two.tool == TOOLS["calliper"]


def test_uncertainties_grow_with_the_marks() -> None:
    """√(2·step²/12 + 0.5²/3): 0.50 mm for millimetres, 0.71 for sixteenths of an inch, 0.43 for thirty-seconds."""
    found = [TOOLS[tool].u_mm for tool in ("0.5mm", "1mm", "1/16in", "1/32in")]
    assert found == pytest.approx([0.354, 0.5, 0.7095, 0.434], abs=5e-4)
