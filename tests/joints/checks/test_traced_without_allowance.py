"""A pencil of 0.4 mm (0.3 to 0.5: common practice, no source) beside every line that meets something."""

from dataclasses import replace
from types import SimpleNamespace
from typing import Any

import pytest

from publisher.design import FitPlan
from publisher.geometry import DrawnFor, Opening, Part
from publisher.joints.budget import meetings_of
from publisher.joints.checks.traced_without_allowance import traced_without_allowance

ID = "joints/traced-without-allowance"


def wall(make: SimpleNamespace, name: str, allowance: float) -> Part:
    return replace(make.wall(name, 120, 40), trace_allowance=allowance)


def lap(make: SimpleNamespace, a: float, b: float) -> Any:
    """Two panels that cross in slots of 5.3 mm."""
    plan = make.panels("x", {"a": "a", "b": "b"}, "a.bottom", make.crossing("a.top", "b.bottom", 60, 40))
    return make.design(panels=(plan,)), (wall(make, "a", a), wall(make, "b", b))


def tabs(make: SimpleNamespace, a: float, b: float) -> Any:
    join = make.join("a.right", "b.left", "tab_and_slot", inset=12.0)
    plan = make.panels("x", {"a": "a", "b": "b"}, "a.bottom", join)
    return make.design(panels=(plan,)), (wall(make, "a", a), wall(make, "b", b))


def ribs(make: SimpleNamespace, a: float, _: float) -> Any:
    return make.design(), (replace(wall(make, "a", a), drawn_for=(DrawnFor("slot", 5.3, 5.0),)),)


def seam(make: SimpleNamespace, a: float, _: float) -> Any:
    return make.design(), (replace(wall(make, "a", a), drawn_for=(DrawnFor("seam", 120.0, 33.2),)),)


def room(make: SimpleNamespace, a: float, wide: float) -> Part:
    ring = make.hole(((20, 10), (20, 30), (20 + wide, 30), (20 + wide, 10)), "hole.side")
    opening = Opening("o", "window", ring, wide, 20, 10, 30)
    own = make.part("a", make.wall("a", 120, 40).outline.outer, holes=(ring,), openings=(opening,))
    return replace(own, trace_allowance=a)


def dowel(make: SimpleNamespace, a: float, _: float) -> Any:
    fit = FitPlan("dowel", "a.o.width", 6.0, "", 0.0, 0.0, None, make.here)
    return replace(make.design(), fits=(fit,)), (room(make, a, 6.2),)


def leaf(make: SimpleNamespace, a: float, b: float) -> Any:
    """A leaf of 29.6 mm in an opening of 30."""
    fit = FitPlan("leaf", "a.o.width", None, "b.width", 0.0, 0.0, None, make.here)
    return replace(make.design(), fits=(fit,)), (
        room(make, a, 30.0),
        replace(make.wall("b", 29.6, 39), trace_allowance=b),
    )


def told(make: SimpleNamespace, case: Any, use: str, a: float, b: float) -> dict[str, float | None]:
    design, parts = case(make, a, b)
    made = make.assembled(replace(design, use=use), *parts)
    made = replace(made, meetings=meetings_of(made))
    return {f.subject: f.value for f in traced_without_allowance.run(made, traced_without_allowance).findings}


@pytest.mark.parametrize("case", [lap, tabs, ribs, seam, dowel, leaf])
@pytest.mark.keeps(ID)
def test_what_allows_for_the_pencil_or_is_pasted_passes(make: SimpleNamespace, case: Any) -> None:
    assert told(make, case, "trace", 0.4, 0.4) == {}
    assert told(make, case, "paste", 0.0, 0.0) == {}


@pytest.mark.parametrize(
    ("case", "a", "b", "found"),
    [
        (lap, 0.0, 0.0, {"a": 4.5, "b": 4.5}),
        (lap, 0.4, 0.0, {"b": 4.5}),
        (tabs, 0.0, 0.4, {"a": 4.5}),
        (ribs, 0.0, 0.0, {"a": 4.5}),
        (seam, 0.0, 0.0, {"a": 120.8}),
        (dowel, 0.0, 0.0, {"a": 5.4}),
        (leaf, 0.0, 0.0, {"a": -1.2, "b": -1.2}),  # 0.4 mm of play, less 0.8 of the opening and 0.8 of the leaf
        (leaf, 0.4, 0.0, {"b": -0.4}),
    ],
)
@pytest.mark.breaks(ID)
def test_each_part_that_allows_for_none_is_told(
    make: SimpleNamespace, case: Any, a: float, b: float, found: dict[str, float]
) -> None:
    assert told(make, case, "trace", a, b) == {part: pytest.approx(size) for part, size in found.items()}


@pytest.mark.keeps(ID)
def test_a_fit_with_room_for_the_pencil_passes(make: SimpleNamespace) -> None:
    fit = FitPlan("dowel", "a.o.width", 6.0, "", 0.0, 0.0, None, make.here)
    made = make.assembled(replace(make.design(), fits=(fit,), use="trace"), room(make, 0.0, 7.0))
    made = replace(made, meetings=meetings_of(made))
    outcome = traced_without_allowance.run(made, traced_without_allowance)
    assert (outcome.looked_at, outcome.findings) == (1, ())
