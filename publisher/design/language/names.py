"""The nearest known word for a misspelt one, and names that sizes cannot have."""

from collections.abc import Iterable
from difflib import get_close_matches


def nearest(word: str, known: Iterable[str]) -> str:
    """Return the known word most like ``word``, or '' when none is near. The first of equals wins."""
    candidates = list(dict.fromkeys(known))
    by_small = {candidate.lower(): candidate for candidate in reversed(candidates)}
    found = get_close_matches(word.lower(), by_small, n=1, cutoff=0.6)
    return by_small[found[0]] if found else ""


def nearest_hint(word: str, known: Iterable[str]) -> str:
    """Return ``did you mean “reach”?`` or ''."""
    near = nearest(word, known)
    return f"did you mean “{near}”?" if near else ""


def cut(text: str, most: int = 200) -> str:
    """Return the text, cut off after ``most`` letters: a message is one sentence, whatever it repeats."""
    return text if len(text) <= most else text[: most - 1] + "…"


def listed(words: Iterable[str], most: int = 12) -> str:
    """Return words as a message lists them, cut off after ``most``."""
    known = list(words)
    return ", ".join(known[:most]) + (f" and {len(known) - most} more" if len(known) > most else "")


def pick_hint(word: str, known: Iterable[str], what: str) -> str:
    """Return the nearest known word, or the list of what is known, as a hint."""
    words = list(known)
    if hint := nearest_hint(word, words):
        return hint
    return f"known {what}: {listed(words)}" if words else f"the spec has no {what}"
