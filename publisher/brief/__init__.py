"""Room 2: a designer's folder in, checked values out.

Comes in: a folder with ``spec.yaml``. Goes out: a ``Brief``: values with file, line and column, the bytes of every file
that the spec names, and findings; and the schema of the spec for editors. Never: imports geometry or paper, lets a later
room open a designer's file, invents a default that changes a size.
"""

from publisher.brief.model import Brief, Entry, FieldKind, Node, Row, SpecFile, Table, Value
from publisher.brief.reader import read_brief
from publisher.brief.rules import RULES
from publisher.brief.schema_build import build_schema, schema_text
from publisher.brief.schema_parts import STAGES, SchemaParameter, SchemaParts, SchemaShape

__all__ = [
    "RULES",
    "STAGES",
    "Brief",
    "Entry",
    "FieldKind",
    "Node",
    "Row",
    "SchemaParameter",
    "SchemaParts",
    "SchemaShape",
    "SpecFile",
    "Table",
    "Value",
    "build_schema",
    "read_brief",
    "schema_text",
]
