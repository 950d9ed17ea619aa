"""Steps that glue braces of which there are none."""

from dataclasses import replace
from pathlib import Path

from publisher.joints import as_glued, without_idle_steps
from publisher.joints.checks.no_brace_needed import no_brace_needed
from tests.reference.solids import Built, build

STAIR = """
sizes: {board: 5 mm}
parts:
  plinth: {name: Plinth, board: foam, shape: disc, with: {radius: 92 mm}}
  step: {name: Step, board: foam, shape: spiral_stair_layer, with: {core_radius: 30 mm, reach: 92 mm, step_angle: 40 deg, turn: 20 deg}}
assembly:
  stair: {stack: [{part: plinth}, {part: step, count: 12, turn: 20 deg}], brace: {run: 35 mm, drop: 30 mm, UNDER}}
steps:
  - {title: Wind up, stage: glue, say: Glue layer upon layer., parts: [plinth, step], adds: [stair 1 to top]}
"""
ALONE = '  - {title: Brace it, stage: glue, say: "Glue {stair.braces} braces.", parts: [stair_brace], adds: [stair.braces]}\n'
AMONG = '  - {title: Brace it, stage: glue, say: "Glue {stair.braces} braces, press.", parts: [step, stair_brace], adds: [stair.braces]}\n'


def made(folder: Path, step: str, under: str = "under: weak", strength: float = 5.0) -> Built:
    """The stair of a board so strong, its braces as many as needed."""
    built = build(STAIR.replace("UNDER", under) + step, folder)
    design = replace(built.design, boards=tuple(replace(b, bending_strength=strength) for b in built.design.boards))
    return replace(built, design=design, parts={p.id: p for p in as_glued(design, tuple(built.parts.values()))})


def titles(built: Built) -> list[object]:
    design = without_idle_steps(built.design, tuple(built.parts.values()))
    return [step.title.pieces[0] for step in design.steps]


def test_a_step_that_glues_no_brace_is_left_out_and_one_that_glues_some_stays(tmp_path: Path) -> None:
    assert titles(made(tmp_path, ALONE)) == ["Wind up"]
    assert titles(made(tmp_path, ALONE, strength=0.05)) == ["Wind up", "Brace it"]
    assert titles(made(tmp_path, ALONE, under="under: [12]")) == ["Wind up", "Brace it"]


def test_a_step_that_names_other_parts_stays(tmp_path: Path) -> None:
    """The rule ``no-brace-needed`` tells of it."""
    assert titles(made(tmp_path, AMONG)) == ["Wind up", "Brace it"]
    assert no_brace_needed.id == "joints/no-brace-needed"
