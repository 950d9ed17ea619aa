"""Readings: units, uncertainty, and slips of the keyboard."""

import math

import pytest

from publisher.basics import Refusal
from publisher.ruler import LONG_RULERS, TOOLS, read_length, take_reading, take_readings


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


@pytest.mark.parametrize(
    ("value", "unit", "hint"),
    [
        (3.94, "mm", "--unit in"),
        (9.7, "mm", "--unit cm"),
        (973.0, "mm", "97.3 in place of 973"),
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


@pytest.mark.parametrize(
    ("text", "mm", "step"),
    [
        ("97", 97.0, 1.0),
        ("97.3", 97.3, 0.5),
        ("97,3", 97.3, 0.5),
        (" 97 mm ", 97.0, 1.0),
        ("97,30mm", 97.3, 0.5),
        ("9.7 cm", 97.0, 1.0),
        ("9,73 centimetres", 97.3, 0.5),
        ("10 cm", 100.0, 10.0),
        ("3 15/16 in", 100.0125, 1.5875),
        ("3-15/16″", 100.0125, 1.5875),
        ("3 - 15/16 inches", 100.0125, 1.5875),
        ('3½"', 88.9, 1.5875),
        ("3 15⁄16 in", 100.0125, 1.5875),
        ("3 29/32 in", 99.21875, 0.79375),
        ("63/16 in", 100.0125, 1.5875),
        ("4 in", 101.6, 1.5875),
        ("3.9375 in", 100.0125, 1.5875),
        ("3.94 in", 100.076, 1.5875),
        ("3.91 in", 99.314, 0.79375),
        ("3.93 in", 99.822, 0.508),
        ("3.9 in", 99.06, 2.54),
    ],
)
def test_readings_are_taken_as_people_write_them(text: str, mm: float, step: float) -> None:
    written = read_length(text, "mm")
    assert written is not None
    assert (written.mm, written.step) == pytest.approx((mm, step))


@pytest.mark.parametrize(
    "text",
    [
        "",
        "mm",
        "97 m",
        "97 mm mm",
        "3 15/0 in",
        "3 17/16 in",
        "-97",
        "1e2",
        "nan",
        "97.3.1",
        "9 7",
        "1/2/3",
        "0",
        "0 in",
        "9" * 41,
    ],
)
@pytest.mark.breaks("ruler/reading-unusable")
def test_what_is_no_length_is_refused_with_the_ways_of_writing(text: str) -> None:
    assert read_length(text, "mm") is None
    with pytest.raises(Refusal) as caught:
        take_reading("across", text, "mm", 100.0, "ruler")
    assert "3 15/16 in" in caught.value.findings[0].hint


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


@pytest.mark.parametrize(
    ("readings", "lines", "says"),
    [
        (("240", "180"), LONG_RULERS, "look exchanged"),
        (("18.0", "24.0"), LONG_RULERS, "--unit cm"),
        (("204", "2.40"), LONG_RULERS, "measure again"),
    ],
)
def test_slips_on_the_long_rulers(readings: tuple[str, str], lines: tuple[float, float], says: str) -> None:
    with pytest.raises(Refusal) as caught:
        take_readings(*readings, true_mm=lines)
    assert says in caught.value.findings[0].hint


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("79", "97 in place of 79"),
        ("180", "--rulers ACROSS DOWN"),
        ("97.3", ""),
        ("88", ""),  # a page fitted inside wide margins
        ("71", ""),  # a page of half the area
    ],
)
def test_a_reading_that_is_far_off_says_which_slip_would_explain_it(text: str, says: str) -> None:
    slip = take_reading("across", text, "mm", 100.0, "ruler").slip
    assert says in slip and bool(says) == bool(slip)
