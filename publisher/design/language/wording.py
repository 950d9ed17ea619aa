"""How a value of any kind is said, and what is proposed for a name that is not known."""

from collections.abc import Iterable
from math import isinf, isnan

from publisher.basics.units import INCH_MM
from publisher.basics.wording import LengthUnit, Rounds, did_you_mean, fixed, listed, say_length, say_push, trimmed
from publisher.design.records import Kind, Size

SQUARE_INCH_MM2 = INCH_MM * INCH_MM


def pick_hint(word: str, known: Iterable[str], what: str) -> str:
    """Return the nearest known word, or the list of what is known, as a hint."""
    words = list(known)
    if hint := did_you_mean(word, words):
        return hint
    return f"known {what}: {listed(words)}" if words else f"the spec has no {what}"


def say(  # noqa: PLR0911 - one return a kind
    value: float,
    kind: Kind,
    rounds: Rounds = "nearest",
    first: LengthUnit = "mm",
    *,
    plain: bool = False,
    more: int = 0,
) -> str:
    """Return a value in words by its kind: mm, degrees, mm², grams, newtons or plain numbers as in ``Fact``.

    ``20°``, ``14``, ``0.50`` (ratio), ``12.3 cm² (1.91 sq in)``, ``48 g``,
    ``0.52 N``. Infinity is ``open``. ``plain``: as a sentence says it: ``20 mm``, fractions of inches, ``about 50 g`` for a push.
    ``more``: decimals beyond those, to tell two values apart.
    Raises ValueError when the value is not a number.
    """
    if isnan(value):
        raise ValueError("a value that is not a number cannot be said")
    if isinf(value):
        return "open"
    match kind:
        case "length":
            return say_length(value, rounds, first, plain, more)
        case "area":
            return _area(value, rounds, first, more)
        case "angle":
            return f"{trimmed(value, 2 + more, rounds)}°"
        case "mass":
            return f"{fixed(value, more + (0 if abs(value) >= 9.95 else 1), rounds)} g"
        case "force":
            return (
                say_push(value, rounds)
                if plain
                else f"{fixed(value, more + (1 if abs(value) >= 0.95 else 2), rounds)} N"
            )
        case "ratio":
            return fixed(value, 2 + more, rounds)
        case "count":
            return trimmed(value, 6)
        case "number":
            return trimmed(value, 3 + more, rounds)


def _area(value: float, rounds: Rounds, first: LengthUnit, more: int) -> str:
    metric = fixed(value / 100.0, 1 + more, rounds)
    imperial = f"{fixed(float(metric) * 100.0 / SQUARE_INCH_MM2, 2 + more, rounds)} sq in"
    return f"{metric} cm² ({imperial})" if first == "mm" else f"{imperial} ({metric} cm²)"


def tried_sizes(sizes: Iterable[Size], names: Iterable[str]) -> tuple[Size, ...]:
    """Return the sizes of these names, those that a trial was given, sorted by name."""
    wanted = set(names)
    return tuple(sorted((size for size in sizes if size.name in wanted), key=lambda size: size.name))


def trial_words(tried: Iterable[Size]) -> str:
    """Return what pages say of a trial, "trial: reach 96 mm", in the values that also name its files; '' when nothing is tried."""
    units = {"length": " mm", "angle": "°"}
    said = [f"{size.name} {size.value:.6g}{units.get(size.kind, '')}" for size in tried]
    return f"trial: {listed(said, 8)}" if said else ""
