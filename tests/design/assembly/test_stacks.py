"""Stacks and their sections."""

from collections.abc import Callable
from typing import Any

import pytest

HUT = "  hut: {panels: {front: wall}, stands_on: front.bottom}\n"


def stacks(text: str) -> str:
    return "assembly:\n" + HUT + text


def test_rows(tried: Callable[..., Any]) -> None:
    design = tried(
        stacks("  pile: {stack: [{part: slab}, {part: slab, count: layers, turn: 360 deg / 18, shift: [1 mm, -2 mm]}]}")
    ).design
    assert design.findings == ()
    (pile,) = design.stacks
    assert (pile.name, pile.on, pile.turn, pile.loose) == ("pile", "", 0.0, False)
    first, second = pile.rows
    assert (first.part, first.count, first.turn, first.shift) == ("slab", 1, 0.0, (0.0, 0.0))
    assert (second.part, second.count, second.turn, second.shift) == ("slab", 4, 20.0, (1.0, -2.0))


def test_sections_stand_on_each_other_from_the_table_up(tried: Callable[..., Any]) -> None:
    text = """\
  pile:
    stack:
      - {part: slab}
      - {section: low, stack: [{part: slab, count: 2}]}
      - {section: top, loose: true, turn: 90 deg, stack: [{part: slab}, {section: flag, stack: [{part: slab}]}]}
      - {section: arm, stands_on: low, stack: [{part: slab}]}
"""
    design = tried(stacks(text)).design
    assert design.findings == ()
    assert [(s.name, s.on, s.turn, s.loose, sum(r.count for r in s.rows)) for s in design.stacks] == [
        ("pile", "", 0.0, False, 1),
        ("pile_low", "pile", 0.0, False, 2),
        ("pile_top", "pile_low", 90.0, True, 1),
        ("pile_flag", "pile_top", 0.0, False, 1),
        ("pile_arm", "pile_low", 0.0, False, 1),
    ]
    assert {part.id: part.count for part in design.parts}["slab"] == 6


def test_sections_without_names_are_numbered(tried: Callable[..., Any]) -> None:
    design = tried(stacks("  pile: {stack: [{stack: [{part: slab}]}, {stack: [{part: slab}]}]}")).design
    assert [(s.name, s.on) for s in design.stacks] == [("pile_section_1", ""), ("pile_section_2", "pile_section_1")]


def test_a_stack_may_stand_on_another_stack(tried: Callable[..., Any]) -> None:
    text = (
        "  pile: {stack: [{part: slab}]}\n  tower: {stands_on: pile, loose: true, turn: 10 deg, stack: [{part: slab}]}"
    )
    tower = tried(stacks(text)).design.stacks[1]
    assert (tower.name, tower.on, tower.loose, tower.turn) == ("tower", "pile", True, 10.0)
    sections = (
        "  pile: {stack: [{part: slab}]}\n  tower: {stands_on: pile, stack: [{section: a, stack: [{part: slab}]}]}"
    )
    assert tried(stacks(sections)).design.stacks[1].on == "pile"


@pytest.mark.parametrize(
    ("text", "rule", "says"),
    [
        ("  pile: {stands_on: hut, stack: [{part: slab}]}", "design/section", "stands on “hut”, which is no stack"),
        ("  pile: {stands_on: pile, stack: [{part: slab}]}", "design/section", "pile → pile"),
        (
            "  pile: {stack: [{section: a, stack: [{part: slab}]}, {section: a, stack: [{part: slab}]}]}",
            "design/section",
            "two sections of pile are called “a”",
        ),
        (
            "  pile: {stack: [{section: a, stack: [{part: slab}]}]}\n  pile_a: {stack: [{part: slab}]}",
            "design/name-taken",
            "two stacks are called “pile_a”",
        ),
        ("  pile: {stack: [{part: slab, count: 200}, {part: slab, count: 201}]}", "design/too-many-layers", "401 layers"),
        ("  pile: {stack: [{part: slab, count: 0}]}", "design/count-range", "at least 1"),
        ("  pile: {stack: [{part: slab, turn: 3 mm}]}", "design/wrong-kind", "a length stands where an angle belongs"),
    ],
)  # fmt: skip
def test_faults(text: str, rule: str, says: str, tried: Callable[..., Any]) -> None:
    (finding,) = tried(stacks(text)).design.findings
    assert finding.check == rule
    assert says in finding.message


def test_stacks_that_stand_on_each_other(tried: Callable[..., Any]) -> None:
    text = "  pile: {stands_on: tower, stack: [{part: slab}]}\n  tower: {stands_on: pile, stack: [{part: slab}]}"
    bad = tried(stacks(text))
    assert set(bad.found) == {"design/section"}
    assert "pile → tower → pile" in bad.design.findings[0].message


def test_a_million_layers_are_one_finding(tried: Callable[..., Any]) -> None:
    bad = tried("sizes: {board: 5 mm, length: 100 mm, layers: 10 ^ 6}")
    assert bad.found == ["design/too-many-layers"]
    assert bad.design.findings[0].value == 1e6
