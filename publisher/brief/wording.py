"""Words for findings: what was found, what a field takes, the nearest known word."""

from collections.abc import Iterable
from typing import Any

from publisher.basics.wording import MOST_KNOWN, did_you_mean, listed
from publisher.brief.nodes import Mapping, RawNode, Sequence

_SHOWN_LETTERS = 40
_EXPECTED = {
    "text": "text",
    "name": "a name",
    "length": "a length such as “5 mm”, “3/16 in” or “2 * board”",
    "angle": "an angle such as “40 deg” or “360 deg / steps”",
    "count": "a whole number or an expression that gives one",
    "number": "a number or an expression that gives one",
    "quantity": "a value such as “5 mm”, “40 deg”, “14” or an expression",
    "fact": "a fact such as “stair.height”, or an expression",
    "flag": "true or false",
    "file": "the name of a file in the design folder",
}


def expected(schema: dict[str, Any]) -> str:
    """Say what a field with this schema takes."""
    if "x-form" in schema:
        return str(schema["x-form"])
    if "const" in schema:
        return f"“{schema['const']}”"
    if "enum" in schema:
        return f"one of {listed(ticked(schema['enum']))}"
    if "x-kind" in schema:
        return _EXPECTED[schema["x-kind"]]
    return {"object": "“key: value” pairs", "array": "a list"}.get(str(schema.get("type")), "another value")


def shown(node: RawNode | None) -> str:
    """Say what stands in the spec, shortened."""
    if isinstance(node, Mapping):
        return "“key: value” pairs"
    if isinstance(node, Sequence):
        return "a list"
    return "nothing" if node is None else f"“{short(node.text.strip())}”"


def short(text: str) -> str:
    """Return a text on one line, cut to a length that fits a message, with control characters made visible."""
    line = " ".join(text[: 4 * _SHOWN_LETTERS].split())
    line = "".join(c if c.isprintable() else f"<U+{ord(c):04X}>" for c in line)
    return line if len(line) <= _SHOWN_LETTERS else line[:_SHOWN_LETTERS] + "…"


def ticked(words: Iterable[Any]) -> list[str]:
    """Return words of the spec as they stand in it."""
    return [f"“{w}”" for w in words]


def proposal(word: str, known: Iterable[str]) -> str:
    """Say which known word was probably meant, or list the known ones."""
    words = list(known)
    if near := did_you_mean(word, words):
        return near
    return f"known here: {listed(ticked(words), MOST_KNOWN)}" if words else ""
