"""Shared by the tests of this room: a small good spec, folders made from text, and the words of the first shapes."""

from collections.abc import Callable
from pathlib import Path

import pytest

from publisher.basics import Finding, Refusal
from publisher.brief import SchemaParameter, SchemaParts, SchemaShape, read_brief

GOOD = """\
format: 2
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

# every section and nearly every field
RICH = """\
format: 2
title: "Lock-keeper's stair"
version: 1.10
designer: Ebbwater Patterns
licence: CC-BY-NC-4.0 OR CC-BY-4.0
summary: >
  A stair of {stair.layers} layers.
language: en-GB
use: trace
sizes: {board: 5 mm, reach: 92 mm, turn: 360 deg / 18, layers: 012, span: 110 mm}
boards:
  foam: {thickness: board, thickness_spread: 0.2 mm, faces: bare, sheets: [20 x 30 in, 297 x 420 mm], knife_gap: 1 mm,
         edge_margin: 3 mm, grain: none}
parts:
  step:
    {name: Stair layer, letter: C, board: foam, shape: spiral_stair_layer, spare: 1, turning: any, trace_allowance: 0.4 mm,
     with: {core_radius: 30, reach: reach, step_angle: 2 * turn, turn: turn, notch: 4 mm, joints: 27}}
  gable:
    name: 1984
    board: foam
    shape: gable_wall
    with: {span: span, past: 10 mm, eaves: 80 mm, pitch: 45 deg}
    openings:
      door: {kind: door, head: round, width: 32 mm, height: 50 mm, centre: 40 mm, sill: 0}
    surface: {pattern: brick, seed: 3, with: {length: 9 mm, height: 3 mm, bond: running}}
  sign:
    {name: Sign, board: foam, count: 2, mirrored: 1,
     drawing: {file: sign.svg, id: outline, width: 30 mm, height: 12 mm, lines: {cut: [outline], draw: [letters]}}}
assembly:
  stair:
    stack:
      - {part: step, count: layers, turn: turn, shift: [0, 1 mm]}
      - {section: upper, stands_on: lower, turn: 10 deg, loose: true, stack: [{part: step}]}
  house:
    panels: {front: gable, back: gable}
    stands_on: front.bottom
    joins:
      - {edges: [front.right, back.left], joint: tab_and_slot, tabs_on: back, tabs: 2, inset: 10 mm, play: 0.3 mm, loosest: 0.6 mm}
      - {edges: [front.left, back.right], joint: butt, corner: 90 deg, runs_through: front}
      - {place: back, rests_on: [front.left_slope, front.right_slope]}
needs:
  - {fact: stair.headroom, at_least: 60 mm, at_most: 90 mm, adjust: reach}
tools: [craft_knife, pins]
materials: [{name: white_glue}, {text: "Dowel, 6 mm", length: stair.height}]
steps:
  - title: Wind up
    stage: glue
    say: >
      Turn each layer: {stair.layers} in all.

      Let it dry.
    parts: [step]
    uses: [white_glue, pins]
    picture: {plan: stair, layer: 3, alt: A layer on the one below}
  - {title: Look, say: Look at it., picture: {photo: photo.png}}
variants:
  wide: {title: "for {reach} stairs", sizes: {reach: 142 mm}}
papers: [a4, {name: roll, width: 300 mm, height: 900 mm, margins: [5 mm, 5, 5 mm, 5 mm]}]
cover: {whole: house, alt: The house}
fonts: [letters.ttf]
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


@pytest.fixture(scope="session")
def good() -> str:
    """A small spec without mistakes."""
    return GOOD


@pytest.fixture(scope="session")
def rich() -> str:
    """A spec with every section."""
    return RICH


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
