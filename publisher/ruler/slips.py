"""Slips of the pencil and the keyboard: what may have gone wrong with a reading that is far off."""

import math
from itertools import pairwise

from publisher.ruler.written import UNITS, Written

LONG_RULERS = (180.0, 240.0)
"""mm: the rulers of the print-check page across and down, where the pack at hand does not say (A4 and Letter)."""
NEAR = (0.93, 1.06)  # the common faults of printing but the grossest lie in it
FITTED = (0.69, 1.45)  # a page halved to one doubled
FAR = (0.9, 1.1)  # a reading outside may be a slip
_UNIT_HINTS = {
    "mm": "the ruler may show millimetres: leave --unit out",
    "cm": "the ruler may show centimetres: write “{} cm”, or say --unit cm",
    "in": "the ruler may show inches: write “{} in”, or say --unit in",
}


def slip_of(axis: str, written: Written, true_mm: float) -> str:
    """Say which slip would explain a reading that is far off; '' when none does, or when it is not far off.

    Of several the one is named that comes nearest to the printed length once it is undone.
    """
    if FAR[0] <= written.mm / true_mm <= FAR[1]:
        return ""
    for way, long in zip(("across", "down"), LONG_RULERS, strict=True):
        if way == axis and true_mm < long and near(written.mm, long):
            return f"the long ruler of {long:g} mm may have been measured: publisher measure --rulers ACROSS DOWN"
    per_unit = UNITS[written.unit]
    number = written.mm / per_unit
    undone = [
        (number * UNITS[unit], f"{hint.format(written.said)} ({number * UNITS[unit]:.1f} mm)")
        for unit, hint in _UNIT_HINTS.items()
        if unit != written.unit
    ]
    undone.append((written.mm / 10.0, f"the decimal point may be lost: {number / 10.0:g} in place of {written.said}"))
    if "/" not in written.said:
        swapped = [(float(other) * per_unit, other) for other in _exchanged(written.said)]
        undone += [
            (mm, f"two digits may be exchanged: {other} in place of {written.said}")
            for mm, other in swapped
            if near(mm, true_mm)
        ]
    fitting = [(abs(math.log(mm / true_mm)), said) for mm, said in undone if FITTED[0] <= mm / true_mm <= FITTED[1]]
    return min(fitting)[1] if fitting else ""


def near(mm: float, true_mm: float) -> bool:
    """Tell whether a line of ``true_mm`` may well have come out as ``mm``."""
    return NEAR[0] <= mm / true_mm <= NEAR[1]


def _exchanged(said: str) -> list[str]:
    """Return a number with two neighbouring digits exchanged, in every way."""
    places = [at for at, sign in enumerate(said) if sign.isdigit()]
    out = []
    for a, b in pairwise(places):
        signs = list(said)
        signs[a], signs[b] = signs[b], signs[a]
        out.append("".join(signs))
    return out
