"""Numbers in words: what is said, in which unit, and whether it is one of the values that were promised."""

import re
from collections.abc import Iterable, Iterator
from fractions import Fraction

from publisher.basics import record
from publisher.proof.reading import MM_PER_INCH

_NUMBER = r"\d+ \d+/\d+|\d+/\d+|\d+(?:\.\d+)?"
_JOINED = r" to | and | × |, | or |-"
_UNIT = r"(mm|in|°|%|g|m|ft|h)(?![\w])"
FIGURES = re.compile(rf"(?<![\w.·/-])({_NUMBER})(?:({_JOINED})(?={_NUMBER})|[ \u00a0]?{_UNIT}|(?![\w/]|[.]\d))")
IN_MM = {"mm": 1.0, "in": MM_PER_INCH, "m": 1000.0, "ft": 12.0 * MM_PER_INCH}
SIXTEENTH = (
    0.15 / MM_PER_INCH
)  # of an inch: how far a fraction may stand from the truth: 0.1 mm from millimetres rounded to 0.1
ALMOST = 1.0 - 1e-6


@record
class Said:
    """A number as it is said: its words, its value and one of its last digit, its unit ('' where none follows), and where it begins."""

    words: str
    value: float
    step: float
    unit: str
    at: int

    def is_of(self, values: Iterable[float], scale: float = 1.0) -> bool:
        """Say whether it is one of the values, each divided by ``scale``, to one of its last digit."""
        return any(abs(self.value - value / scale) < self.step * ALMOST for value in values)


def figures_in(text: str) -> Iterator[Said]:
    """Yield the numbers of a text; of some in a row with one unit behind them, such as ``4.7 to 5.3 mm``, each has that unit."""
    waiting: list[re.Match[str]] = []
    for found in FIGURES.finditer(text):
        waiting.append(found)
        if not found[2]:
            yield from (_said(one, found[3] or "") for one in waiting)
            waiting = []
    yield from (_said(one, "") for one in waiting)


def _said(found: re.Match[str], unit: str) -> Said:
    words = found[1]
    if "/" in words:
        *whole, part = words.split(" ")
        return Said(words, float(Fraction(part)) + float(whole[0] if whole else 0), SIXTEENTH, unit, found.start())
    decimals = len(words.partition(".")[2])
    step = SIXTEENTH if unit == "in" and not decimals else 10.0**-decimals
    return Said(words, float(words), step, unit, found.start())
