"""A spec in one of its languages: of each text that is given in several, the one that is wanted."""

from dataclasses import replace

from publisher.basics import Finding
from publisher.brief import Brief, Node, Row, Table, Value
from publisher.design.rules import expressions as rules


def in_language(brief: Brief, language: str, findings: list[Finding]) -> Brief:
    """Return the brief with every text that stands in several languages in this one.

    A text that lacks the language stands in the first one that it has, with a finding. Only where the schema takes a text is a table
    of languages one: nowhere else may a key be called so alone.
    """
    fields = _said(brief.fields, language, findings)
    return brief if fields is brief.fields or not isinstance(fields, Table) else replace(brief, fields=fields)


def _said(node: Node, language: str, findings: list[Finding]) -> Node:
    if isinstance(node, Value):
        return node
    if isinstance(node, Row):
        items = tuple(_said(item, language, findings) for item in node.items)
        return node if _same(items, node.items) else replace(node, items=items)
    if _is_text(node):
        found = node.value(language)
        if found is not None:
            return found
        first = node.entries[0]
        hint = f"add a line that begins with “{language}:”, or write one text for all languages"
        findings.append(
            rules.TEXT_LANGUAGE.found(
                f"a text stands in {', '.join(f'“{entry.key}”' for entry in node.entries)} and not in “{language}”",
                subject=language,
                hint=hint,
                place=node.place,
            )
        )
        return first.node
    nodes = tuple(_said(entry.node, language, findings) for entry in node.entries)
    if _same(nodes, tuple(entry.node for entry in node.entries)):
        return node
    return replace(
        node, entries=tuple(replace(entry, node=said) for entry, said in zip(node.entries, nodes, strict=True))
    )


def _is_text(table: Table) -> bool:
    """Say whether a table is a text in several languages: the schema gives the kind of a text to what stands in it."""
    return bool(table.entries) and all(
        isinstance(entry.node, Value) and entry.node.kind == "text" and _names_language(entry.key)
        for entry in table.entries
    )


def _names_language(key: str) -> bool:
    return len(key) == 2 and key.isalpha() and key.islower()


def _same(one: tuple[Node, ...], other: tuple[Node, ...]) -> bool:
    return all(a is b for a, b in zip(one, other, strict=True))
