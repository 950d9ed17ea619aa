"""Slips of the pencil and the keyboard are asked about."""

import pytest

from publisher.basics import Refusal
from publisher.ruler import LONG_RULERS, take_reading, take_readings


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
