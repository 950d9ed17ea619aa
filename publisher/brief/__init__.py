"""Room 2: a designer's folder in, checked values out.

Comes in: a folder with ``spec.yaml``, and what was asked for with it. Goes out: a ``Brief``: values with file, line and column,
the bytes of every file that the spec names, findings, and all that a build reads as one value (``Inputs``); the pixels of a
picture as they are to be seen; and the schema of the spec for editors. Never: imports geometry or paper, lets a later room open
a designer's file, invents a default that changes a size.
"""

from publisher.brief.folders import spec_folders
from publisher.brief.inputs import NOTHING_READ, InputFile, Inputs
from publisher.brief.model import Brief, Entry, FieldKind, Node, Row, SpecFile, Table, Value
from publisher.brief.photographs import shown_pixels
from publisher.brief.proposing import with_words, without
from publisher.brief.reader import brief_of, read_brief
from publisher.brief.rewriting import SpecText, Word
from publisher.brief.rules import RULES
from publisher.brief.schema_of_spec import build_schema, picture_words, schema_text
from publisher.brief.schema_parts import STAGES, SchemaParameter, SchemaParts, SchemaShape
from publisher.brief.starts import NOBODY, STARTS, begin
from publisher.brief.steps_text import StepText, steps_text

__all__ = [
    "NOBODY",
    "NOTHING_READ",
    "RULES",
    "STAGES",
    "STARTS",
    "Brief",
    "Entry",
    "FieldKind",
    "InputFile",
    "Inputs",
    "Node",
    "Row",
    "SchemaParameter",
    "SchemaParts",
    "SchemaShape",
    "SpecFile",
    "SpecText",
    "StepText",
    "Table",
    "Value",
    "Word",
    "begin",
    "brief_of",
    "build_schema",
    "picture_words",
    "read_brief",
    "schema_text",
    "shown_pixels",
    "spec_folders",
    "steps_text",
    "with_words",
    "without",
]
