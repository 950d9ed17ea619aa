"""The words that other rooms register, in the form that the schema takes them. The command line fills it in."""

from dataclasses import field

from publisher.basics import record

Keys = tuple[tuple[str, str], ...]  # (key, meaning)

# The stages of the work, in their usual order.
STAGES: Keys = (
    ("print", "printing and measuring the print"),
    ("glue_templates", "gluing templates to card or board"),
    ("texture", "drawing or pressing a surface"),
    ("cut", "tracing and cutting"),
    ("dry_fit", "putting together without glue"),
    ("glue", "gluing"),
    ("seal", "filling and sealing"),
    ("paint", "painting"),
)


@record
class SchemaParameter:
    """A parameter of a shape, opening or pattern. ``kind``: length, angle, count, number or choice (of ``choices``)."""

    name: str
    kind: str
    meaning: str
    required: bool = False
    choices: tuple[str, ...] = ()


@record
class SchemaShape:
    """A shape, a kind of opening or a surface pattern with its parameters; ``openings``: whether it takes openings.

    ``layered``: a part of this shape says how many layers it has, and a drawing may give its outline.
    """

    name: str
    meaning: str
    parameters: tuple[SchemaParameter, ...] = ()
    openings: bool = False
    layered: bool = False


@record
class SchemaParts:
    """All words that the schema takes from other rooms. With no ``surfaces``, any pattern name is accepted."""

    shapes: tuple[SchemaShape, ...]
    openings: tuple[SchemaShape, ...]
    tools: Keys
    materials: Keys
    papers: Keys
    surfaces: tuple[SchemaShape, ...] = ()
    stages: Keys = field(default=STAGES)
    languages: Keys = (("en", "English"),)
