"""The schema's verdict on a spec, in our own words and with the place of the exact key or value."""

from functools import cache
from json import loads
from typing import Any

from publisher.basics import Finding
from publisher.brief import limits
from publisher.brief.bind import Binder, Bound, KeyPath, Schema
from publisher.brief.complaint import Complaint
from publisher.brief.complaints import complain
from publisher.brief.likenesses import with_likenesses
from publisher.brief.model import Table
from publisher.brief.nodes import Key, Mapping, RawNode, Scalar, Sequence
from publisher.brief.schema_of_spec import schema_text

OF_LANGUAGES = ("propertyNames", "additionalProperties", "minProperties")
"""What a schema says of a text in several languages, beside its types."""


@cache
def spec_schema() -> Schema:
    """Return the committed schema, parsed once."""
    schema: Schema = plain_texts(loads(schema_text()))
    return schema


def plain_texts(schema: Any) -> Any:
    """Return a schema whose texts are single ones: ``Binder`` lays those in several languages on it as one of them each.

    What editors need to know of these languages is left out but for ``x-languages``: a text that opens with a brace by mistake is then
    answered as what it is.
    """
    if isinstance(schema, list):
        return [plain_texts(item) for item in schema]
    if not isinstance(schema, dict):
        return schema
    if schema.get("x-kind") == "text" and "object" in schema.get("type", ()):
        own = {key: value for key, value in schema.items() if key not in OF_LANGUAGES}
        kinds = [kind for kind in schema["type"] if kind != "object"]
        return {**own, "type": kinds, "x-languages": schema["propertyNames"]["enum"]}
    return {key: plain_texts(value) for key, value in schema.items()}


def validate(top: Mapping, file: str, schema: Schema | None = None) -> Bound:
    """Return the tree of a spec's top mapping, its JSON instance, and everything that the schema finds wrong with it.

    All findings are reported at once; a hostile spec's stop soon after the number that anybody would read.
    """
    from jsonschema import Draft202012Validator

    schema = spec_schema() if schema is None else plain_texts(schema)
    top, about_likeness = with_likenesses(top, file, schema)
    binder = Binder(schema, file)
    tree, instance = binder.bind(top, [schema], ())
    assert isinstance(tree, Table)
    if (other := _other_format(top, file, schema)) is not None:  # by the words of this format the rest means nothing
        return Bound(tree, instance, (other,), tuple(binder.files))
    found = {_about(f): f for f in (*about_likeness, *binder.findings)}
    for error in Draft202012Validator(schema).iter_errors(instance):
        path: KeyPath = tuple(error.absolute_path)
        if path in binder.settled:
            continue
        node, key = find(top, path)
        complaint = Complaint(
            str(error.validator), error.validator_value, error.instance, _schema(error.schema), path, node, key,
            "propertyNames" in error.absolute_schema_path, top, file,
        )  # fmt: skip
        for finding in complain(complaint):  # of two that object to one thing the later is the closer
            found[_about(finding)] = finding
        if len(found) > limits.FINDINGS:
            break
    return Bound(tree, instance, tuple(found.values()), tuple(binder.files))


def _about(finding: Finding) -> tuple[str, tuple[int, int], str]:
    """Return what tells a finding from others: what stands in one place and is read for several parts is found once."""
    place = finding.place
    return finding.check, (place.line, place.column) if place else (0, 0), finding.subject


def _other_format(top: Mapping, file: str, schema: Schema) -> Finding | None:
    """Return the finding for a spec of another format than the schema's, or None."""
    form, node = schema.get("properties", {}).get("format", {}), top.get("format")
    if "const" not in form or not isinstance(node, Scalar) or node.text.strip() in ("", str(form["const"])):
        return None
    return next(
        iter(complain(Complaint("const", form["const"], node.text, form, ("format",), node, None, False, top, file)))
    )


def find(top: Mapping, path: KeyPath) -> tuple[RawNode | None, Key | None]:
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
