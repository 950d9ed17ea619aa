"""Shared by the tests of this room: a small good spec, folders made from text, and the words of the first shapes."""

from collections.abc import Callable
from pathlib import Path

import pytest

from publisher.basics import Finding, Refusal
from publisher.brief import SchemaParameter, SchemaParts, SchemaShape, read_brief

GOOD = """\
format: 1
title: Landing
version: 1.0.0
use: trace
sizes:
  board: 5 mm
boards:
  foam: {thickness: board, sheets: [20 x 30 in]}
parts:
  landing: {name: Landing, board: foam, shape: disc, with: {radius: 20 mm}}
"""


def _shape(name: str, openings: bool, *parameters: str) -> SchemaShape:
    """Parameters read ``name:kind``, with a question mark when they may be left out, or ``name:a|b`` for a choice."""
    made = []
    for parameter in parameters:
        key, _, kind = parameter.partition(":")
        required = not kind.endswith("?")
        kind = kind.removesuffix("?")
        choices = tuple(kind.split("|")) if "|" in kind else ()
        made.append(SchemaParameter(key, "choice" if choices else kind, f"{key} of a {name}", required, choices))
    return SchemaShape(name, f"a {name.replace('_', ' ')}", tuple(made), openings)


def make_parts() -> SchemaParts:
    """The first shapes, openings, tools, materials and papers."""
    opening = ("width:length", "height:length", "head:square|round?", "centre:length?", "sill:length?")
    tools = "craft_knife steel_rule cutting_mat hot_glue_gun hot_wire_cutter spray_paint pins pencil file"
    materials = "white_glue hot_glue spray_glue stick_glue acrylic_paint filler thin_card magnets dowel masking_tape"
    return SchemaParts(
        shapes=(
            _shape("spiral_stair_layer", False, "core_radius:length", "reach:length", "step_angle:angle", "turn:angle",
                   "notch:length?", "joints:count?"),
            _shape("disc", False, "radius:length"),
            _shape("ring", False, "radius:length", "hole_radius:length"),
            _shape("regular_polygon", False, "sides:count", "radius:length"),
            _shape("rectangle", False, "width:length", "height:length", "corner_radius:length?"),
            _shape("wall_panel", True, "width:length", "height:length"),
            _shape("gable_wall", True, "span:length", "past:length", "eaves:length", "pitch:angle"),
            _shape("roof_panel", True, "span:length", "length:length", "pitch:angle", "overhang:length?", "verge:length?"),
        ),
        openings=tuple(_shape(kind, False, *opening) for kind in ("door", "window", "slit")),
        tools=tuple((key, key.replace("_", " ")) for key in tools.split()),
        materials=tuple((key, key.replace("_", " ")) for key in materials.split()),
        papers=(("a4", "ISO A4"), ("letter", "Letter"), ("a3", "ISO A3"), ("tabloid", "Tabloid"), ("legal", "Legal")),
    )  # fmt: skip


@pytest.fixture(scope="session")
def schema_parts() -> SchemaParts:
    """The words of the first shapes."""
    return make_parts()


@pytest.fixture
def good() -> str:
    """A small spec without mistakes."""
    return GOOD


@pytest.fixture
def make_folder(tmp_path: Path) -> Callable[[str | bytes], Path]:
    """A design folder made from the text or bytes of its spec."""

    def make(spec: str | bytes) -> Path:
        folder = tmp_path / "landing"
        folder.mkdir(exist_ok=True)
        (folder / "spec.yaml").write_bytes(spec if isinstance(spec, bytes) else spec.encode())
        return folder

    return make


@pytest.fixture
def findings_of() -> Callable[[Path], tuple[Finding, ...]]:
    """Everything that reading a folder finds, whether it was refused or not."""

    def find(folder: Path) -> tuple[Finding, ...]:
        try:
            return read_brief(folder).findings
        except Refusal as refusal:
            return refusal.findings

    return find
