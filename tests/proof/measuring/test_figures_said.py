"""Numbers are read out of words with the unit that is meant."""

import pytest

from publisher.proof.measuring.figures_said import figures_in


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("from 4.7 to 5.3 mm (0.186 to 0.208 in)", [("4.7", "mm"), ("5.3", "mm"), ("0.186", "in"), ("0.208", "in")]),
        ("297 × 420 mm, 2 sheets", [("297", "mm"), ("420", "mm"), ("2", "")]),
        ("3 15/16 in high, bevel 22.5°", [("3 15/16", "in"), ("22.5", "°")]),
        ("version 1.0.0 of A4, mark A1-2·a", []),
    ],
)
def test_units_stand_behind_one_or_several_numbers(text: str, said: list[tuple[str, str]]) -> None:
    assert [(one.words, one.unit) for one in figures_in(text)] == said


def test_a_number_is_a_value_to_one_of_its_last_digit() -> None:
    (inches,) = figures_in("3.94 in")
    assert inches.is_of((100.0,), 25.4) and not inches.is_of((100.6,), 25.4)
    (sixteenths,) = figures_in("3 15/16 in")
    assert sixteenths.is_of((100.0,), 25.4) and not sixteenths.is_of((100.2,), 25.4)
