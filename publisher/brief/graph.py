"""The node graph, built from a YAML parser's events with a stack of its own: no recursion, every limit checked as it grows."""

from typing import NoReturn

from yaml.events import (
    AliasEvent,
    CollectionStartEvent,
    DocumentStartEvent,
    Event,
    MappingEndEvent,
    MappingStartEvent,
    NodeEvent,
    ScalarEvent,
    SequenceEndEvent,
)

from publisher.basics import Finding, Place, Refusal, Rule
from publisher.brief import limits, rules
from publisher.brief.nodes import Key, Mapping, RawNode, Scalar, Sequence
from publisher.brief.source import HIDDEN, hidden
from publisher.brief.wording import short

_CORE = "tag:yaml.org,2002:"
_SCALAR_TAGS = {_CORE + name for name in ("str", "int", "float", "bool", "null")}
_MAPPING_TAGS = {_CORE + "map"}
_SEQUENCE_TAGS = {_CORE + "seq"}


def _spot(event: Event) -> tuple[int, int]:
    """Line and column of an event, from 1."""
    mark = event.start_mark
    return (0, 0) if mark is None else (mark.line + 1, mark.column + 1)


class Builder:
    """Takes events one by one; ``top`` is then the whole graph. Raises Refusal at what a spec may not hold."""

    def __init__(self, file: str) -> None:
        """Begin an empty graph of the file with this name."""
        self.file = file
        self.top: RawNode | None = None
        self.findings: list[Finding] = []
        self._open: list[Mapping | Sequence] = []
        self._keys: list[Key | None] = []  # the key that waits for its value, per open node
        self._known: list[dict[str, int]] = []  # keys of each open mapping and their lines
        self._anchors: dict[str, RawNode | None] = {}  # None while the node is still open
        self._names: list[str | None] = []
        self._nodes = 0
        self._aliases = 0
        self._documents = 0

    def take(self, event: Event) -> None:
        """Take one event of the parser."""
        if isinstance(event, ScalarEvent):
            self._scalar(event)
        elif isinstance(event, CollectionStartEvent):
            self._begin(event)
        elif isinstance(event, (MappingEndEvent, SequenceEndEvent)):
            self._end()
        elif isinstance(event, AliasEvent):
            self._alias(event)
        elif isinstance(event, DocumentStartEvent):
            self._documents += 1
            if self._documents > 1:
                self._refuse(
                    rules.DOCUMENTS, event, "a second document begins here", "a spec is one document: delete “---”"
                )

    def _refuse(self, rule: Rule, event: Event, message: str, hint: str, limit: float | None = None) -> NoReturn:
        raise Refusal(*self.findings, rule.found(message, hint=hint, place=self._place(event), limit=limit))

    def _place(self, event: Event) -> Place:
        return Place(self.file, *_spot(event))

    def _find(self, rule: Rule, event: Event, message: str, hint: str) -> None:
        if len(self.findings) <= limits.FINDINGS:
            self.findings.append(rule.found(message, hint=hint, place=self._place(event)))

    def _waits_for_key(self) -> bool:
        return bool(self._open) and isinstance(self._open[-1], Mapping) and self._keys[-1] is None

    def _scalar(self, event: ScalarEvent) -> None:
        line, column = _spot(event)
        plain = event.style in (None, "")
        self._tag(event, _SCALAR_TAGS)
        if self._waits_for_key():
            self._count(1, event)
            self._key(event, Key(event.value, line, column), plain)
            return
        one_line = event.end_mark is not None and event.end_mark.line + 1 == line
        if plain and one_line and event.end_mark is not None and (event.anchor or event.tag):
            column = event.end_mark.column + 1 - len(event.value)  # the mark before it is no part of the text
        node = Scalar(event.value, plain and one_line, line, column)
        self._count(1, event)
        if event.anchor is not None:
            self._anchors[event.anchor] = node
        self._attach(node)

    def _key(self, event: ScalarEvent, key: Key, plain: bool) -> None:
        known = self._known[-1]
        invisible = HIDDEN.search(key.text)
        if invisible is not None:
            key.dropped = True
            if len(self.findings) <= limits.FINDINGS:
                self.findings.append(hidden(invisible.group(), self._place(event)))
        elif plain and key.text == "<<":
            self._find(rules.MERGE, event, "“<<” takes values over from elsewhere", "write the values out here")
            key.dropped = True
        elif key.text in known:
            message = f"the key “{short(key.text)}” stands here again; it was given in line {known[key.text]}"
            self._find(rules.DUPLICATE, event, message, "keep one of the two")
            key.dropped = True
        elif not key.text or len(key.text) > limits.KEY_LETTERS:
            what = "an empty key" if not key.text else f"a key of more than {limits.KEY_LETTERS} letters"
            self._find(rules.KEY, event, f"{what} stands here", "a key is one short word")
        known.setdefault(key.text, key.line)
        self._keys[-1] = key

    def _begin(self, event: CollectionStartEvent) -> None:
        if self._waits_for_key():
            self._refuse(rules.KEY, event, "a list or a mapping stands where a key should", "a key is one word")
        mapping = isinstance(event, MappingStartEvent)
        self._tag(event, _MAPPING_TAGS if mapping else _SEQUENCE_TAGS)
        self._count(1, event)
        if len(self._open) >= limits.DEPTH:
            self._deep(event)
        line, column = _spot(event)
        node = (
            Mapping(bool(event.flow_style), line, column) if mapping else Sequence(bool(event.flow_style), line, column)
        )
        if event.anchor is not None:
            self._anchors[event.anchor] = None
        self._names.append(event.anchor)
        self._open.append(node)
        self._keys.append(None)
        self._known.append({})

    def _end(self) -> None:
        node = self._open.pop()
        self._keys.pop()
        self._known.pop()
        name = self._names.pop()
        if name is not None:
            self._anchors[name] = node
        self._attach(node)

    def _alias(self, event: AliasEvent) -> None:
        self._aliases += 1
        if self._aliases > limits.ALIASES:
            hint = "give the number a name under “sizes” and use the name"
            message = f"more than {limits.ALIASES} aliases are used"
            self._refuse(rules.ALIASES, event, message, hint, float(limits.ALIASES))
        name = event.anchor or ""
        if self._waits_for_key():
            self._refuse(rules.KEY, event, f"the alias “*{name}” stands where a key should", "write the key out")
        node = self._anchors.get(name)
        if node is None:
            what = "stands inside the value that it repeats" if name in self._anchors else "was never given a value"
            self._refuse(
                rules.SYNTAX, event, f"the alias “*{name}” {what}", "write the value out, or quote a text with “*”"
            )
        self._count(node.size, event)
        if len(self._open) + node.depth > limits.DEPTH:
            self._deep(event)
        self._attach(node)

    def _attach(self, node: RawNode) -> None:
        if not self._open:
            self.top = node
            return
        parent = self._open[-1]
        parent.size += node.size
        parent.depth = max(parent.depth, node.depth + 1)
        if isinstance(parent, Sequence):
            parent.items.append(node)
            return
        key = self._keys[-1]
        assert key is not None
        parent.size += 1
        if not key.dropped:
            parent.entries.append((key, node))
        self._keys[-1] = None

    def _count(self, nodes: int, event: Event) -> None:
        self._nodes += nodes
        if self._nodes > limits.NODES:
            message = f"the spec holds more than {limits.NODES:,} values"
            self._refuse(rules.NODES, event, message, "split the design into several folders", float(limits.NODES))

    def _deep(self, event: Event) -> NoReturn:
        message = f"lists and mappings are nested more than {limits.DEPTH} deep here"
        self._refuse(
            rules.DEPTH, event, message, "no section of a spec needs it: look for a lost bracket", float(limits.DEPTH)
        )

    def _tag(self, event: NodeEvent, allowed: set[str]) -> None:
        tag = getattr(event, "tag", None)
        if tag is not None and tag not in allowed:
            self._find(rules.TAG, event, "a YAML tag stands here", "delete the word that begins with “!”")
