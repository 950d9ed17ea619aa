"""The units of the language."""

from fractions import Fraction

from publisher.design.language.parser import parse
from publisher.design.language.units import LIKELY_UNITS, UNIT_BY_NAME, UNITS, unit_names


def test_every_likely_unit_is_one_of_the_units() -> None:
    assert set(LIKELY_UNITS.values()) <= set(UNIT_BY_NAME)
    assert unit_names() == "mm, cm, in, deg"


def test_every_unit_can_be_written() -> None:
    for unit in UNITS:
        amount = parse(f"2 {unit.name}").steps[0].amount
        assert amount is not None
        assert amount.value == 2 * float(unit.factor)
        assert amount.kind() == unit.measures


def test_an_inch_that_is_written_is_exact() -> None:
    assert UNIT_BY_NAME["in"].factor == Fraction(127, 5)
