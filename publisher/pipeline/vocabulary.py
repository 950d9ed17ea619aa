"""All that is registered in the rooms, for those who write a spec: its schema, and its words."""

from publisher.basics import record
from publisher.brief import STAGES, SchemaParameter, SchemaParts, SchemaShape, build_schema, picture_words
from publisher.design import CONSTANT_WORDS, function_words, joint_infos, named_sheets, unit_words
from publisher.geometry import ShapeInfo, opening_infos, shape_infos, surface_infos
from publisher.pages import Paper, language_titles, material_words, papers, terms, tool_words


def fresh_schema() -> str:
    """Return the schema's text, made anew from the registered shapes, openings, surfaces, tools, materials and papers."""
    return build_schema(
        SchemaParts(
            shapes=tuple(map(_schema_shape, shape_infos())),
            openings=tuple(map(_schema_shape, opening_infos())),
            tools=tuple((t.key, t.name) for t in tool_words()),
            materials=tuple((m.key, m.name) for m in material_words()),
            papers=tuple((p.name, p.title) for p in papers()),
            languages=language_titles(),
            surfaces=tuple(map(_schema_shape, surface_infos())),
        )
    )


@record
class WordList:
    """Words of one kind with their meanings; ``used``: where they stand in a spec."""

    name: str
    used: str
    words: tuple[tuple[str, str], ...]


def word_lists() -> tuple[WordList, ...]:
    """Return every word that has a meaning in a spec, as it is registered."""
    shapes = shape_infos()
    return (
        WordList("functions", "in expressions, such as height: sqrt(run^2 + rise^2)", function_words()),
        WordList("constants", "in expressions", CONSTANT_WORDS),
        WordList("units", "behind a number, such as 3/16 in", unit_words()),
        WordList(
            "shapes", "shape: of a part; sizes: publisher shapes NAME", tuple((i.name, i.meaning) for i in shapes)
        ),
        WordList(
            "origins", "where a shape has its origin, for at: and for turns", tuple((i.name, i.origin) for i in shapes)
        ),
        WordList("openings", "kind: under openings: of a part", tuple((i.name, i.meaning) for i in opening_infos())),
        WordList("surfaces", "pattern: under surface: of a part", tuple((i.name, i.meaning) for i in surface_infos())),
        WordList("joints", "joint: of a join", tuple((i.name, i.meaning) for i in joint_infos())),
        WordList("tools", "tools:, and uses: of a step", tuple((t.key, t.name) for t in tool_words())),
        WordList(
            "materials", "name: under materials:, and uses: of a step", tuple((m.key, m.name) for m in material_words())
        ),
        WordList("stages", "stage: of a step, in the usual order", STAGES),
        WordList("pictures", "picture: of a step, and cover:", picture_words()),
        WordList("papers", "papers:, and --paper", tuple((p.name, _paper(p)) for p in papers())),
        WordList("sheets", "sheets: of a board, and --sheet, beside sizes such as 20 x 30 in", named_sheets()),
        WordList(
            "terms",
            "on the pages, one for each thing, and in the texts of a design",
            tuple((t.term, t.meaning) for t in terms()),
        ),
    )


def _paper(paper: Paper) -> str:
    return f"{paper.title}, {paper.width:g} x {paper.height:g} mm"


def _schema_shape(info: ShapeInfo) -> SchemaShape:
    parameters = tuple(
        SchemaParameter(p.name, p.kind, p.meaning, p.default is None, p.choices) for p in info.parameters
    )
    return SchemaShape(info.name, info.meaning, parameters, info.openings, info.layered)
