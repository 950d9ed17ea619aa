"""The one wording of lengths, angles, lists and nearest words, for all rooms but proof and ruler, which word for themselves."""

import re
from collections.abc import Callable, Iterable
from difflib import get_close_matches
from math import ceil, floor, gcd, isinf, isnan
from typing import Literal

from publisher.basics.units import INCH_MM, inches

Rounds = Literal["nearest", "down", "up"]
"""How a figure is rounded: what is promised goes down, a limit away from failure, all else to the nearest."""

LengthUnit = Literal["mm", "in"]

LIKE = 0.6  # share of letters in common from which a word is taken for a slip of another
LONGEST_WORD = 80  # letters: what is longer is no slip of a name
MOST_LISTED = 12  # words that a message lists
CHECK_COUNT = "check the number, or the sizes that it is worked out from"
MOST_KNOWN = 30  # words that a message lists where one of them is to be chosen


GRAMS_A_NEWTON = 1000.0 / 9.80665
LIGHT_GRAMS = 20.0  # below this a hand's weight is said to 1 g

DUST = 1e-6
"""Of a step: this much beyond a figure is that figure, as sums of floats leave such dust."""

ROUND_DUST = 1e-3
"""Of the last decimal shown: as near as this below a figure is that figure, as what follows from angles written with so many decimals
leaves such dust."""

_BOTH = re.compile(r"(\d[\d.]*(?: (?:×|to) \d[\d.]*)* mm) \((\d[\d./ ×]*(?: to [\d./ ]*)?in)\)")

MOST_MORE = 6
"""Decimals more than usual with which two values are told apart."""

NEAR_FRACTION = 0.1
"""mm: a sixteenth of an inch this near to a length may stand for it."""


def fixed(value: float, decimals: int, rounds: Rounds = "nearest") -> str:
    """Return ``value`` with that many decimals, halves rounded away from zero as people do; never ``-0.0``."""
    step = 10.0**-decimals
    if rounds != "nearest":
        value = (rounded_down if rounds == "down" else rounded_up)(value, decimals)
    # a few parts in 10^12 up, so that 5.0625 or 0.285 are seen as the halves that they were meant to be
    rounded = float(f"{abs(value) + step * 1e-6:.{decimals}f}")
    text = f"{rounded:.{decimals}f}"
    return f"-{text}" if value < 0 and rounded else text


def rounded_up(value: float, decimals: int) -> float:
    """Return the least value of that many decimals that is no less: for the lower end of what is allowed."""
    scale = 10.0**decimals
    return ceil(value * scale - ROUND_DUST) / scale


def rounded_down(value: float, decimals: int) -> float:
    """Return the greatest value of that many decimals that is no more: for the upper end of what is allowed."""
    scale = 10.0**decimals
    return floor(value * scale + ROUND_DUST) / scale


def trimmed(value: float, decimals: int, rounds: Rounds = "nearest") -> str:
    """Return ``value`` with at most that many decimals."""
    text = fixed(value, decimals, rounds)
    return text.rstrip("0").rstrip(".") if "." in text else text


def say_mm(mm: float, rounds: Rounds = "nearest", plain: bool = False, more: int = 0) -> str:
    """Return ``70.0 mm``: one decimal from 10 mm up, two below, where a tenth of a millimetre decides a fit, and so many ``more``;
    ``plain``: without zeros at the end, as a sentence says it, ``70 mm``."""
    if isinf(mm):
        return "open"
    figure = _figure(mm, rounds, more)
    return f"{figure.rstrip('0').rstrip('.') if plain else figure} mm"


def say_inches(mm: float, rounds: Rounds = "nearest", fractions: bool = False, more: int = 0) -> str:
    """Return a length that is shown as so many mm in inches: ``2.76 in``; with ``fractions`` in sixteenths where one lies within
    0.1 mm of it, and not beyond it on the side to which it may not be rounded: ``3/16 in``, ``3 5/8 in``."""
    whole = int(fixed(inches(mm) * 16.0, 0, rounds))
    if fractions and whole >= 1 and abs(whole * INCH_MM / 16.0 - mm) <= NEAR_FRACTION + DUST:
        return f"{_fraction(whole, 16)} in"
    return f"{fixed(inches(mm), 2 + more, rounds)} in"


