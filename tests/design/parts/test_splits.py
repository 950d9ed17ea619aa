"""Seams as they are read: one, or a list; their plates and steps; names that pieces will take."""

from collections.abc import Callable
from typing import Any

import pytest


def spec(split: str, more: str = "") -> str:
    return (
        "assembly: {pile: {stack: [{part: slab}]}}\n"
        f"parts:\n  slab: {{board: foam, shape: disc, with: {{radius: 50 mm}}, split: {split}}}\n{more}"
    )


def test_one_seam_and_a_list(tried: Callable[..., Any]) -> None:
    read = tried(spec("{at: length / 4, from: bottom, plate: 40 mm}"))
    assert read.found == []
    (one,) = read.design.parts[0].splits
    assert (one.at, one.start, one.plate, one.step) == (25.0, "bottom", 40.0, 0.0)
    read = tried(spec("[{at: 30 mm, from: left, step: 20 mm}, {at: 60 mm}]"))
    assert read.found == []
    assert [(s.at, s.start, s.plate, s.step) for s in read.design.parts[0].splits] == [
        (30.0, "left", 0.0, 20.0),
        (60.0, "left", 0.0, 0.0),
    ]


def test_a_part_without_a_seam_has_none(tried: Callable[..., Any]) -> None:
    assert tried("").design.parts[0].splits == ()


@pytest.mark.parametrize(
    ("split", "says"),
    [
        ("{at: 30 mm, plate: 19 mm}", "write 20 to 300 mm"),
        ("{at: 30 mm, plate: 301 mm}", "write 20 to 300 mm"),
        ("{at: 30 mm, step: 201 mm}", "write 5 to 200 mm"),
        ("{at: 30 mm, step: 20 mm, plate: 39 mm}", "write plate: 40 mm or more"),
    ],
)
def test_plates_and_steps_that_cannot_be_cut(tried: Callable[..., Any], split: str, says: str) -> None:
    read = tried(spec(split))
    assert read.found == ["design/split"]
    assert says in read.design.findings[0].hint


def test_a_plate_just_wide_enough_for_its_step(tried: Callable[..., Any]) -> None:
    assert tried(spec("{at: 30 mm, step: 20 mm, plate: 40 mm}")).found == []


@pytest.mark.parametrize(("name", "taken"), [("slab_1", True), ("slab_plate_2", True), ("slab_low", False)])
def test_names_that_pieces_take(tried: Callable[..., Any], name: str, taken: bool) -> None:
    other = f"  {name}: {{board: foam, count: 1, shape: disc, with: {{radius: 9 mm}}}}\n"
    read = tried(spec("{at: 30 mm}", other))
    assert read.found == (["design/name-taken"] if taken else [])
