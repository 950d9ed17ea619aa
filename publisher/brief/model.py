"""What a designer wrote: a tree of values, each with its place, and the bytes of every file it names."""

from typing import Literal

from publisher.basics import Finding, Place, record
from publisher.brief.inputs import NOTHING_READ, Inputs

FieldKind = Literal[
    "text",  # a string field: title, designer, a sentence
    "name",  # refers to something by name: a board, a part, a shape, a choice from a list
    "length",
    "angle",
    "count",  # whole number
    "number",  # plain number
    "quantity",  # an expression of any kind: sizes, needs
    "fact",  # a fact name, or an expression that may use facts
    "flag",  # true or false
    "file",  # a path inside the folder
]


@record
class Value:
    """One scalar: its text as written, what the schema says the field is, and where it stands.

    ``plain``: written without quotes in one line, so that a letter of the text stands its offset right of ``place``.
    """

    text: str
    kind: FieldKind
    place: Place
    plain: bool = False


@record
class Entry:
    """One ``key: value`` of a mapping."""

    key: str
    place: Place  # of the key
    node: "Node"


@record
class Table:
    """A mapping in the order in which it was written."""

    entries: tuple[Entry, ...]
    place: Place

    def get(self, key: str) -> "Node | None":
        """Return the node under ``key``, or None."""
        return next((e.node for e in self.entries if e.key == key), None)

    def table(self, key: str) -> "Table":
        """Return the mapping under ``key``; an empty one when it is absent."""
        node = self.get(key)
        return node if isinstance(node, Table) else Table((), self.place)

    def row(self, key: str) -> "tuple[Node, ...]":
        """Return the items of the list under ``key``; () when it is absent."""
        node = self.get(key)
        return node.items if isinstance(node, Row) else ()

    def value(self, key: str) -> Value | None:
        """Return the scalar under ``key``, or None when it is absent."""
        node = self.get(key)
        return node if isinstance(node, Value) else None

    def text(self, key: str, default: str = "") -> str:
        """Return the scalar's text under ``key``, or ``default``."""
        value = self.value(key)
        return default if value is None else value.text


@record
class Row:
    """A list."""

    items: "tuple[Node, ...]"
    place: Place


Node = Value | Table | Row


@record
class SpecFile:
    """A file of the folder, read once: no later room opens a designer's file.

    ``kind``: ``picture`` (opened and identified by Pillow from an explicit list of formats; width and height in pixels
    after EXIF orientation), ``drawing`` (SVG bytes), ``font`` (TrueType bytes, less all that no page shows), ``layouts`` (the
    layout store).
    """

    name: str  # path relative to the folder, with forward slashes
    kind: Literal["picture", "drawing", "font", "layouts"]
    data: bytes
    width_px: int = 0
    height_px: int = 0
    place: Place | None = None  # where the spec names it; None for layouts.json


@record
class Brief:
    """A designer's folder, read and checked against the schema. ``fields`` is only to be used when no finding is an error."""

    slug: str  # the folder's name
    fields: Table
    files: tuple[SpecFile, ...]
    findings: tuple[Finding, ...]
    inputs: Inputs = NOTHING_READ  # all that was read, and what was asked for with it

    def file(self, name: str) -> SpecFile | None:
        """Return the file that the spec names ``name``."""
        return next((f for f in self.files if f.name == name), None)