def say_length(
    mm: float, rounds: Rounds = "nearest", first: LengthUnit = "mm", plain: bool = False, more: int = 0
) -> str:
    """Return ``70.0 mm (2.76 in)``, or ``2.76 in (70.0 mm)``; the inches are those of the millimetres that are shown. ``plain``: as a
    sentence says it, ``100 mm (3 15/16 in)``; ``more``: decimals beyond those.

    An unlimited length is ``open``. Raises ValueError when ``mm`` is not a number.
    """
    if isinf(mm):
        return "open"
    metric = say_mm(mm, rounds, plain, more)
    imperial = say_inches(float(_figure(mm, rounds, more)), rounds, plain, more)
    return paired(metric, imperial, first)


def say_thickness(mm: float, first: LengthUnit = "mm") -> str:
    """Return ``5.00 mm (0.197 in)``: a board's thickness decides every fit, so that it is said to a thousandth of an inch."""
    return paired(f"{mm:.2f} mm", f"{inches(round(mm, 2)):.3f} in", first)  # of the millimetres that are shown


def say_push(newtons: float, rounds: Rounds = "nearest") -> str:
    """Return ``about 50 g``: what lies as heavily on a hand as this push, to 10 g, to 1 g below 20 g. Standard gravity: ISO 80000-3."""
    grams = newtons * GRAMS_A_NEWTON
    tens = fixed(grams / 10.0, 0, rounds) + "0" if grams >= LIGHT_GRAMS else fixed(grams, 0, rounds)
    return "open" if isinf(newtons) else f"about {tens} g"


def paired(metric: str, imperial: str, first: LengthUnit) -> str:
    """Return the same in both units, the ``first`` one first and the other in brackets."""
    return f"{metric} ({imperial})" if first == "mm" else f"{imperial} ({metric})"


def say_size(width: float, height: float, first: LengthUnit = "mm", decimals: int = 1) -> str:
    """Return ``187.2 × 281.2 mm (7.37 × 11.07 in)``, or the inches first; they are those of the millimetres that are shown, with one
    decimal more."""
    return paired(*size_in_both(width, height, decimals), first)


def size_in_both(width: float, height: float, decimals: int = 1) -> tuple[str, str]:
    """Return the two of ``say_size``: ``187.2 × 281.2 mm``, ``7.37 × 11.07 in``."""
    sides = [fixed(side, decimals) for side in (width, height)]
    return f"{' × '.join(sides)} mm", f"{' × '.join(fixed(inches(float(s)), decimals + 1) for s in sides)} in"


def ordered(text: str, first: LengthUnit) -> str:
    """Return a text in which lengths stand in mm with inches in brackets, with the ``first`` unit first."""
    return text if first == "mm" else _BOTH.sub(r"\2 (\1)", text)


def told_apart(one: float, other: float, words: Callable[[float, int], str]) -> tuple[str, str]:
    """Return two values in words that are not alike, where the values are not: ``words`` says one with so many more decimals.

    A message that holds a value against its limit never says that 25.0 mm are less than 25.0 mm. What no ``MOST_MORE`` more
    decimals tell apart is said as usual.
    """
    pairs = ((words(one, more), words(other, more)) for more in range(MOST_MORE + 1))
    return next((pair for pair in pairs if pair[0] != pair[1]), (words(one, 0), words(other, 0)))


def lengths_apart(one: float, other: float) -> tuple[str, str]:
    """Return two lengths in mm and inches, told apart: ``15.98 mm (0.629 in)``, ``16.00 mm (0.630 in)``."""
    return told_apart(one, other, lambda mm, more: say_length(mm, more=more))


def mm_apart(one: float, other: float) -> tuple[str, str]:
    """Return two lengths in mm alone, told apart: ``15.98 mm``, ``16.00 mm``."""
    return told_apart(one, other, lambda mm, more: say_mm(mm, more=more))


def figures_apart(one: float, other: float, decimals: int) -> tuple[str, str]:
    """Return two figures of that many decimals, of more where they would be alike: ``0.34498``, ``0.34500``."""
    return told_apart(one, other, lambda value, more: fixed(value, decimals + more))


def shares_apart(one: float, other: float, decimals: int = 0) -> tuple[str, str]:
    """Return two shares in per cent, told apart: ``24.8%``, ``25.0%``."""
    return told_apart(one, other, lambda share, more: f"{fixed(100.0 * share, decimals + more)}%")


