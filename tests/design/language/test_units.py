"""The unit table against its source."""

from publisher.design.language.parser import parse
from publisher.design.language.units import INCH_MM, LIKELY_UNITS, UNIT_BY_NAME, UNITS, unit_names


def test_the_inch_is_that_of_1959() -> None:
    # US Federal Register, 1 July 1959: 1 yard = 0.9144 m exactly, so 1 inch = 914.4 mm / 36
    assert INCH_MM == 914.4 / 36 == 25.4
    assert float(UNIT_BY_NAME["in"].factor) == 25.4
    # never the survey foot of 0.3048006096 m (deprecated by NIST in 2023)
    assert INCH_MM * 12 != 304.8006096


def test_every_likely_unit_is_one_of_the_units() -> None:
    assert set(LIKELY_UNITS.values()) <= set(UNIT_BY_NAME)
    assert unit_names() == "mm, cm, in, deg"


def test_every_unit_can_be_written() -> None:
    for unit in UNITS:
        amount = parse(f"2 {unit.name}").steps[0].amount
        assert amount is not None
        assert amount.value == 2 * float(unit.factor)
        assert amount.kind() == unit.measures
