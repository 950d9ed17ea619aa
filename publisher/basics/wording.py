"""The one wording of lengths, angles, lists and nearest words, for all rooms but proof and ruler, which word for themselves."""

from collections.abc import Iterable
from difflib import get_close_matches
from math import ceil, floor, isinf, isnan

from publisher.basics.units import inches

LIKE = 0.6  # share of letters in common from which a word is taken for a slip of another
LONGEST_WORD = 80  # letters: what is longer is no slip of a name
MOST_LISTED = 12  # words that a message lists
MOST_KNOWN = 30  # words that a message lists where one of them is to be chosen


def fixed(value: float, decimals: int) -> str:
    """Return ``value`` with that many decimals, halves rounded away from zero as people do; never ``-0.0``."""
    step = 10.0**-decimals
    # a few parts in 10^12 up, so that 5.0625 or 0.285 are seen as the halves that they were meant to be
    rounded = float(f"{abs(value) + step * 1e-6:.{decimals}f}")
    text = f"{rounded:.{decimals}f}"
    return f"-{text}" if value < 0 and rounded else text


def rounded_up(value: float, decimals: int) -> float:
    """Return the least value of that many decimals that is no less: for the lower end of what is allowed."""
    scale = 10.0**decimals
    return ceil(value * scale - 1e-6) / scale


def rounded_down(value: float, decimals: int) -> float:
    """Return the greatest value of that many decimals that is no more: for the upper end of what is allowed."""
    scale = 10.0**decimals
    return floor(value * scale + 1e-6) / scale


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


def written_length(mm: float) -> str:
    """Return a length as a designer writes it: ``92 mm``, to a thousandth."""
    return f"{round(mm, 3) + 0.0:.10g} mm"


def written_angle(degrees: float) -> str:
    """Return an angle as a reader of a spec knows it: ``22.5°``, to a hundredth."""
    return f"{round(degrees, 2) + 0.0:.10g}°"


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


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """Return ``did you mean “reach”?``, or '' when no known word is near."""
    near = nearest(word, known)
    return f"did you mean “{near}”?" if near else ""


def listed(words: Iterable[str], most: int = MOST_LISTED) -> str:
    """Return words as a message lists them, cut off after ``most``."""
    known = list(words)
    return ", ".join(known[:most]) + (f" and {len(known) - most} more" if len(known) > most else "")


def cut(text: str, most: int = 200) -> str:
    """Return the text, cut off after ``most`` letters: a message is one sentence, whatever it repeats."""
    return text if len(text) <= most else text[: most - 1] + "…"
