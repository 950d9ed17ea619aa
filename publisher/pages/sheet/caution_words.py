"""Names of tools and materials, and the cautions that they call for, from ``cautions.json``."""

import json
from dataclasses import replace
from functools import cache, lru_cache
from importlib.resources import files
from typing import Any

from publisher.basics import record
from publisher.basics.wording import ordered
from publisher.pages.sheet.editions import Edition


@record
class Caution:
    """A caution in our own words, with where its facts come from."""

    id: str
    title: str
    text: str
    source: str


@record
class Thing:
    """A tool or material: its key in a spec, its name on a page, a short one for lists in steps, ids of the cautions that it calls
    for."""

    key: str
    name: str
    short: str
    cautions: tuple[str, ...]


@cache
def _table() -> dict[str, Any]:
    table: dict[str, Any] = json.loads((files("publisher.pages.sheet") / "cautions.json").read_text(encoding="utf-8"))
    return table


@cache
def tool_words() -> tuple[Thing, ...]:
    """Return every tool that a spec may list."""
    return _things("tools")


@cache
def material_words() -> tuple[Thing, ...]:
    """Return every material that a spec may list by key."""
    return _things("materials")


def _things(kind: str) -> tuple[Thing, ...]:
    return tuple(
        Thing(row["key"], row["name"], row.get("short", row["name"]), tuple(row["cautions"])) for row in _table()[kind]
    )


def thing(key: str) -> Thing | None:
    """Return the tool or material with this key, or None."""
    return next((t for t in (*tool_words(), *material_words()) if t.key == key), None)


def thing_name(key: str, edition: Edition) -> str:
    """Return what a tool or material is called in an edition, sizes in its name with the unit of there first; a key without words
    stands for itself."""
    found = _there(key, edition)
    return ordered(found.name, edition.first) if found else key.replace("_", " ")


def short_name(key: str, edition: Edition) -> str:
    """Return the short name of a tool or material, without its sizes; a key without words stands for itself."""
    found = _there(key, edition)
    return found.short if found else key.replace("_", " ")


def _there(key: str, edition: Edition) -> Thing | None:
    """Return a tool or material under its name in an edition."""
    found = thing(key)
    if found is None:
        return None
    named = next(((name, short) for known, name, short in edition.names if known == key), None)
    return found if named is None else replace(found, name=named[0], short=named[1])


def table_words(edition: Edition) -> tuple[str, ...]:
    """Return all words of the tables as the pages of an edition print them: numbers in them are as the tables have them."""
    texts = (row["text"] for row in _table()["cautions"].values())
    keys = [found.key for found in (*tool_words(), *material_words())]
    names = (name for key in keys for name in (thing_name(key, edition), short_name(key, edition)))
    return tuple(dict.fromkeys((*texts, *names, edition.sold)))


@lru_cache(maxsize=100)
def cautions_for(keys: tuple[str, ...], *, always: bool = True) -> tuple[Caution, ...]:
    """Return the cautions that these tools and materials call for, each once, in the table's order; those for every pack first."""
    wanted = set(_table()["always"]) if always else set()
    for key in keys:
        found = thing(key)
        wanted.update(found.cautions if found else ())
    return tuple(
        Caution(id_, row["title"], row["text"], row["source"])
        for id_, row in _table()["cautions"].items()
        if id_ in wanted
    )
