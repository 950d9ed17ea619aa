"""How a value of any kind is said, and what is proposed for a name that is not known."""

from collections.abc import Callable, Iterable
from math import isinf, isnan

from publisher.basics.units import INCH_MM
from publisher.basics.wording import did_you_mean, fixed, listed, say_length, trimmed
from publisher.design.records import Kind

SQUARE_INCH_MM2 = INCH_MM * INCH_MM


def pick_hint(word: str, known: Iterable[str], what: str) -> str:
    """Return the nearest known word, or the list of what is known, as a hint."""
    words = list(known)
    if hint := did_you_mean(word, words):
        return hint
    return f"known {what}: {listed(words)}" if words else f"the spec has no {what}"


def say(value: float, kind: Kind) -> str:
    """Return a value in words by its kind: mm, degrees, mm², grams, newtons or plain numbers as in ``Fact``.

    ``20°``, ``14``, ``0.50`` (ratio), ``12.3 cm² (1.91 sq in)``, ``48 g``,
    ``0.52 N``. Infinity is ``open``.
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
    "force": lambda value: f"{fixed(value, 1 if abs(value) >= 0.95 else 2)} N",
    "count": lambda value: trimmed(value, 6),
    "number": lambda value: trimmed(value, 3),
}
