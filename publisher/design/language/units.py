"""Units of the designer's language. Inside the house a length is float millimetres and an angle float degrees."""

from fractions import Fraction
from typing import Literal

from publisher.basics import record
from publisher.basics.units import INCH_MM


@record
class Unit:
    """A unit that may follow a number: how many mm or degrees it is, and its name in words."""

    name: str
    measures: Literal["length", "angle"]
    factor: Fraction
    meaning: str


UNITS = (
    Unit("mm", "length", Fraction(1), "millimetres"),
    Unit("cm", "length", Fraction(10), "centimetres"),
    Unit("in", "length", Fraction(str(INCH_MM)), f"inches of {INCH_MM} mm"),
    Unit("deg", "angle", Fraction(1), "degrees"),
)
UNIT_BY_NAME = {unit.name: unit for unit in UNITS}

#: What people write for a unit, and the unit of the language that they mean.
LIKELY_UNITS = {
    '"': "in",
    "″": "in",
    "”": "in",
    "inch": "in",
    "inches": "in",
    "ins": "in",
    "°": "deg",
    "º": "deg",
    "degree": "deg",
    "degrees": "deg",
    "grad": "deg",
    "millimetre": "mm",
    "millimetres": "mm",
    "millimeter": "mm",
    "millimeters": "mm",
    "centimetre": "cm",
    "centimetres": "cm",
    "centimeter": "cm",
    "centimeters": "cm",
}
LONG_UNITS = ("m", "metre", "metres", "meter", "meters", "ft", "foot", "feet", "yd", "yard", "yards")
"""What is no slip of a shorter unit."""


def unit_words() -> tuple[tuple[str, str], ...]:
    """Return every unit with its meaning."""
    return tuple((unit.name, unit.meaning) for unit in UNITS)


def unit_names() -> str:
    """Return the units as a message lists them."""
    return ", ".join(unit.name for unit in UNITS)
