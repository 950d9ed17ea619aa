"""Combinations as they are read: shapes written in place, shapes of other parts, copies, mirrors; and what cannot be."""

from collections.abc import Callable
from typing import Any

import pytest

from publisher.design import PartPlan

ASSEMBLY = "assembly: {pile: {stack: [{part: slab, count: 4}]}}\n"


def spec(combine: str, more: str = "") -> str:
    return (
        f"{ASSEMBLY}parts:\n  slab: {{board: foam, shape: disc, with: {{radius: 50 mm}}, combine: [{combine}]}}\n{more}"
    )


def slab(tried: Callable[..., Any], combine: str, more: str = "") -> PartPlan:
    read = tried(spec(combine, more))
    assert read.found == []
    part: PartPlan = read.design.parts[0]
    return part


def test_a_shape_written_in_place(tried: Callable[..., Any]) -> None:
    (step,) = slab(
        tried,
        "{cut: {shape: rectangle, with: {width: length / 10, height: 4 mm}}, at: [3 mm, 2 * board], turn: 45 deg}",
    ).combine
    assert (step.kind, step.shape, step.called, step.at, step.turn, step.count) == (
        "cut",
        "rectangle",
        "cut1",
        (3, 10),
        45,
        1,
    )
    assert [(p.name, p.value) for p in step.parameters] == [("width", 10.0), ("height", 4.0)]


def test_steps_are_kept_in_order_and_called(tried: Callable[..., Any]) -> None:
    steps = slab(
        tried,
        "{add: {shape: disc, with: {radius: 9 mm}}, called: knob}, {mirror: left_right},"
        " {repeat: 3, pitch: 60 mm, along: bottom}, {turn: 30 deg}",
    ).combine
    assert [(step.kind, step.called) for step in steps] == [
        ("add", "knob"), ("mirror", "mirror2"), ("repeat", "repeat3"), ("turn", "turn4"),
    ]  # fmt: skip
    assert (steps[1].flip, steps[2].count, steps[2].pitch, steps[2].along, steps[3].turn) == (
        "left_right", 3, 60.0, "bottom", 30.0,
    )  # fmt: skip


def test_the_shape_of_another_part_with_its_own_steps(tried: Callable[..., Any]) -> None:
    other = (
        "  key: {board: foam, count: 1, shape: disc, with: {radius: 8 mm},"
        " combine: [{add: {shape: rectangle, with: {width: 4 mm, height: 20 mm}}}]}\n"
    )
    (step,) = slab(tried, "{cut: key, at: [1 mm, 2 mm]}", other).combine
    assert (step.shape, step.parameters[0].value) == ("disc", 8.0)
    assert [(inner.kind, inner.shape) for inner in step.steps] == [("add", "rectangle")]


@pytest.mark.parametrize(
    ("combine", "more", "says"),
    [
        ("{cut: kez}", "  key: {board: foam, count: 1, shape: disc}\n", "did you mean “key”"),
        ("{cut: slab}", "", "slab → slab"),
        ("{cut: sign}", "  sign: {board: foam, count: 1, drawing: {file: a.svg}}\n", "is drawn"),
        ("{cut: {shape: disc}, count: 3}", "", "pitch and an edge"),
        ("{at: [1 mm, 1 mm]}", "", "does nothing"),
        (", ".join(["{turn: 1 deg}"] * 61), "", "at most 60 steps"),
    ],
)
def test_combinations_that_cannot_be_read(combine: str, more: str, says: str, tried: Callable[..., Any]) -> None:
    read = tried(spec(combine, more))
    assert set(read.found) == {"design/combination"}
    finding = read.design.findings[0]
    assert says in f"{finding.message} | {finding.hint}" and finding.place.line > 1


def test_a_fault_of_another_part_is_found_once(tried: Callable[..., Any]) -> None:
    read = tried(spec("{cut: key}", "  key: {board: foam, count: 1, shape: disc, with: {radius: lenght}}\n"))
    assert read.found == ["design/unknown-name"]
