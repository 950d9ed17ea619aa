"""Things that do not lie on each other, collide, or cannot be lifted off."""

from dataclasses import replace
from types import SimpleNamespace
from typing import Any

import pytest

from publisher.basics import Check
from publisher.design import ThingPlan, WholePlan
from publisher.joints.assembled import Assembled
from publisher.joints.checks.lift_off_locked import lift_off_locked
from publisher.joints.checks.parts_share_space import parts_share_space
from publisher.joints.checks.thing_not_carried import thing_not_carried
from publisher.joints.put_together import assemble

CARRIED, LOCKED, SPACE = (
    thing_not_carried,
    lift_off_locked,
    parts_share_space,
)
GOOD = {"w": ("pier", (), (-35, 0)), "e": ("pier", (), (35, 0)), "top": ("beam", ("w", "e"), (0, 0))}


def whole(make: SimpleNamespace, things: dict[str, Any]) -> Assembled:
    parts = (make.rectangle("slab", 0, 0, 30, 20), make.rectangle("plank", 0, 0, 100, 20))
    stacks = (
        make.stack("pier", ("slab", 4, 0.0, (0.0, 0.0))),
        make.stack("low", ("slab", 3, 0.0, (0.0, 0.0))),
        make.stack("beam", ("plank", 1, 0.0, (0.0, 0.0))),
    )
    plan = tuple(ThingPlan(name, of, on, at, 0.0, bool(on), make.here) for name, (of, on, at) in things.items())
    design = replace(make.design(stacks=stacks), wholes=(WholePlan("crossing", plan, make.here),))
    return assemble(design, parts)[0]


@pytest.mark.keeps("joints/thing-not-carried", "joints/lift-off-locked", "joints/parts-share-space")
@pytest.mark.parametrize("check", [CARRIED, LOCKED, SPACE])
def test_a_beam_on_two_piers(make: SimpleNamespace, check: Check[Assembled]) -> None:
    outcome = check.run(whole(make, GOOD), check)
    assert outcome.looked_at > 0 and outcome.findings == ()


@pytest.mark.breaks("joints/thing-not-carried")
@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"e": ("low", (), (35, 0))}, "top stands on e and ends 5.00 mm (0.20 in) over it"),
        ({"top": ("beam", ("w", "e"), (40, 0))}, "top stands on w and lies beside it"),
        ({"top": ("beam", ("w", "e"), (29.96, 0))}, "top stands on w and lies beside it"),  # 0.8 mm² hold nothing
        ({"top": ("beam", ("w",), (20, 0))}, "top stands on w and falls off: its weight falls 5.00 mm"),
    ],
)
def test_a_beam_that_is_not_carried(make: SimpleNamespace, change: dict[str, Any], words: str) -> None:
    (finding,) = CARRIED.run(whole(make, {**GOOD, **change}), CARRIED).findings
    assert words in finding.message


@pytest.mark.parametrize(
    ("wide", "deep", "words"), [(0.2, 0.2, "at a point"), (0.9, 20.0, "in a line"), (1.1, 20.0, "")]
)
def test_what_touches_on_hardly_any_width_rocks(make: SimpleNamespace, wide: float, deep: float, words: str) -> None:
    stacks = make.stack("post", ("tip", 4, 0.0, (0.0, 0.0))), make.stack("beam", ("plank", 1, 0.0, (0.0, 0.0)))
    parts = make.rectangle("tip", 0, 0, wide, deep), make.rectangle("plank", 0, 0, 100, 20)
    plan = WholePlan("sign", (
        ThingPlan("p", "post", (), (0, 0), 0.0, False, make.here), ThingPlan("b", "beam", ("p",), (0, 0), 0.0, False, make.here),
    ), make.here)  # fmt: skip
    subject = assemble(replace(make.design(stacks=stacks), wholes=(plan,)), parts)[0]
    said = [finding.message for finding in CARRIED.run(subject, CARRIED).findings]
    assert said == ([f"b stands on p and falls off: it touches {words}"] if words else [])


def test_what_balances_on_the_very_edge_falls(make: SimpleNamespace) -> None:
    (finding,) = CARRIED.run(whole(make, {**GOOD, "top": ("beam", ("w",), (15, 0))}), CARRIED).findings
    assert finding.value == pytest.approx(0.0, abs=1e-9) and "falls off" in finding.message


@pytest.mark.breaks("joints/parts-share-space")
def test_things_in_one_place(make: SimpleNamespace) -> None:
    (finding, *_) = SPACE.run(whole(make, {**GOOD, "e": ("pier", (), (-10, 0))}), SPACE).findings
    assert "w.layer_1 (part S) and e.layer_1 (part S) stand in one place" in finding.message
