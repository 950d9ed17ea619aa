"""The generated schema: valid by its own standard, the same bytes each time, with words for every field."""

from collections.abc import Iterator
from dataclasses import replace
from json import loads
from typing import Any, get_args

import pytest
from jsonschema import Draft202012Validator

from publisher.brief import FieldKind, SchemaParameter, SchemaParts, SchemaShape, build_schema, schema_text
from publisher.brief.validate import validate
from publisher.brief.yaml_reader import read_nodes


def _schemas(node: Any) -> Iterator[dict[str, Any]]:
    if isinstance(node, dict):
        yield node
        for value in node.values():
            yield from _schemas(value)
    elif isinstance(node, list):
        for value in node:
            yield from _schemas(value)


def test_the_schema_is_valid_and_stable(schema_parts: SchemaParts) -> None:
    text = build_schema(schema_parts)
    assert text == build_schema(replace(schema_parts))
    assert text.endswith("}\n")
    Draft202012Validator.check_schema(loads(text))
    Draft202012Validator.check_schema(loads(schema_text()))


def test_every_field_has_words_and_every_value_a_kind(schema_parts: SchemaParts) -> None:
    """Editors show the descriptions, and the tree takes its kinds from the schema."""
    base = loads(build_schema(schema_parts))
    fields = 0
    for schema in _schemas(base):
        kind = schema.get("x-kind")
        assert kind is None or isinstance(kind, dict) or kind in get_args(FieldKind)
        for name, field in schema.get("properties", {}).items():
            if not isinstance(field, dict) or set(field) <= {"const", "x-never", "not", "$ref", "x-form"}:
                continue  # conditions, and what a branch adds to a field described elsewhere
            fields += 1
            assert "description" in field, name
            assert {"x-kind", "$ref", "type", "items"} & set(field), name
    assert fields > 100


def test_all_references_lead_somewhere(schema_parts: SchemaParts) -> None:
    base = loads(build_schema(schema_parts))
    references = {s["$ref"] for s in _schemas(base) if isinstance(s.get("$ref"), str)}
    assert references
    assert {ref.removeprefix("#/$defs/") for ref in references} == set(base["$defs"])


def test_registered_words_reach_the_schema(schema_parts: SchemaParts) -> None:
    bond = SchemaParameter("bond", "choice", "how rows overlap", False, ("running", "third"))
    parts = replace(
        schema_parts,
        shapes=(
            *schema_parts.shapes,
            SchemaShape("hexagon", "six sides", (SchemaParameter("side", "length", "s", True),)),
        ),
        surfaces=(SchemaShape("brick", "courses of brick", (bond,)),),
        tools=(*schema_parts.tools, ("saw", "a fine saw")),
        papers=(*schema_parts.papers, ("a2", "ISO A2")),
        stages=(("carve", "carving"),),
    )
    defs = loads(build_schema(parts))["$defs"]
    assert "hexagon" in defs["part"]["properties"]["shape"]["enum"]
    assert defs["with_hexagon"]["required"] == ["side"]
    assert defs["pattern_brick"]["properties"]["bond"]["enum"] == ["running", "third"]
    assert defs["step"]["properties"]["stage"]["enum"] == ["carve"]
    assert "saw" in defs["step"]["properties"]["uses"]["items"]["enum"]
    assert "a2" in defs["paper"]["else"]["enum"]


def test_a_kind_that_no_field_has_is_an_error_of_ours(schema_parts: SchemaParts) -> None:
    odd = SchemaShape("odd", "odd", (SchemaParameter("mass", "weight", "how heavy"),))
    with pytest.raises(ValueError, match="weight"):
        build_schema(replace(schema_parts, shapes=(odd,)))


def test_without_registered_patterns_any_pattern_is_accepted(schema_parts: SchemaParts, good: str) -> None:
    schema = loads(build_schema(schema_parts))
    spec = good.replace("shape: disc", "surface: {pattern: waves, with: {length: 9 mm}}, shape: disc")
    assert validate(read_nodes(spec, "spec.yaml")[0], "spec.yaml", schema).findings == ()
    waves = SchemaShape("ripples", "ripples", (SchemaParameter("length", "length", "from crest to crest", True),))
    schema = loads(build_schema(replace(schema_parts, surfaces=(waves,))))
    (finding,) = validate(read_nodes(spec, "spec.yaml")[0], "spec.yaml", schema).findings
    assert finding.check == "brief/unknown-word"
