"""The schema laid on the node graph: each scalar gets the kind of its field, and each node its pointer.

Goes out: the tree for `design`, and the JSON instance for the validator. Text stays as written; only flags and plain JSON
numbers in numeric fields become JSON values, because a schema says `true` and `1`.
"""

import re
from dataclasses import dataclass
from typing import Any, cast, get_args

from publisher.basics import Finding, Place
from publisher.basics.wording import listed
from publisher.brief import rules
from publisher.brief.model import Entry, FieldKind, Node, Row, Table, Value
from publisher.brief.nodes import Mapping, RawNode, Scalar, Sequence
from publisher.brief.source import HIDDEN, hidden

Schema = dict[str, Any]
KeyPath = tuple[str | int, ...]
LANGUAGE = re.compile("[a-z]{2}")
_KINDS = get_args(FieldKind)
_NUMERIC = ("length", "angle", "count", "number", "quantity", "fact")
_JSON_NUMBER = re.compile(r"-?(0|[1-9][0-9]{0,14})([.][0-9]{1,15})?")


@dataclass(slots=True)
class Bound:
    """A spec laid on its schema: the tree, the JSON instance, findings, and each file field with its kind of file."""

    fields: Table
    instance: Any
    findings: tuple[Finding, ...]
    files: tuple[tuple[Value, str], ...] = ()


class Binder:
    """Lays one schema on one spec."""

    def __init__(self, schema: Schema, file: str) -> None:
        """Keep the schema and the spec's file name."""
        self._defs = schema.get("$defs", {})
        self._file = file
        self.findings: list[Finding] = []
        self.settled: set[KeyPath] = set()
        self.files: list[tuple[Value, str]] = []

    def bind(self, node: RawNode, schemas: list[Schema], path: KeyPath) -> tuple[Node, Any]:
        """Return the tree's node and the JSON instance for a raw node under all the schemas that apply to it."""
        place = Place(self._file, node.line, node.column, pointer(path))
        if isinstance(node, Scalar):
            return self._scalar(node, schemas, place, path)
        applying = self._expanded(schemas, node)
        if isinstance(node, Mapping) and (said := self._languages(node, applying, path)):
            return said
        if isinstance(node, Sequence):
            below = [s["items"] for s in applying if "items" in s]
            items = node.items[: _most(applying, "maxItems")]
            bound = [self.bind(item, below, (*path, i)) for i, item in enumerate(items)]
            return Row(tuple(n for n, _ in bound), place), [i for _, i in bound]
        entries: list[Entry] = []
        instance: dict[str, Any] = {}
        for key, value in node.entries[: _most(applying, "maxProperties")]:
            here = (*path, key.text)
            bound_node, instance[key.text] = self.bind(value, _below(applying, key.text), here)
            entries.append(Entry(key.text, Place(self._file, key.line, key.column, pointer(here)), bound_node))
        return Table(tuple(entries), place), instance

    def _languages(self, node: Mapping, applying: list[Schema], path: KeyPath) -> tuple[Node, Any] | None:
        """Return a text that stands in several languages, and the longest of them as its instance; None when it is no such text."""
        known = next((s["x-languages"] for s in applying if "x-languages" in s), ())
        named = [key.text for key, value in node.entries if isinstance(value, Scalar) and LANGUAGE.fullmatch(key.text)]
        if not known or not named or len(named) < len(node.entries):
            return None
        entries: list[Entry] = []
        for key, value in node.entries:
            here = Place(self._file, key.line, key.column, pointer((*path, key.text)))
            if key.text not in known:
                self.findings.append(
                    rules.UNKNOWN_WORD.found(
                        f"“{key.text}” is no language that a pack can be in",
                        subject=key.text,
                        hint=f"a text may stand in: {listed(known)}",
                        place=here,
                    )
                )
            text, _ = self.bind(value, applying, (*path, key.text))
            entries.append(Entry(key.text, here, text))
        longest = max((entry.node.text for entry in entries if isinstance(entry.node, Value)), key=len)
        return Table(tuple(entries), Place(self._file, node.line, node.column, pointer(path))), longest

    def _scalar(self, node: Scalar, schemas: list[Schema], place: Place, path: KeyPath) -> tuple[Node, Any]:
        leaf = next((s for s in self._expanded(schemas, node) if s.get("x-kind") in _KINDS), {})
        kind = leaf.get("x-kind", "text")
        text = node.text.strip()
        if not text:
            self.settled.add(path)
            name = path[-1] if path and isinstance(path[-1], str) else "this item"
            self.findings.append(
                rules.NO_VALUE.found(f"“{name}” has no value", hint="write its value, or delete the line", place=place)
            )
        found = HIDDEN.search(text) or (re.search("[\n\t]", text) if kind != "text" else None)
        if found is not None:
            self.settled.add(path)
            self.findings.append(hidden(found.group(), place))
        value = Value(text, cast(FieldKind, kind), place, node.plain)
        if "x-file" in leaf and path not in self.settled:
            self.files.append((value, leaf["x-file"]))
        return value, _instance(node, text, kind)

    def _expanded(self, schemas: list[Schema], node: RawNode) -> list[Schema]:
        """All schemas that apply to a node: references followed, and the branches that its own words choose."""
        waiting, applying = list(schemas), []
        while waiting:
            schema = waiting.pop(0)
            applying.append(schema)
            if "$ref" in schema:
                waiting.append(self._defs[schema["$ref"].removeprefix("#/$defs/")])
            if "if" in schema:
                branch = schema.get("then" if _holds(schema["if"], node) else "else")
                if branch is not None:
                    waiting.append(branch)
            waiting.extend(schema.get("allOf", ()))
        return applying


def pointer(path: KeyPath) -> str:
    """Return the JSON pointer (RFC 6901) of a path."""
    return "".join("/" + str(step).replace("~", "~0").replace("/", "~1") for step in path)


def _most(applying: list[Schema], keyword: str) -> int | None:
    """How many items to look at: one more than may be there is enough to object, and a hostile list costs no time."""
    return min((s[keyword] + 1 for s in applying if keyword in s), default=None)


def _below(applying: list[Schema], key: str) -> list[Schema]:
    named = [s["properties"][key] for s in applying if key in s.get("properties", {})]
    others = [s["additionalProperties"] for s in applying if isinstance(s.get("additionalProperties"), dict)]
    return named or others


def _holds(condition: Schema, node: RawNode) -> bool:
    """Whether a node fulfils an `if` of the schema; these ask only for a type, for one key's word or for no such key."""
    if "not" in condition:
        return not (isinstance(node, Mapping) and any(node.key(key) for key in condition["not"]["required"]))
    if condition.get("type") == "object":
        return isinstance(node, Mapping)
    if condition.get("type") == "array":
        return isinstance(node, Sequence)
    if not isinstance(node, Mapping):
        return True
    for key, wanted in condition.get("properties", {}).items():
        value = node.get(key)
        if not isinstance(value, Scalar) or value.text.strip() != wanted["const"]:
            return False
    return True


def _instance(node: Scalar, text: str, kind: str) -> Any:
    if kind == "flag" and node.plain and text in ("true", "false"):
        return text == "true"
    if kind in _NUMERIC and _JSON_NUMBER.fullmatch(text):
        return float(text) if "." in text else int(text)
    return text
