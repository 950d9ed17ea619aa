"""How numbers are said to buyers: millimetres with inches in brackets, degrees, counts."""

from collections.abc import Callable
from math import isinf, isnan

from publisher.design.language.units import INCH_MM
from publisher.design.records import Kind

SQUARE_INCH_MM2 = INCH_MM * INCH_MM


def inches(mm: float) -> float:
    """Return the length ``mm`` in inches of 25.4 mm."""
    return mm / INCH_MM


def fixed(value: float, decimals: int) -> str:
    """Return ``value`` with that many decimals, halves rounded away from zero as people do; never ``-0.0``."""
    step = 10.0**-decimals
    # a few parts in 10^12 up, so that 5.0625 or 0.285 are seen as the halves that they were meant to be
    rounded = float(f"{abs(value) + step * 1e-6:.{decimals}f}")
    text = f"{rounded:.{decimals}f}"
    return f"-{text}" if value < 0 and rounded else text


def trimmed(value: float, decimals: int) -> str:
    """Return ``value`` with at most that many decimals."""
    text = fixed(value, decimals)
    return text.rstrip("0").rstrip(".") if "." in text else text


def say_mm(mm: float) -> str:
    """Return ``70.0 mm``: one decimal from 10 mm up, two below, where a tenth of a millimetre decides a fit."""
    if isinf(mm):
        return "open"
    if isnan(mm):
        raise ValueError("a length that is not a number cannot be said")
    return f"{fixed(mm, 1 if abs(mm) >= 9.9995 else 2)} mm"


def say_length(mm: float) -> str:
    """Return ``70.0 mm (2.76 in)``. An unlimited length is ``open``. Raises ValueError when ``mm`` is not a number."""
    return say_mm(mm) if isinf(mm) else f"{say_mm(mm)} ({fixed(inches(mm), 2)} in)"


def say(value: float, kind: Kind) -> str:
    """Return a value in words by its kind: mm, degrees, mm², grams or plain numbers as in ``Fact``.

    ``20°``, ``14``, ``0.50`` (ratio), ``12.3 cm² (1.91 sq in)``, ``48 g``. Infinity is ``open``.
    Raises ValueError when the value is not a number.
    """
    if isnan(value):
        raise ValueError("a value that is not a number cannot be said")
    if isinf(value):
        return "open"
    return _SAYINGS[kind](value)


_SAYINGS: dict[Kind, Callable[[float], str]] = {
    "length": say_length,
    "angle": lambda value: f"{trimmed(value, 2)}°",
    "ratio": lambda value: fixed(value, 2),
    "area": lambda value: f"{fixed(value / 100.0, 1)} cm² ({fixed(value / SQUARE_INCH_MM2, 2)} sq in)",
    "mass": lambda value: f"{fixed(value, 0 if abs(value) >= 9.95 else 1)} g",
    "count": lambda value: trimmed(value, 6),
    "number": lambda value: trimmed(value, 3),
}
