"""The words of the pages: one for each thing, from ``terms.json``."""

import json
from functools import cache
from importlib.resources import files
from typing import Any

from publisher.basics import record


@record
class Term:
    """A word for a thing on pages, what it means, and the words that are not used for that thing."""

    term: str
    meaning: str
    twins: tuple[str, ...]


@cache
def terms() -> tuple[Term, ...]:
    """Return every term, in the order in which a buyer meets the things."""
    table: dict[str, Any] = json.loads((files("publisher.pages.sheet") / "terms.json").read_text(encoding="utf-8"))
    return tuple(Term(row["term"], row["meaning"], tuple(row["not"])) for row in table["terms"])
