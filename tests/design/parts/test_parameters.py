"""Parameters of shapes, openings and surfaces."""

from collections.abc import Callable
from typing import Any

PARTS = """
parts:
  slab: {board: foam, shape: disc}
  wall:
    board: foam
    shape: wall_panel
    with: {width: length, height: 3 in, pitch: 45 deg, sides: 14.000000001}
    openings:
      door: {kind: door, head: round, width: 25 mm + 7 mm, height: 50 mm}
      slit: {kind: slit, width: 4 mm, height: 30 mm, sill: 20 mm}
    surface: {pattern: brick, seed: 3, with: {length: 9 mm, height: 3 mm, bond: running}}
"""


def test_parameters_are_worked_out_by_the_kind_of_their_field(tried: Callable[..., Any]) -> None:
    design = tried(PARTS).design
    assert design.findings == ()
    wall = design.parts[1]
    assert [(p.name, p.value) for p in wall.parameters] == [
        ("width", 100.0),
        ("height", 76.2),
        ("pitch", 45.0),
        ("sides", 14.0),
    ]
    assert wall.parameters[0].expression == "length"
    assert str(wall.parameters[0].place) == "spec.yaml:11:19"
    door, slit = wall.openings
    assert (door.name, door.kind) == ("door", "door")
    assert [(p.name, p.value) for p in door.parameters] == [("head", "round"), ("width", 32.0), ("height", 50.0)]
    assert slit.parameters[2].value == 20.0
    assert wall.surface is not None
    assert (wall.surface.pattern, wall.surface.seed) == ("brick", 3)
    assert [(p.name, p.value) for p in wall.surface.parameters] == [
        ("length", 9.0),
        ("height", 3.0),
        ("bond", "running"),
    ]


def test_a_finding_names_part_opening_and_parameter(tried: Callable[..., Any]) -> None:
    (finding,) = tried(PARTS.replace("25 mm + 7 mm", "25 mm + 7")).design.findings
    assert finding.subject == "part wall, opening door, width"
    assert finding.hint == "write 7 mm"
