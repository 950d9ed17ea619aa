"""A brief as it would be with other words in some mappings of its spec: to try what a finding proposes. Nothing is written."""

from dataclasses import replace

from publisher.basics import Cure, Place
from publisher.brief.model import Brief, Entry, Node, Row, Table, Value


def with_words(brief: Brief, cure: Cure) -> Brief | None:
    """Return the brief with a cure's words in place of those that stand there, if any; None when there is no mapping at its places.

    The words are taken as names where they are one word, else as lengths; they are not checked against the schema.
    """
    fields = _written(brief.fields, cure)
    return None if fields == brief.fields else replace(brief, fields=fields)


def without(brief: Brief, key: str) -> Brief:
    """Return the brief without one of the keys at the top of its spec, there or not."""
    fields = brief.fields
    return replace(brief, fields=replace(fields, entries=tuple(e for e in fields.entries if e.key != key)))


def _written(table: Table, cure: Cure) -> Table:
    if table.place in cure.places:
        entry = Entry(cure.key, table.place, _node(cure, table.place))
        return replace(table, entries=(*(e for e in table.entries if e.key != cure.key), entry))
    return replace(table, entries=tuple(replace(e, node=_inside(e.node, cure)) for e in table.entries))


def _inside(node: Node, cure: Cure) -> Node:
    if isinstance(node, Table):
        return _written(node, cure)
    return replace(node, items=tuple(_inside(item, cure) for item in node.items)) if isinstance(node, Row) else node


def _node(cure: Cure, place: Place) -> Node:
    def value(text: str) -> Value:
        return Value(text, "name" if text.isalpha() else "length", place)

    if isinstance(cure.words, str):
        return value(cure.words)
    return Table(tuple(Entry(key, place, value(text)) for key, text in cure.words), place)
