"""Lengths as people write down what a ruler shows: ``97,3``, ``97 mm``, ``9.7 cm``, ``3 15/16``, ``3-15/16 in``, ``3½″``."""

import re
import unicodedata

from publisher.basics import record

MM_PER_INCH = 25.4  # international inch of 1959
UNITS = {"mm": 1.0, "cm": 10.0, "in": MM_PER_INCH}
FINEST_MARKS = 0.5
FINE_INCH = 0.02  # in: about half a millimetre, as finely as anybody reads between the marks of an inch rule
LONGEST_READING = 40  # letters: what is longer is no reading

_UNIT_WORDS = {
    "mm": ("mm", "millimetre", "millimetres", "millimeter", "millimeters"),
    "cm": ("cm", "centimetre", "centimetres", "centimeter", "centimeters"),
    "in": ("in", "in.", "inch", "inches", '"', "”", "“", "''", "′′"),  # ″ is two ′ once it is made plain
}
_LENGTH = re.compile(
    r"(?:(?P<whole>\d{1,4})(?:\s*-\s*|\s+))?(?P<over>\d{1,4})\s*/\s*(?P<under>\d{1,4})|(?P<number>\d{1,6}(?:[.,]\d{1,9})?|[.,]\d{1,9})",
    re.ASCII,
)


@record
class Written:
    """A length as it was written: in mm, the ``unit`` it was written in, how finely it was read (``step``, mm), the number as said."""

    mm: float
    unit: str
    step: float
    said: str

    @property
    def metric(self) -> bool:
        """Whether it was read on the metric side of a ruler."""
        return self.unit != "in"


def read_length(text: str, unit: str = "") -> Written | None:
    """Return the length that somebody wrote, in ``unit`` (mm, cm, in) where it names none; None when it is no length above zero.

    A number without decimals was read to the mark; a fraction to sixteenths, or as finely as it is; decimals of an inch that are
    a rounded sixteenth or thirty-second to that.
    """
    if len(text) > LONGEST_READING:
        return None
    plain = _plain(text)
    found = _LENGTH.match(plain)
    if found is None:
        return None
    rest = plain[found.end() :].strip().casefold()
    named = next((one for one, words in _UNIT_WORDS.items() if rest in words), "") if rest else unit
    if not named:
        return None
    said = found.group().strip()
    if found["number"] is None:
        over, under = int(found["over"]), int(found["under"])
        value = _fraction(found["whole"], over, under)
        step = UNITS[named] / next((marks for marks in (16, 32) if under <= marks), 64)
    else:
        said = said.replace(",", ".")
        value = float(said)
        step = _step(value, len(said.partition(".")[2]), named)
    return Written(value * UNITS[named], named, step, said) if value > 0 else None


def _fraction(whole: str | None, over: int, under: int) -> float:
    """Return the value of a fraction, behind a whole number or alone; 0 where nobody writes it so: 1/0, 3 17/16."""
    return 0.0 if not under or (whole and over >= under) else int(whole or 0) + over / under


def _plain(text: str) -> str:
    """Return a text in plain signs: ½ as 1/2, set off from a whole number before it."""
    apart = "".join(f" {sign}" if unicodedata.decomposition(sign).startswith("<fraction>") else sign for sign in text)
    return unicodedata.normalize("NFKC", apart).replace("⁄", "/").replace("∕", "/").strip()


def _step(value: float, decimals: int, unit: str) -> float:
    """Return how finely (mm) a decimal number was read."""
    said = 10.0**-decimals
    if unit != "in":
        return max(FINEST_MARKS, said * UNITS[unit])
    if decimals == 0:
        return MM_PER_INCH / 16.0
    for marks in (16, 32, 64):
        if abs(value * marks - round(value * marks)) <= said * marks / 2.0 + 1e-9:
            return max(1.0 / marks, said) * MM_PER_INCH
    return max(FINE_INCH, said) * MM_PER_INCH
