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
    _languages(base, defs, parts.languages)
    _shapes(defs, parts.shapes)
    _openings(defs["opening"], parts.openings)
    _surfaces(defs, parts.surfaces)
    defs["like_part"] = _like(defs)
    for name in list(defs):
        defs[name] = _inlined(defs[name], defs)
    base = {key: _inlined(value, defs) if key == "properties" else value for key, value in base.items()}
    base["$defs"] = {name: schema for name, schema in defs.items() if _is_section(schema)}
    return json.dumps(base, indent=2, ensure_ascii=False) + "\n"


def schema_text() -> str:
    """Return the text of the committed JSON Schema of a spec."""
    return _read("spec.schema.json")


def picture_words() -> Keys:
    """Return the kinds of pictures that a step may have, with their meanings."""
    picture = json.loads(_read("schema_base.json"))["$defs"]["picture"]
    kinds = [name for choice in picture["oneOf"] for name in choice["required"]]
    return tuple((name, picture["properties"][name]["description"].rstrip(".")) for name in kinds)


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


def _languages(base: Schema, defs: Schema, languages: Keys) -> None:
    """Fill in the languages that a pack can be in: those of a spec, and those in which a text may stand."""
    named = "|".join(key for key, _ in languages)
    said = " or ".join(f"{key} ({title})" for key, title in languages)
    for schema in (base["properties"]["language"], base["properties"]["languages"]["items"]):
        schema |= {"pattern": f"^({named})(-[A-Z]{{2}})?$", "x-form": f"a language that a pack can be in: {said}"}
    for name in ("line", "words"):
        defs[name]["propertyNames"] = {"enum": [key for key, _ in languages]}


def _parameter(parameter: SchemaParameter) -> Schema:
    if parameter.kind == "choice":
        return {"description": parameter.meaning, "x-kind": "name", "enum": list(parameter.choices)}
    if parameter.kind not in _LEAF_KINDS:
        raise ValueError(f"{parameter.name}: {parameter.kind} is no kind of parameter")
    return {"description": parameter.meaning, "$ref": f"#/$defs/{parameter.kind}"}


def _with(shape: SchemaShape, of: str) -> Schema:
    return {
        "description": f"Sizes of {of}: {shape.meaning}.",
        "x-of": of,
        "type": "object",
        "additionalProperties": False,
        "properties": {p.name: _parameter(p) for p in shape.parameters},
        "required": _required(shape),
    }


def _required(shape: SchemaShape) -> list[str]:
    return [p.name for p in shape.parameters if p.required]


def _choose(schema: Schema, key: str, shapes: tuple[SchemaShape, ...]) -> None:
    """Fill in the words of a choosing key, with their meanings."""
    _words(schema["properties"][key], tuple((s.name, s.meaning) for s in shapes))


def _when(key: str, word: str, then: Schema) -> Schema:
    return {"if": {"properties": {key: {"const": word}}, "required": [key]}, "then": then}


def _needs(shape: SchemaShape, ref: str) -> Schema:
    """A shape's own `with`: needed when one of its sizes is."""
    form = "“{" + ", ".join(f"{name}: …" for name in _required(shape)) + "}”"
    needed = {"required": ["with"]} if _required(shape) else {}
    return {"properties": {"with": {"$ref": f"#/$defs/{ref}", "x-form": form}}, **needed}


def _shapes(defs: Schema, shapes: tuple[SchemaShape, ...]) -> None:
    part, other = defs["part"], defs["other_shape"]
    _choose(part, "shape", shapes)
    part["allOf"], other["allOf"] = [], []
    part["dependentRequired"] = {"with": ["shape"], "openings": ["shape"], "layers": ["shape"], "without": ["like"]}
    for shape in shapes:
        defs[f"with_{shape.name}"] = _with(shape, f"the shape “{shape.name}”")
        then = _needs(shape, f"with_{shape.name}")
        if not shape.openings:
            never = f"the shape “{shape.name}” takes no openings"
            then["properties"]["openings"] = {"x-never": never, "not": {}}
        if shape.layered:
            then["required"] = [*then.get("required", ()), "layers"]
            never = f"the layers of the shape “{shape.name}” are not combined: change their outline"
            then["properties"]["combine"] = {"x-never": never, "not": {}}
        else:
            _only_layers(then["properties"], shape)
            other["allOf"].append(_when("shape", shape.name, _needs(shape, f"with_{shape.name}")))
        part["allOf"].append(_when("shape", shape.name, then))
    _choose(other, "shape", tuple(shape for shape in shapes if not shape.layered))


def _only_layers(properties: Schema, shape: SchemaShape) -> None:
    """Refuse what only a shape in layers has."""
    never = f"a part has either a “shape” or a “drawing”, and the shape “{shape.name}” has its own outline"
    properties["drawing"] = {"x-never": never, "not": {}}
    properties["layers"] = {"x-never": f"the shape “{shape.name}” is one layer: a stack counts its copies", "not": {}}


def _openings(opening: Schema, openings: tuple[SchemaShape, ...]) -> None:
    _choose(opening, "kind", openings)
    kind = opening["properties"]["kind"]
    # until the kind is known any opening's size will do; a misspelt `kind` must not hide among them
    for size in (p for each in openings for p in each.parameters):
        opening["properties"].setdefault(size.name, _parameter(size))
    opening["additionalProperties"] = False
    opening["allOf"] = []
    for each in openings:
        sizes = _with(each, f"the opening “{each.name}”")
        opening["allOf"].append(
            _when("kind", each.name, {**sizes, "properties": {"kind": kind, **sizes["properties"]}})
        )


def _like(defs: Schema) -> Schema:
    """Return the form of a part that is like another one: it may say any field, and within it any part of that."""
    part = defs["part"]
    fields = {name: dict(schema) for name, schema in part["properties"].items()}
    surface, drawing = (defs[name]["properties"] for name in ("surface", "drawing"))
    opening = {"type": "object", "properties": defs["opening"]["properties"], "additionalProperties": False}
    fields["openings"]["additionalProperties"] = opening
    for name, inside in (("surface", surface), ("drawing", drawing)):
        meaning = fields[name]["description"]
        fields[name] = {"description": meaning, "type": "object", "additionalProperties": False, "properties": inside}
    return {"type": "object", "additionalProperties": False, "required": ["name", "like"], "properties": fields}


def _surfaces(defs: Schema, surfaces: tuple[SchemaShape, ...]) -> None:
    if not surfaces:
        return
    surface = defs["surface"]
    surface["properties"]["pattern"] = {"description": "The pattern's name.", "x-kind": "name"}
    _choose(surface, "pattern", surfaces)
    surface["allOf"] = []
    for each in surfaces:
        defs[f"pattern_{each.name}"] = _with(each, f"the pattern “{each.name}”")
        surface["allOf"].append(_when("pattern", each.name, _needs(each, f"pattern_{each.name}")))
