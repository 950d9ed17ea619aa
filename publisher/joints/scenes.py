"""The art of sketches that is the same in every pack: tools, boards in section, what is right and wrong. A table of what it looks like,
which a test alone writes anew, so that a tool that a page leaves out, mirrors or displaces is refused."""

import json
from dataclasses import replace
from functools import cache
from importlib.resources import files
from typing import Any

from publisher.basics import DrawingPromise

TABLE = "scenes.json"


def scene_promise(key: str, name: str) -> DrawingPromise:
    """Return a scene of the table as a promise under a key; mm of its sketch."""
    return replace(_scenes()[name], key=key)


def scene_names() -> tuple[str, ...]:
    """Return the names of all scenes."""
    return tuple(_scenes())


@cache
def _scenes() -> dict[str, DrawingPromise]:
    table = json.loads((files("publisher.joints") / TABLE).read_text(encoding="utf-8"))
    return {name: _promise(name, row) for name, row in table.items()}


def _promise(name: str, row: dict[str, Any]) -> DrawingPromise:
    wide, high = row["size"]
    kinds = ("lines", "fine", "heads")
    lines, fine, heads = (tuple(tuple((x, y) for x, y in line) for line in row[kind]) for kind in kinds)
    labels = tuple((text, (x, y)) for text, x, y in row["labels"])
    return DrawingPromise("", f"scene:{name}", wide, high, lines, fine, labels, among=row["among"], heads=heads)
