"""The schema's generator: ``schema_base.json`` with the words of other rooms merged in. Same parts, same bytes."""

import json
from pathlib import Path
from typing import Any

from publisher.brief.schema_parts import Keys, SchemaParameter, SchemaParts, SchemaShape

Schema = dict[str, Any]
_LEAF_KINDS = ("length", "angle", "count", "number", "quantity")


def build_schema(parts: SchemaParts) -> str:
    """Return the text of the JSON Schema (2020-12) of a spec, with these shapes, openings, tools, materials and papers."""
    base: Schema = json.loads(_read("schema_base.json"))
    defs = base["$defs"]
    _words(defs["tool"], parts.tools)
    _words(defs["material_name"], parts.materials)
    _words(defs["use"], (*parts.tools, *(m for m in parts.materials if m[0] not in dict(parts.tools))))
    _words(defs["stage"], parts.stages)
    _words(defs["paper_name"], parts.papers)
    _shapes(defs, parts.shapes)
    _openings(defs["opening"], parts.openings)
    _surfaces(defs["surface"], parts.surfaces)
    for name in list(defs):
        defs[name] = _inlined(defs[name], defs)
    base = {key: _inlined(value, defs) if key == "properties" else value for key, value in base.items()}
    base["$defs"] = {name: schema for name, schema in defs.items() if _is_section(schema)}
    return json.dumps(base, indent=2, ensure_ascii=False) + "\n"


def schema_text() -> str:
    """Return the text of the committed JSON Schema of a spec."""
    return _read("spec.schema.json")


def _read(name: str) -> str:
    return (Path(__file__).parent / name).read_text(encoding="utf-8")


def _is_section(schema: Schema) -> bool:
    return "x-kind" not in schema


def _inlined(schema: Any, defs: Schema) -> Any:
    """References to single values written out, so that editors and the validator look nothing up for them."""
    if isinstance(schema, list):
        return [_inlined(item, defs) for item in schema]
    if not isinstance(schema, dict):
        return schema
    own = {key: _inlined(value, defs) for key, value in schema.items()}
    target = defs.get(str(own.get("$ref", "")).removeprefix("#/$defs/"))
    if target is None or _is_section(target):
        return own
    del own["$ref"]
    return {**own, **{key: value for key, value in target.items() if key not in own}}


def _words(schema: Schema, words: Keys) -> None:
    schema["enum"] = [key for key, _ in words]
    schema["x-meanings"] = dict(words)


def _parameter(parameter: SchemaParameter) -> Schema:
    if parameter.kind == "choice":
        return {"description": parameter.meaning, "x-kind": "name", "enum": list(parameter.choices)}
    if parameter.kind not in _LEAF_KINDS:
        raise ValueError(f"{parameter.name}: {parameter.kind} is no kind of parameter")
    return {"description": parameter.meaning, "$ref": f"#/$defs/{parameter.kind}"}


def _with(shape: SchemaShape) -> Schema:
    return {
        "description": f"Sizes of {shape.name}.",
        "x-of": shape.name,
        "type": "object",
        "additionalProperties": False,
        "properties": {p.name: _parameter(p) for p in shape.parameters},
        "required": [p.name for p in shape.parameters if p.required],
    }


def _choose(schema: Schema, key: str, shapes: tuple[SchemaShape, ...]) -> None:
    """Fill in the words of a choosing key, with their meanings."""
    _words(schema["properties"][key], tuple((s.name, s.meaning) for s in shapes))


def _when(key: str, word: str, then: Schema) -> Schema:
    return {"if": {"properties": {key: {"const": word}}, "required": [key]}, "then": then}


def _needs(shape: SchemaShape) -> Schema:
    required = {"required": ["with"]} if any(p.required for p in shape.parameters) else {}
    return {"properties": {"with": {"$ref": f"#/$defs/with_{shape.name}"}}, **required}


def _shapes(defs: Schema, shapes: tuple[SchemaShape, ...]) -> None:
    part = defs["part"]
    _choose(part, "shape", shapes)
    part["allOf"] = [_when("shape", s.name, _needs(s)) for s in shapes]
    for shape, rule in zip(shapes, part["allOf"], strict=True):
        defs[f"with_{shape.name}"] = _with(shape)
        if not shape.openings:
            rule["then"]["properties"]["openings"] = {
                "x-never": f"the shape `{shape.name}` takes no openings",
                "not": {},
            }
    part["dependentRequired"] = {"with": ["shape"], "openings": ["shape"]}


def _openings(opening: Schema, openings: tuple[SchemaShape, ...]) -> None:
    _choose(opening, "kind", openings)
    kind = opening["properties"]["kind"]
    opening["allOf"] = [
        _when(
            "kind",
            o.name,
            {
                "properties": {"kind": kind, **{p.name: _parameter(p) for p in o.parameters}},
                "additionalProperties": False,
                "required": [p.name for p in o.parameters if p.required],
            },
        )
        for o in openings
    ]


def _surfaces(surface: Schema, surfaces: tuple[SchemaShape, ...]) -> None:
    if not surfaces:
        return
    pattern = surface["properties"]["pattern"]
    pattern.pop("$ref", None)
    pattern["x-kind"] = "name"
    _choose(surface, "pattern", surfaces)
    surface["allOf"] = [
        _when(
            "pattern",
            s.name,
            {
                "properties": {"with": {**_with(s)}},
                **({"required": ["with"]} if any(p.required for p in s.parameters) else {}),
            },
        )
        for s in surfaces
    ]
