"""Values as JSON takes them: finite numbers, rounded, whole where they are whole."""

import json
from collections.abc import Iterable
from math import isfinite
from typing import Any

from publisher.basics import Box, Pose

Json = None | bool | int | float | str | list["Json"] | dict[str, "Json"]


def plain_number(value: float, decimals: int = 4) -> Json:
    """Return a finite number rounded; what is not finite has no number (None)."""
    if not isfinite(value):
        return None
    rounded = round(value, decimals)
    return int(rounded) if rounded == int(rounded) else rounded


def numbers(values: Iterable[float], decimals: int = 4) -> list[Json]:
    """Return each number rounded."""
    return [plain_number(value, decimals) for value in values]


def fields(thing: object, names: str, /, decimals: int = 4, **more: Json) -> dict[str, Json]:
    """Return fields of a record under their own names, boxes as their sides, poses by their parts, tuples as lists; and ``more``."""
    return {name: _plain(getattr(thing, name), decimals) for name in names.split()} | more


def _plain(value: Any, decimals: int) -> Json:
    if isinstance(value, float):
        return plain_number(value, decimals)
    if isinstance(value, Box):
        return numbers(value.sides, decimals)
    if isinstance(value, Pose):
        return fields(value, "x y mirrored", decimals, turn=plain_number(value.turn, 6))
    if isinstance(value, tuple):
        return [_plain(item, decimals) for item in value]
    if value is None or isinstance(value, bool | int | str):
        return value
    raise TypeError(f"a {type(value).__name__} is no plain value")


def one_line_each(document: dict[str, Json]) -> bytes:
    """Return a document as UTF-8 JSON with sorted keys, a line for each of its parts, ending in a newline."""
    lines = [f"{json.dumps(key)}: {_text(value)}" for key, value in sorted(document.items())]
    return ("{\n" + ",\n".join(lines) + "\n}\n").encode()


def _text(value: Json) -> str:
    """Return a part on one line; the items of a list of objects stand on lines of their own."""
    if isinstance(value, list) and value and all(isinstance(item, dict) for item in value):
        return "[\n" + ",\n".join(f"  {_flat(item)}" for item in value) + "\n]"
    return _flat(value)


def _flat(value: Json) -> str:
    return json.dumps(value, ensure_ascii=False, sort_keys=True, separators=(",", ":"), allow_nan=False)
