"""PDF objects by pypdf, read so that a damaged one is a missing one, within a budget of decoded bytes."""

from dataclasses import dataclass
from math import isfinite
from typing import Any

MOST_STREAM = 16_000_000  # bytes of one decoded stream; pypdf is told the same
MOST_DECODED = 48_000_000  # bytes of all decoded streams of one file
MOST_FILE_OPERATORS = 400_000  # of one file
MOST_PAINTED_POINTS = 1_500_000
MOST_FORMS = 4000


class TooMuch(Exception):
    """The file asks for more work than an honest pack ever needs."""


@dataclass(slots=True)
class Spent:
    """Work done so far on one file, against its limits."""

    operators: int = 0
    points: int = 0
    forms: int = 0
    decoded: int = 0

    def check(self) -> None:
        """Raise TooMuch when an honest pack would long have been finished."""
        if self.operators > MOST_FILE_OPERATORS or self.points > MOST_PAINTED_POINTS or self.forms > MOST_FORMS:
            raise TooMuch("the pages hold hundreds of thousands of drawing operators")

    def unpack(self, count: int) -> None:
        """Count decoded bytes, or entries of a table made from few bytes. Raises TooMuch when there are more than an honest pack has."""
        self.decoded += count
        if self.decoded > MOST_DECODED:
            raise TooMuch("the file unpacks to more than 48 MB")


def plain(thing: Any) -> Any:
    """Return the object behind an indirect reference; None when it is missing, null or damaged."""
    for _ in range(16):
        if not hasattr(thing, "get_object") or not hasattr(thing, "idnum"):
            break
        try:
            thing = thing.get_object()
        except TooMuch:
            raise
        except Exception:  # whatever a damaged object raises, it is not there
            return None
    return None if type(thing).__name__ == "NullObject" else thing


def raw(dictionary: Any, key: str) -> Any:
    """Return what stands under a key, a reference unresolved; None when the key is not there."""
    if not isinstance(dictionary, dict) or key not in dictionary:
        return None
    return dictionary.raw_get(key) if hasattr(dictionary, "raw_get") else dictionary[key]


def dictionary(thing: Any) -> Any:
    """Return a dictionary, empty when it is missing or something else."""
    found = plain(thing)
    return found if isinstance(found, dict) else {}


def array(thing: Any) -> Any:
    """Return an array, empty when it is missing or something else."""
    found = plain(thing)
    return found if isinstance(found, list) else []


def number(thing: Any, default: float = 0.0) -> float:
    """Return a finite number, or the default."""
    try:
        value = float(plain(thing))
    except (TypeError, ValueError, OverflowError):
        return default
    return value if isfinite(value) else default


def numbers(thing: Any) -> list[float]:
    """Return the numbers of an array."""
    row = plain(thing)
    return [number(v) for v in row] if isinstance(row, list) else []


def stream_bytes(stream: Any, spent: Spent) -> bytes:
    """Return the decoded bytes of a stream; b"" when it cannot be decoded. Raises TooMuch when the file has too many."""
    try:
        data = bytes(stream.get_data())
    except Exception as trouble:
        if type(trouble).__name__ == "LimitReachedError":
            raise TooMuch("a stream unpacks to more than 16 MB") from trouble
        return b""
    spent.unpack(len(data))
    return data