def _figure(mm: float, rounds: Rounds, more: int = 0) -> str:
    if isnan(mm):
        raise ValueError("a length that is not a number cannot be said")
    return fixed(mm, more + (1 if abs(mm) >= (9.9995 if rounds == "nearest" else 10.0 - DUST) else 2), rounds)


def ruled(mm: float, step_mm: float) -> str:
    """Return a place on a rule in millimetres, read to ``step_mm`` (0.5 or 0.1): ``131.5``, ``3``."""
    return trimmed(round(mm / step_mm) * step_mm, 1)


def ruled_inches(mm: float, parts: int) -> str:
    """Return a place in mm on a rule that parts an inch into so many: ``10 21/32``, ``3``; in decimals where it parts it into 100."""
    return trimmed(inches(mm), 2) if parts == 100 else _fraction(round(inches(mm) * parts), parts)


def _fraction(number: int, parts: int) -> str:
    """Return a number of parts of a whole as people write it: ``3/16``, ``5 1/2``, ``4``."""
    whole, over = divmod(number, parts)
    if not over:
        return str(whole)
    shared = gcd(over, parts)
    return f"{whole or ''} {over // shared}/{parts // shared}".strip()


def written_length(mm: float, more: int = 0) -> str:
    """Return a length as a designer writes it: ``92 mm``, to a thousandth, with so many ``more`` decimals."""
    return f"{round(mm, 3 + more) + 0.0:.15g} mm"


ANGLE_DECIMALS = 2
"""Of degrees, as a bevel is printed: in tenths the facets of a spire stood half a millimetre off."""


def said_angle(degrees: float) -> float:
    """Return an angle without its sign as every page says it: on a template, a guide, in a sketch."""
    return round(abs(degrees), ANGLE_DECIMALS)


def written_angle(degrees: float, more: int = 0) -> str:
    """Return an angle as a reader of a spec knows it: ``22.5°``, to a hundredth, with so many ``more`` decimals."""
    return f"{round(degrees, 2 + more) + 0.0:.15g}°"


def nearest(word: str, known: Iterable[str]) -> str:
    """Return the known word most like ``word``, or '' when none is near. The first of equals wins.

    Capitals, and hyphens or blanks in place of ``_``, make no difference; a part of a word finds it too.
    """
    if len(word) > LONGEST_WORD:
        return ""
    words = list(dict.fromkeys(known))
    plain = {_plain(candidate): candidate for candidate in reversed(words)}
    close = get_close_matches(_plain(word), plain, n=1, cutoff=LIKE)
    if close:
        return plain[close[0]]
    return next((candidate for candidate in words if len(word) > 2 and word in candidate), "")


def _plain(word: str) -> str:
    return word.casefold().replace("-", "_").replace(" ", "_")


def counted(number: int, noun: str) -> str:
    """Return ``1 part`` or ``3 parts``; the noun is one that takes an s."""
    return f"{number:,} {numbered(number, noun)}"


def numbered(number: int, noun: str) -> str:
    """Return ``part`` or ``parts``, as so many of them are called; the noun is one that takes an s."""
    return noun if number == 1 else f"{noun}s"


def agreed(number: int, one: str, more: str) -> str:
    """Return the verb that goes with so many: ``1 sheet does``, ``2 sheets do``."""
    return one if number == 1 else more


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """Return ``did you mean “reach”?``, or '' when no known word is near."""
    near = nearest(word, known)
    return f"did you mean “{near}”?" if near else ""


def listed(words: Iterable[str], most: int = MOST_LISTED) -> str:
    """Return words as a message lists them, cut off after ``most``."""
    known = list(words)
    return ", ".join(known[:most]) + (f" and {len(known) - most} more" if len(known) > most else "")


def series(words: Iterable[str]) -> str:
    """Return words as a sentence lists them: ``A, B and C``; '' for none."""
    *before, last = (*words,) or ("",)
    return f"{', '.join(before)} and {last}" if before else last


def beyond(what: str, said: str, limit: str, *, most: bool) -> str:
    """Say that something lies beyond its limit, whatever is counted or measured."""
    return f"{what} is {said}; it must be {'at most' if most else 'at least'} {limit}"


def cut(text: str, most: int = 200) -> str:
    """Return the text, cut off after ``most`` letters: a message is one sentence, whatever it repeats."""
    return text if len(text) <= most else text[: most - 1] + "…"
