"""Words of a pack in another language as a reader in English would take them down: those that numbers hang on, word by word.

As each word stands for itself, and its place in the line makes no difference, a text reads the same whole or line by line.
"""

import json
import re
from collections.abc import Callable
from dataclasses import replace
from functools import cache
from importlib.resources import files

from publisher.basics import Promises, reworded
from publisher.proof.reading.model import PageRead

HYPHENED = re.compile("\u2010 +")
_WORD = re.compile(r"[^\W\d_]+|[„“]")
_DECIMAL = re.compile(r"(?<=\d),(?=\d)")
_COMPOUND = re.compile(r"(?<=[^\W\d_])-(?=[A-ZÄÖÜ])|(?<=\d)-(?=[A-ZÄÖÜ])")  # of words that English sets apart


@cache
def _words(language: str) -> dict[str, str]:
    """Return the table of a language; none of one that has none, as English."""
    tables = json.loads((files("publisher.proof.reading") / "other_words.json").read_text(encoding="utf-8"))
    found: dict[str, str] = tables.get(language.split("-", maxsplit=1)[0].lower(), {}) if language else {}
    return found


def reader_of(language: str) -> Callable[[str], str] | None:
    """Return what takes a text of a language down in English; None where there is nothing to do."""
    words = _words(language)
    if not words:
        return None

    def take_down(text: str) -> str:
        return _DECIMAL.sub(".", _WORD.sub(lambda found: words.get(found[0], found[0]), _COMPOUND.sub(" ", text)))

    return take_down


def unbroken(text: str) -> str:
    """Return a text of several lines with the words whole that a hyphen parts at the end of a line."""
    return HYPHENED.sub("", text)


def page_in_english(page: PageRead, take_down: Callable[[str], str]) -> PageRead:
    """Return a page with its words taken down in English, each where it stands."""
    return replace(page, texts=tuple(replace(run, text=take_down(run.text)) for run in page.texts))


def promises_in_english(promises: Promises, take_down: Callable[[str], str]) -> Promises:
    """Return the promises of words taken down in English, to be held against such pages; what is held against the file itself, as
    things drawn and tags are, stays."""
    return replace(
        reworded(promises, take_down),
        pages=tuple(replace(page, task=take_down(page.task)) for page in promises.pages),
        texts=tuple(replace(text, text=take_down(text.text)) for text in promises.texts),
        lengths=tuple(replace(line, label=take_down(line.label)) for line in promises.lengths),
        rows=tuple(replace(row, name=take_down(row.name)) for row in promises.rows),
    )
