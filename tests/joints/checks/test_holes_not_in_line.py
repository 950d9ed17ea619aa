"""A dowel of 6 mm through piers with holes of 6.2 mm, 40 mm apart."""

from dataclasses import replace
from types import SimpleNamespace
from typing import Any

import pytest

from publisher.basics import Severity, circle
from publisher.design import FaceSeat, FitPlan
from publisher.geometry import Part
from publisher.joints.checks.holes_not_in_line import holes_not_in_line

ID = "joints/holes-not-in-line"


def pier(make: SimpleNamespace, *at: float, radius: float = 3.1) -> Part:
    holes = tuple(circle((x, 0.0), radius, "dowel").reversed() for x in at)
    part: Part = make.part("a", make.rectangle("a", -40, -40, 40, 40).outline.outer, holes=holes)
    return part


def told(make: SimpleNamespace, part: Part, *rows: Any, more: tuple[Part, ...] = ()) -> list[tuple[float, float]]:
    fit = FitPlan("dowel", "a.dowel.width", 6.0, "", 0.0, 0.0, None, make.here)
    design = replace(make.design(stacks=(make.stack("s", *rows),)), fits=(fit,))
    outcome = holes_not_in_line.run(make.assembled(design, part, *more), holes_not_in_line)
    assert all(found.severity is Severity.ERROR for found in outcome.findings)
    return [(found.value or 0.0, found.limit or 0.0) for found in outcome.findings]


@pytest.mark.keeps(ID)
def test_holes_that_lie_over_each_other_pass(make: SimpleNamespace) -> None:
    assert told(make, pier(make, -20, 20), ("a", 4, 0.0, (0, 0))) == []
    assert told(make, pier(make, 0), ("a", 4, 30.0, (0, 0))) == []  # turned about the hole
    assert told(make, pier(make, -20, 20), ("a", 3, 180.0, (0, 0))) == []
    assert told(make, pier(make, -20, 20), ("a", 2, 0.0, (0.2, 0))) == []  # as much as its play
    assert told(make, pier(make, -20, 20), ("a", 2, 0.0, (40, 0))) == []  # one of two goes on


@pytest.mark.keeps(ID)
def test_whole_board_between_ends_the_dowel(make: SimpleNamespace) -> None:
    cap = make.rectangle("cap", -40, -40, 40, 40)
    assert told(make, pier(make, 0), ("a", 1, 0.0, (0, 0)), ("cap", 1, 0.0, (0, 0)), ("a", 1, 0.0, (4, 0)), more=(cap,)) == []  # fmt: skip


@pytest.mark.breaks(ID)
def test_holes_that_the_layers_move_apart_are_found(make: SimpleNamespace) -> None:
    shifted = told(make, pier(make, -20, 20), ("a", 1, 0.0, (0, 0)), ("a", 3, 0.0, (4, 0)))
    assert shifted == [(pytest.approx(4.0), pytest.approx(0.2))] * 3
    assert told(make, pier(make, -20, 20), ("a", 2, 90.0, (0, 0))) == [(pytest.approx(28.284, abs=0.001), pytest.approx(0.2))]  # fmt: skip
    assert told(make, pier(make, 0), ("a", 2, 0.0, (30, 0))) == [(pytest.approx(30.0), pytest.approx(0.2))]
    creeping = told(
        make, pier(make, 0), ("a", 3, 0.0, (0.15, 0))
    )  # each in line with the next, the third not with the first
    assert creeping == [(pytest.approx(0.3), pytest.approx(0.2))]


def through(make: SimpleNamespace, second: float, turn: float = 90.0, more: bool = False) -> list[tuple[float, float]]:
    """Two cheeks 50 mm apart on a front, each with a hole of 6.2 mm: 20 mm from the front, and ``second`` mm from it."""

    def cheek(name: str, x: float) -> Part:
        wall, hole = make.wall(name, 60, 40), circle((x, 25.0), 3.1, "dowel").reversed()
        part: Part = replace(wall, outline=replace(wall.outline, holes=(hole,)), template=wall.outline)
        return part

    places = {"front": "front", "r": "r", "l": "l", **({"back": "mid"} if more else {})}
    joins = [make.join("front.right", "r.left", corner=turn), make.join("l.right", "front.left")]
    plan = make.panels("hut", places, "front.bottom", *joins)
    if more:  # a whole board stands between both cheeks
        plan = replace(plan, seats=(FaceSeat("back", "r", "inside", "", (20.0, 20.0), 0.0, None, make.here),))
    fits = tuple(FitPlan("dowel", f"{side}.dowel.width", 6.0, "", 0.0, 0.0, None, make.here) for side in "rl")
    parts = make.wall("front", 60, 40), cheek("r", 20.0), cheek("l", 60.0 - second), make.wall("mid", 30, 30)
    subject = make.assembled(replace(make.design(panels=(plan,)), fits=fits), *parts)
    found = holes_not_in_line.run(subject, holes_not_in_line).findings
    assert all("the dowel does not pass r and l of hut" in one.message for one in found)
    return [(one.value or 0.0, one.limit or 0.0) for one in found]


@pytest.mark.keeps(ID)
def test_holes_of_panels_that_face_each_other(make: SimpleNamespace) -> None:
    assert through(make, 20.0) == through(make, 20.19) == []
    assert through(make, 26.3) == []  # no dowel is meant to pass both
    assert through(make, 23.2) == []  # nor here, where the axis of each meets board
    assert through(make, 22.0, more=True) == []  # a board between them ends it
    assert through(make, 20.0, turn=150.0) == []  # the axes look past each other


@pytest.mark.breaks(ID)
def test_holes_of_panels_that_are_off_each_other(make: SimpleNamespace) -> None:
    for second in (22.0, 23.0):
        assert through(make, second) == [(pytest.approx(second - 20.0), pytest.approx(0.2))]
    ((apart, _),) = through(make, 20.0, turn=92.0)
    assert apart > 0.2  # askew by 2°
