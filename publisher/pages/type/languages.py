"""The languages that packs can be in, besides English, and their tables.

A row has words of ours in English as its key, with ``{}`` for each figure in it, and ``{part}`` or another small name for words; in the
other form places stand in the same order, or ``{2}`` names the second figure. A language is a folder of such tables, read together, with
what else it has of its own in ``language.json``.
"""

import json
import re
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from publisher.basics import record

FOLDER = Path(__file__).parent / "languages"
ENGLISH = "en"
PLACE = re.compile(r"\{(\w*)\}")


@record
class Language:
    """What a language has beside its rows: its name, its decimal sign and that of thousands, words between figures, words that stay on
    a line with the number behind them, words before numbers of pages, and the name of its rules for hyphens."""

    name: str
    title: str
    decimal: str
    thousands: str
    between: tuple[tuple[str, str], ...]
    bound: tuple[str, ...]
    pages: tuple[str, ...]
    hyphens: str


@dataclass(frozen=True, eq=False)
class PlacedRow:
    """A row with words in places: what finds it, its form in the language, and the names of its places in order."""

    finds: re.Pattern[str]
    said: str
    names: tuple[str, ...]


@dataclass(frozen=True, eq=False)
class LanguageTable:
    """All rows of a language: those of figures alone by their key, those with places for words by the first word of it."""

    language: Language
    rows: dict[str, str]
    forms: dict[str, tuple[PlacedRow, ...]]


def known_languages() -> tuple[str, ...]:
    """Return the languages that a pack can be in: English, and all with a table."""
    return (ENGLISH, *sorted(found.name for found in FOLDER.iterdir() if (found / "language.json").is_file()))


def language_titles() -> tuple[tuple[str, str], ...]:
    """Return these languages, each with its name in itself."""
    return tuple((name, "English" if name == ENGLISH else table_of(name).language.title) for name in known_languages())


@cache
def table_of(language: str) -> LanguageTable:
    """Read the table of a language. Raises FileNotFoundError when it has none."""
    folder = FOLDER / language
    said = json.loads((folder / "language.json").read_text("utf-8"))
    about = Language(
        language,
        said["title"],
        said["decimal"],
        said["thousands"],
        tuple((one, other) for one, other in said["between"].items()),
        tuple(said["bound"]),
        tuple(said["pages"]),
        said["hyphens"],
    )
    rows: dict[str, str] = {}
    forms: dict[str, list[tuple[str, PlacedRow]]] = {}
    for file in sorted(folder.glob("*.json")):
        if file.name != "language.json":
            for key, form in json.loads(file.read_text("utf-8")).items():
                names = tuple(found for found in PLACE.findall(key) if found)
                if not names:
                    rows[key] = form
                    continue
                made = PlacedRow(_finds(key), form, tuple(PLACE.findall(key)))
                forms.setdefault(_first(key), []).append((key, made))
    ordered = {
        first: tuple(form for _, form in sorted(found, key=lambda one: (-len(PLACE.sub("", one[0])), one[0])))
        for first, found in forms.items()
    }
    return LanguageTable(about, rows, ordered)


def _first(key: str) -> str:
    """Return the word by which a row is found; "" when it begins with a place."""
    word = key.split(" ", 1)[0]
    return "" if "{" in word and not word.startswith("{}") else word


def _finds(key: str) -> re.Pattern[str]:
    pieces = PLACE.split(key)
    made = "".join(
        re.escape(piece) if number % 2 == 0 else r"(\{\})" if not piece else r"(.+?)"
        for number, piece in enumerate(pieces)
    )
    return re.compile(made)
