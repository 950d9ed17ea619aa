"""A hill is several parts from one entry of the spec: letters, names, counts, stacks, steps."""

from collections.abc import Callable
from typing import Any

import pytest

HILL = "parts:\n  base: {board: foam, shape: disc}\n  hill: {name: Hill, board: foam, shape: hill, layers: layers, spare: 1}\n"
STACK = "assembly: {rock: {stack: [{part: base}, {part: hill, shift: [1 mm, 2 mm]}]}}\n"


def test_layers_are_parts(tried: Callable[..., Any]) -> None:
    design = tried(STACK + HILL).design
    assert design.findings == ()
    assert [(part.id, part.letter, part.name) for part in design.parts] == [
        ("base", "A", "base"), ("hill_1", "B", "Hill 1"), ("hill_2", "C", "Hill 2"), ("hill_3", "D", "Hill 3"),
        ("hill_4", "E", "Hill 4"),
    ]  # fmt: skip
    assert [part.count + part.spare for part in design.parts[1:]] == [2, 2, 2, 2]
    families = [part.family for part in design.parts]
    assert families[0] is None and [(f.name, f.layer, f.layers) for f in families[1:]] == [
        ("hill", k, 4) for k in range(1, 5)
    ]


def test_a_row_lays_all_layers_once(tried: Callable[..., Any]) -> None:
    (stack,) = tried(STACK + HILL).design.stacks
    assert [(row.part, row.count, row.shift) for row in stack.rows] == [
        ("base", 1, (0.0, 0.0)), *((f"hill_{k}", 1, (1.0, 2.0)) for k in range(1, 5)),
    ]  # fmt: skip


def test_steps_need_all_layers(tried: Callable[..., Any]) -> None:
    steps = "steps: [{title: Cut, say: 'The shore is {hill_1.width} wide.', parts: [hill]}]\n"
    design = tried(STACK + HILL + steps).design
    assert design.findings == ()
    assert design.steps[0].parts == ("hill_1", "hill_2", "hill_3", "hill_4")


@pytest.mark.parametrize(
    ("assembly", "parts", "rule", "says"),
    [
        ("assembly: {rock: {stack: [{part: base}, {part: hill, count: 2}]}}\n", HILL, "design/section", "each once"),
        ("assembly: {rock: {stack: [{part: base}, {part: hill, turn: 9 deg}]}}\n", HILL, "design/section", "each once"),
        (STACK, HILL.replace("base", "hill_2"), "design/unknown-part", "no part “base”"),
        (
            "assembly: {rock: {stack: [{part: base}, {part: hill}]}, hut: {panels: {front: hill}, stands_on: front.bottom}}\n",
            HILL,
            "design/unknown-part",
            "only a stack",
        ),
        ("assembly: {hill: {stack: [{part: base}, {part: hill}]}}\n", HILL, "design/name-taken", "two meanings"),
        (STACK, HILL.replace("layers: layers", "layers: 61"), "design/count-range", "at most 60"),
    ],
)
def test_families_that_cannot_be(assembly: str, parts: str, rule: str, says: str, tried: Callable[..., Any]) -> None:
    read = tried(assembly + parts)
    assert rule in read.found
    assert any(says in f"{f.message} | {f.hint}" for f in read.design.findings)


def test_a_part_with_the_name_of_a_layer(tried: Callable[..., Any]) -> None:
    read = tried(STACK + HILL + "  hill_2: {board: foam, shape: disc}\n")
    assert "design/name-taken" in read.found
