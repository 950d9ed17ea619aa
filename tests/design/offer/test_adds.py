"""What steps add."""

from collections.abc import Callable
from typing import Any

import pytest

from publisher.basics import Place
from publisher.design.offer.adds import as_written, say_names
from publisher.design.records import Buildable

TEXT = """
parts:
  wall: {name: Wall, board: foam, shape: wall_panel, with: {width: length, height: 80 mm}}
  other: {name: Other wall, board: foam, shape: wall_panel, with: {width: length, height: 80 mm}}
  lid: {name: Lid, board: foam, shape: disc, with: {radius: length}}
  slab: {name: Slab, board: foam, shape: disc, with: {radius: length / 2}}
assembly:
  hut: {panels: {front: wall, back: other, lid: lid}, stands_on: front.bottom,
        joins: [{place: lid, rests_on: [front.top]}, {edges: [front.right, back.left], joint: butt, runs_through: front}]}
  pile: {stack: [{part: slab, count: 4}]}
  yard: {things: {house: {assembly: hut}, step: {assembly: pile, at: [200 mm, 0 mm]}}}
steps:
  - {title: Try, say: Try it., stage: dry_fit, adds: [hut]}
  - {title: Walls, say: Glue it., adds: [hut.front with hut.back, hut.lid]}
  - {title: Pile, say: Glue it., adds: [pile 1, pile 2 to top]}
  - {title: Yard, say: Set it down., adds: [yard.house, yard.step]}
"""


def test_places_layers_things_and_what_goes_on_as_one(tried: Callable[..., Any]) -> None:
    design = tried(TEXT).design
    assert [f.check for f in design.findings] == []
    dry, walls, pile, yard = (
        [(plan.assembly, plan.names, plan.together) for plan in step.adds] for step in design.steps
    )
    assert dry == [("hut", ("front", "back", "lid"), False)]
    assert walls == [("hut", ("front", "back"), True), ("hut", ("lid",), False)]
    assert pile == [("pile", ("layer_1",), False), ("pile", ("layer_2", "layer_3", "layer_4"), False)]
    assert yard == [("yard", ("house",), False), ("yard", ("step",), False)]


@pytest.mark.parametrize(
    ("old", "new", "rule", "says"),
    [
        ("hut.lid]", "hat.lid]", "design/adds", "“hat” is no assembly of this design | did you mean “hut”?"),
        ("hut.lid]", "hut.lit]", "design/adds", "hut has no place “lit” | did you mean “lid”?"),
        ("yard.step]", "yard.stop]", "design/adds", "yard has no thing “stop” | did you mean “step”?"),
        ("pile 1,", "pile.layer_1,", "design/adds", "pile is a stack: its layers go by their numbers"),
        ("hut.lid]", "hut 3]", "design/adds", "hut is made of panels: they go by their names | write hut.front"),
        ("pile 1,", "pile 5,", "design/adds", "there is no layer 5 in pile | it has layers 1 to 4"),
        ("pile 1,", "pile 0,", "design/adds", "there is no layer 0 in pile"),
        ("pile 2 to top", "pile 4 to 2", "design/adds", "“4 to 2” runs down | layers are laid from the table up: write pile 2 to 4"),
        ("hut.lid]", "the lid]", "design/adds", "“the lid” is nothing that can be added | write a place of an assembly"),
        ("with hut.back", "with pile 1", "design/adds", "joins things of hut, pile"),
        ("with hut.back", "with hut.front", "design/adds", "names a thing twice"),
        ("hut.lid]", "hut.lid, hut.lid]", "design/added-twice", "adds lid of hut again, which this step has added"),
        ("pile 2 to top", "pile 2 to top, hut.lid", "design/added-twice", "which step 2 has added"),
        ("pile 1, ", "", "design/never-added", "no step adds layer 1 of pile | say adds: [pile 1]"),
        (", yard.step", "", "design/never-added", "no step adds step of yard"),
        (", hut.lid]", "]", "design/never-added", "step 1 tries it dry, and takes it apart again"),
    ],
)  # fmt: skip
def test_faults(old: str, new: str, rule: str, says: str, tried: Callable[..., Any]) -> None:
    assert old in TEXT
    found = tried(TEXT.replace(old, new)).design.findings
    finding = next(f for f in found if f.check == rule)
    assert says in f"{finding.message} | {finding.hint}"
    assert finding.place.line > 1
    assert {f.check for f in found} == {rule}  # what is not added as its name is wrong is no second finding


def test_without_any_adds_nothing_is_asked_for(tried: Callable[..., Any]) -> None:
    assert tried(TEXT.split("steps:", maxsplit=1)[0] + "steps: [{title: Glue, say: Glue it.}]").design.findings == ()


def test_runs_of_layers_are_said_as_one() -> None:
    stack = Buildable("pile", "stack", tuple(f"layer_{n}" for n in range(1, 8)), True, True, Place("spec.yaml", 1, 1))
    names = ["layer_1", "layer_3", "layer_4", "layer_5", "braces"]
    assert as_written(stack, names) == ("pile 1", "pile 3 to 5", "pile.braces")
    assert say_names(stack, names) == "layer 1, layers 3 to 5, braces of pile"
