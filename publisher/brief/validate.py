"""The schema's verdict on a spec, in our own words and with the place of the exact key or value."""

from functools import cache
from json import loads
from typing import Any

from publisher.basics import Finding, Place
from publisher.brief import limits, rules
from publisher.brief.bind import Binder, Bound, Path, Schema
from publisher.brief.complaints import Complaint, complain
from publisher.brief.model import Table
from publisher.brief.nodes import Key, Mapping, RawNode, Sequence
from publisher.brief.schema_build import schema_text


@cache
def spec_schema() -> Schema:
    """Return the committed schema, parsed once."""
    schema: Schema = loads(schema_text())
    return schema


def validate(top: Mapping, file: str, schema: Schema | None = None) -> Bound:
    """Return the tree of a spec's top mapping, its JSON instance, and everything that the schema finds wrong with it.

    All findings are reported at once, in the order of the file, up to a limit; the last one then says so.
    """
    from jsonschema import Draft202012Validator

    schema = spec_schema() if schema is None else schema
    binder = Binder(schema, file)
    tree, instance = binder.bind(top, [schema], ())
    assert isinstance(tree, Table)
    found = dict.fromkeys(binder.findings)
    for error in Draft202012Validator(schema).iter_errors(instance):
        path: Path = tuple(error.absolute_path)
        if path in binder.settled:
            continue
        node, key = find(top, path)
        complaint = Complaint(
            str(error.validator), error.validator_value, error.instance, _schema(error.schema), path, node, key,
            "propertyNames" in error.absolute_schema_path, top, file,
        )  # fmt: skip
        found.update(dict.fromkeys(complain(complaint)))
        if len(found) >= limits.FINDINGS:
            break
    findings = sorted(found, key=lambda f: (f.place.line, f.place.column) if f.place else (0, 0))
    return Bound(tree, instance, shortened(findings, file), binder.settled)


def shortened(findings: list[Finding], file: str) -> list[Finding]:
    """Return the findings that somebody can read at once, and a last one that says when there are more."""
    if len(findings) < limits.FINDINGS:
        return findings
    more = rules.MANY.found(
        f"only the first {limits.FINDINGS} mistakes are shown",
        hint="mend these and run the command again",
        place=Place(file),
        limit=float(limits.FINDINGS),
    )
    return [*findings[: limits.FINDINGS], more]


def find(top: Mapping, path: Path) -> tuple[RawNode | None, Key | None]:
    """Return the raw node at a path, and its key where it stands in a mapping."""
    node: RawNode | None = top
    key: Key | None = None
    for step in path:
        if isinstance(node, Mapping) and isinstance(step, str):
            key, node = node.key(step), node.get(step)
        elif isinstance(node, Sequence) and isinstance(step, int):
            key, node = None, node.items[step]
    return node, key


def _schema(schema: Any) -> Schema:
    return schema if isinstance(schema, dict) else {}
