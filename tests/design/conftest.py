"""Shared by the tests of this room: a spec's text as a brief, with places, and a small spec to change."""

from collections.abc import Callable
from dataclasses import dataclass, replace

import pytest
import yaml

from publisher.basics import Place
from publisher.brief import Brief, Entry, FieldKind, Inputs, Node, Row, Table, Value
from publisher.design import Design, work_out

BASE = """\
title: Test piece
version: 1.0.0
use: trace
sizes: {board: 5 mm, length: 100 mm, layers: 4}
boards: {foam: {thickness: board, sheets: [20 x 30 in]}}
parts:
  wall: {name: Wall, board: foam, shape: wall_panel, with: {width: length, height: 80 mm}}
  slab: {name: Slab, board: foam, shape: disc, with: {radius: length / 2}}
assembly:
  hut: {panels: {front: wall}, stands_on: front.bottom, joins: []}
  pile: {stack: [{part: slab, count: layers}]}
"""

#: Kinds that the schema gives to fields, as far as these tests use them.
LENGTHS = [
    "width",
    "height",
    "radius",
    "reach",
    "core_radius",
    "sill",
    "notch",
    "trace_allowance",
    "thickness",
    "inset",
    "play",
    "loosest",
    "paper",
    "at",
]
ANGLES = ["turn", "pitch", "step_angle", "corner"]
COUNTS = ["count", "spare", "joints", "layer", "tabs", "seed", "sides"]
NAMES = ["head", "bond", "kind", "shape", "board", "part", "faces", "grain", "turning", "joint", "use"]


def kind_of(path: tuple[str, ...]) -> FieldKind:
    """The kind of the field at a path, as the schema would say."""
    key = path[-1]
    if "sizes" in path:
        return "quantity"
    for kind, keys in (("length", LENGTHS), ("angle", ANGLES), ("count", COUNTS), ("name", NAMES)):
        if key in keys:
            return kind
    return "text" if key in ("title", "say", "summary", "text", "name") else "quantity"


def make_node(node: yaml.Node, path: tuple[str, ...]) -> Node:
    """A node of the YAML graph as a node of a brief."""
    place = Place("spec.yaml", node.start_mark.line + 1, node.start_mark.column + 1, "/" + "/".join(path))
    if isinstance(node, yaml.MappingNode):
        entries = []
        for key, value in node.value:
            here = Place("spec.yaml", key.start_mark.line + 1, key.start_mark.column + 1)
            entries.append(Entry(key.value, here, make_node(value, (*path, key.value))))
        return Table(tuple(entries), place)
    if isinstance(node, yaml.SequenceNode):
        return Row(tuple(make_node(item, path) for item in node.value), place)
    plain = node.style in (None, "") and node.start_mark.line == node.end_mark.line
    return Value(node.value.strip(), kind_of(path or ("",)), place, plain)


def make_brief(text: str) -> Brief:
    """A spec's text as a brief without files."""
    node = yaml.compose(text, Loader=yaml.CSafeLoader)
    fields = make_node(node, ())
    assert isinstance(fields, Table)
    return Brief("test-piece", fields, (), ())


def laid_over(text: str, base: str = BASE) -> str:
    """The sections of a text in place of those of the base; sections that are new come last."""
    sections = _sections(base)
    sections.update(_sections(text))
    return "".join(sections.values())


def _sections(text: str) -> dict[str, str]:
    sections: dict[str, str] = {}
    key = ""
    for line in text.splitlines(keepends=True):
        if line[:1].strip() and not line.startswith("#"):
            key = line.split(":")[0]
        sections[key] = sections.get(key, "") + (line if line.endswith("\n") else line + "\n")
    return sections


@dataclass(frozen=True)
class Tried:
    """A design worked out from a text, and the place that the text marks with ⟦."""

    design: Design
    line: int
    column: int

    @property
    def found(self) -> list[str]:
        """Ids of the findings."""
        return [finding.check for finding in self.design.findings]


def try_out(text: str, variant: str = "", sets: tuple[tuple[str, str], ...] = ()) -> Tried:
    """Work out the small spec with these sections in place of its own."""
    whole = laid_over(text)
    before, mark, _ = whole.partition("⟦")
    line = before.count("\n") + 1 if mark else 0
    column = len(before.rsplit("\n", 1)[-1]) + 1 if mark else 0
    brief = make_brief(whole.replace("⟦", ""))
    return Tried(work_out(replace(brief, inputs=Inputs(brief.slug, sets=sets)), variant), line, column)


@pytest.fixture
def tried() -> Callable[..., Tried]:
    """Work out the small spec with these sections in place of its own."""
    return try_out


@pytest.fixture
def brief_of() -> Callable[[str], Brief]:
    """A spec's text, laid over the small spec, as a brief."""
    return lambda text: make_brief(laid_over(text))
