"""Briefs with other texts in their values, without reading the spec again; what is compared of two of them."""

import re
from collections.abc import Iterator
from dataclasses import fields, is_dataclass, replace

from publisher.basics import Finding, Place
from publisher.brief import Brief, Node, Row, Table, Value
from publisher.design import variants, work_out

Changes = dict[str, str]  # pointer of a value: its new text
NAME = re.compile(r"[^\W\d]\w*")


def brief_with(brief: Brief, changes: Changes) -> Brief:
    """Return the brief with other values."""
    changed = with_values(brief.fields, changes)
    assert isinstance(changed, Table)
    return replace(brief, fields=changed)


def findings_of(brief: Brief) -> tuple[Finding, ...]:
    """Return what ``design`` finds in all variants, each once."""
    return tuple(dict.fromkeys(f for v in ("", *variants(brief)) for f in work_out(brief, v).findings))


def with_values(node: Node, changes: Changes) -> Node:
    """Return a tree with other texts where ``changes`` has them, by pointer; the number of a step for a list of them too."""
    if isinstance(node, Value):
        new = changes.get(node.place.pointer)
        if new is None or not new.startswith("["):
            return node if new is None else replace(node, text=new)
        return Row(tuple(Value(n, "count", node.place) for n in new.strip("[]").split(", ")), node.place)
    if isinstance(node, Table):
        return replace(node, entries=tuple(replace(e, node=with_values(e.node, changes)) for e in node.entries))
    return replace(node, items=tuple(with_values(item, changes) for item in node.items))


def texts_of(node: Node) -> Iterator[Value]:
    """Yield every text of a tree that is printed."""
    match node:
        case Value(kind="text"):
            yield node
        case Table():
            for entry in node.entries:
                yield from texts_of(entry.node)
        case Row():
            for item in node.items:
                yield from texts_of(item)


def bare(value: object) -> object:
    """Return a record as tuples, without the places in the text."""
    if isinstance(value, tuple):
        return tuple(map(bare, value))
    if is_dataclass(value):
        return tuple(bare(one) for one in (getattr(value, f.name) for f in fields(value)) if not isinstance(one, Place))
    return value
