"""The words that rooms register, carried to the schema's generator."""

from publisher.brief import SchemaParameter, SchemaParts, SchemaShape, build_schema
from publisher.geometry import ShapeInfo, opening_infos, shape_infos, surface_infos
from publisher.pages import material_words, papers, tool_words


def fresh_schema() -> str:
    """Return the schema's text, made anew from the registered shapes, openings, surfaces, tools, materials and papers."""
    return build_schema(
        SchemaParts(
            shapes=tuple(_shape(i) for i in shape_infos()),
            openings=tuple(_shape(i) for i in opening_infos()),
            tools=tuple((t.key, t.name) for t in tool_words()),
            materials=tuple((m.key, m.name) for m in material_words()),
            papers=tuple((p.name, p.title) for p in papers()),
            surfaces=tuple(_shape(i) for i in surface_infos()),
        )
    )


def _shape(info: ShapeInfo) -> SchemaShape:
    parameters = tuple(
        SchemaParameter(p.name, p.kind, p.meaning, p.default is None, p.choices) for p in info.parameters
    )
    return SchemaShape(info.name, info.meaning, parameters, info.openings, info.layered)
