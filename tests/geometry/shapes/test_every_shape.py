"""What holds of every shape: named edges in its outline and its registration, quick to draw, the same again."""

import json
import re
from collections.abc import Callable
from itertools import pairwise
from math import dist
from pathlib import Path

import pytest

from publisher.design import PartPlan
from publisher.geometry import Part, ShapeInfo, shape_infos
from publisher.geometry.making.parts import make_part

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
EXAMPLES = json.loads((Path(__file__).parents[3] / "docs" / "examples.json").read_text(encoding="utf-8"))["shapes"]
FLAT = [info for info in shape_infos() if not info.layered]  # a layered one stands for several parts


def stem(name: str) -> str:
    """``side_3`` and ``side_n`` are edges of one kind."""
    return re.sub(r"_(\d+|n)$", "_#", name)


def sizes_of(info: ShapeInfo) -> dict[str, float | str]:
    found = EXAMPLES.get(info.name)
    assert found, f"{info.name} has no example sizes in docs/examples.json"
    return {name: value if isinstance(value, str) else float(value) for name, value in found.items()}


@pytest.mark.parametrize("info", FLAT, ids=lambda info: info.name)
def test_edges_are_registered_and_lie_in_the_outline(plan: Plan, drawn: Draw, info: ShapeInfo) -> None:
    part = drawn(plan(info.name, sizes_of(info)))
    said = {stem(name) for words in info.edges for name in words.split(" … ")}
    runs = {run.name for run in part.outline.outer.edges}
    names = [edge.name for edge in part.edges]
    assert names and len(set(names)) == len(names)
    for edge in part.edges:
        assert stem(edge.name) in said, f"{edge.name} is not among the edges of {info.name}"
        assert edge.name in runs
        assert edge.centre is not None or edge.nominal_length > 0.0
    if info.openings:
        bottom = part.edge("bottom")  # openings are measured from it
        assert bottom is not None and bottom.start[1] == bottom.end[1] == 0.0


@pytest.mark.parametrize("info", FLAT, ids=lambda info: info.name)
def test_straight_edges_run_anticlockwise(plan: Plan, drawn: Draw, info: ShapeInfo) -> None:
    part = drawn(plan(info.name, sizes_of(info)))
    ring = part.outline.outer.points
    where = {point: at for at, point in enumerate(ring)}
    starts = [where[edge.start] for edge in part.edges if edge.centre is None and edge.start in where]
    turns = sum(b < a for a, b in pairwise([*starts, *starts[:1]]))
    assert turns <= 1 or len(starts) < 2  # once round the ring, in its own direction


@pytest.mark.parametrize("info", FLAT, ids=lambda info: info.name)
def test_a_shape_is_the_same_twice(plan: Plan, info: ShapeInfo) -> None:
    wanted = plan(info.name, sizes_of(info), trace_allowance=0.4)
    first, found = make_part(wanted)
    assert first is not None, found
    assert make_part(wanted) == (first, ())
    assert all(dist(edge.start, edge.end) < 5000.0 for edge in first.edges)
