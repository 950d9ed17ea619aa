"""Numbers with a dimension: whole powers of mm, degrees, grams and newtons, and how plain numbers came about."""

from dataclasses import replace
from enum import IntEnum
from math import isfinite

from publisher.basics import record
from publisher.design.records import Kind

#: A whole-number field takes 14.000000001 for 14: divisions of decimal fractions leave such dust.
WHOLE_WITHIN = 1.001e-9


class Origin(IntEnum):
    """Where a plain number comes from. The larger one wins when two are combined."""

    PLAIN = 0  # written numbers and counts only
    ROUNDED = 1  # a quotient of lengths or angles, rounded to a whole number: a count of things
    RATIO = 2  # a quotient of lengths or angles


@record
class Amount:
    """A value in mm^mm · deg^deg · g^grams · N^newtons."""

    value: float
    mm: int = 0
    deg: int = 0
    grams: int = 0
    newtons: int = 0
    origin: Origin = Origin.PLAIN

    @property
    def plain(self) -> bool:
        """True when it has no dimension."""
        return not any(self.dimension)

    @property
    def dimension(self) -> tuple[int, int, int, int]:
        """The exponents of mm, degrees, grams and newtons."""
        return (self.mm, self.deg, self.grams, self.newtons)

    def kind(self) -> Kind | None:
        """Return the kind of this amount; None for a dimension that has no name in the trade (mm³)."""
        if not self.plain:
            return KIND_OF_DIMENSION.get(self.dimension)
        if self.origin is Origin.RATIO:
            return "ratio"
        return "count" if is_whole(self.value) else "number"

    def words(self) -> str:
        """Return what it is, for a message: ``a length``, ``a ratio``."""
        kind = self.kind()
        if kind is None:
            return " · ".join(
                f"{unit}{power(n)}" for unit, n in zip(("mm", "deg", "g", "N"), self.dimension, strict=True) if n
            )
        return KIND_WORDS[kind]

    def named(self) -> "Amount":
        """Return the amount as a size keeps it: a rounded quotient that has a name is a count like any other."""
        return replace(self, origin=Origin.PLAIN) if self.origin is Origin.ROUNDED else self


KIND_OF_DIMENSION: dict[tuple[int, int, int, int], Kind] = {
    (1, 0, 0, 0): "length",
    (0, 1, 0, 0): "angle",
    (2, 0, 0, 0): "area",
    (0, 0, 1, 0): "mass",
    (0, 0, 0, 1): "force",
}
DIMENSION_OF_KIND = {kind: dimension for dimension, kind in KIND_OF_DIMENSION.items()}
KIND_WORDS: dict[Kind, str] = {
    "length": "a length",
    "angle": "an angle",
    "count": "a plain number",
    "number": "a plain number",
    "ratio": "a ratio",
    "area": "an area",
    "mass": "a weight",
    "force": "a force",
}


def power(exponent: int) -> str:
    """Return an exponent as raised digits; nothing for 1."""
    return "" if exponent == 1 else str(exponent).translate(str.maketrans("-0123456789", "⁻⁰¹²³⁴⁵⁶⁷⁸⁹"))


def is_whole(value: float) -> bool:
    """True when the value is a whole number but for the dust of divisions."""
    return isfinite(value) and abs(value - round(value)) <= WHOLE_WITHIN


def of_kind(value: float, kind: Kind) -> Amount:
    """Return a size's or fact's value (mm, degrees, mm², g, N or plain) as an amount."""
    if kind == "ratio":
        return Amount(value, origin=Origin.RATIO)
    mm, deg, grams, newtons = DIMENSION_OF_KIND.get(kind, (0, 0, 0, 0))
    return Amount(value, mm, deg, grams, newtons)
