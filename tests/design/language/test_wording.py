"""Numbers as buyers read them."""

import math

import pytest

from publisher.design import inches, say, say_length
from publisher.design.language.wording import fixed, say_mm, trimmed


@pytest.mark.parametrize(
    ("mm", "text"),
    [
        (70.0, "70.0 mm (2.76 in)"),
        (5.0625, "5.06 mm (0.20 in)"),
        (4.7625, "4.76 mm (0.19 in)"),
        (9.999, "10.00 mm (0.39 in)"),
        (9.9996, "10.0 mm (0.39 in)"),
        (25.4, "25.4 mm (1.00 in)"),
        (100.0125, "100.0 mm (3.94 in)"),
        (0.0, "0.00 mm (0.00 in)"),
        (-0.001, "0.00 mm (0.00 in)"),
        (-12.25, "-12.3 mm (-0.48 in)"),
        (math.inf, "open"),
    ],
)
def test_lengths_are_said_in_mm_and_inches(mm: float, text: str) -> None:
    assert say_length(mm) == text


def test_other_kinds_are_said_in_their_own_way() -> None:
    assert say(70.0, "length") == "70.0 mm (2.76 in)"
    assert say(20.0, "angle") == "20°"
    assert say(360 / 7, "angle") == "51.43°"
    assert say(14.0, "count") == "14"
    assert say(0.5, "ratio") == "0.50"
    assert say(2.5, "number") == "2.5"
    assert say(1 / 3, "number") == "0.333"
    assert say(1234.0, "area") == "12.3 cm² (1.91 sq in)"
    assert say(48.2, "mass") == "48 g"
    assert say(3.14, "mass") == "3.1 g"
    assert say(math.inf, "count") == "open"


def test_what_is_not_a_number_cannot_be_said() -> None:
    for say_it in (lambda: say(math.nan, "angle"), lambda: say_length(math.nan)):
        with pytest.raises(ValueError, match="not a number"):
            say_it()


def test_halves_are_rounded_away_from_zero() -> None:
    # in binary 5.065 lies a hair under the half; people round it up
    assert fixed(5.065, 2) == "5.07"
    assert fixed(-5.065, 2) == "-5.07"
    assert fixed(2.675, 2) == "2.68"
    assert say_mm(0.285) == "0.29 mm"
    assert trimmed(20.0, 2) == "20"
    assert trimmed(100.0, 0) == "100"


def test_inches() -> None:
    assert inches(25.4) == 1.0
    assert inches(762.0) == pytest.approx(30.0)
