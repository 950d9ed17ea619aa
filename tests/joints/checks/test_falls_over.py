from dataclasses import replace
from random import Random
from types import SimpleNamespace

import pytest

from publisher.basics import Severity
from publisher.design import EdgeRef, FaceSeat
from publisher.joints.assembled import Assembled
from publisher.joints.checks.falls_over import falls_over

ID = "joints/falls-over"


def beam(make: SimpleNamespace, by: float) -> Assembled:
    """A beam of 100 × 20 mm on a base of 20 × 20 mm, ``by`` mm beyond its left side: both of one board."""
    plan = make.design(stacks=(make.stack("s", ("base", 1, 0.0, (0, 0)), ("beam", 1, 0.0, (-by, 0))),))
    return make.assembled(plan, make.rectangle("base", 0, 0, 20, 20), make.rectangle("beam", 0, 0, 100, 20))


def bracket(make: SimpleNamespace) -> Assembled:
    """A wall on a short foot, and a long shelf on the other side of it, level with its top."""
    plan = make.panels(
        "bracket", {"foot": "f", "wall": "w", "arm": "a"}, "wall.bottom",
        make.join("wall.left", "foot.right"), make.join("wall.top", "arm.bottom", corner=90.0),
    )  # fmt: skip
    return make.assembled(
        make.design(panels=(plan,)), make.wall("f", 20, 80), make.wall("w", 60, 80), make.wall("a", 60, 200)
    )


@pytest.mark.keeps(ID)
def test_what_stands_is_not_found(make: SimpleNamespace) -> None:
    assert falls_over.run(beam(make, 40.0), falls_over).findings == ()
    walls = {"front": "w", "right": "w", "back": "w"}
    plan = make.panels(
        "box", walls, "front.bottom", make.join("front.right", "right.left"), make.join("right.right", "back.left")
    )
    outcome = falls_over.run(make.assembled(make.design(panels=(plan,)), make.wall("w", 60, 200)), falls_over)
    assert (outcome.looked_at, outcome.findings) == (1, ())


@pytest.mark.breaks(ID)
def test_what_falls_over_is_found(make: SimpleNamespace) -> None:
    (found,) = falls_over.run(beam(make, 0.0), falls_over).findings
    assert found.severity is Severity.ERROR
    # the weights lie at 10 and 50 mm, as 1 to 5: at 43.3 mm, and the base ends at 20
    assert "23.3 mm" in found.message
    (bent,) = falls_over.run(bracket(make), falls_over).findings
    assert "bracket falls over: its weight falls" in bent.message


@pytest.mark.parametrize("seed", range(20))
def test_random_beams_against_the_lever(make: SimpleNamespace, seed: int) -> None:
    by = Random(seed).uniform(0, 100)
    at = (400.0 * 10.0 + 2000.0 * (50.0 - by)) / 2400.0
    low, high = max(0.0, -by), min(20.0, 100.0)
    assert bool(falls_over.run(beam(make, by), falls_over).findings) == (not low <= at <= high)


def test_panels_that_do_not_meet_are_not_judged(make: SimpleNamespace) -> None:
    """A wall higher than its neighbour is laid with the middles of both edges together, below the table: another finding."""
    plan = make.panels("box", {"front": "w", "right": "high"}, "front.bottom", make.join("front.right", "right.left"))
    outcome = falls_over.run(
        make.assembled(make.design(panels=(plan,)), make.wall("w", 60, 40), make.wall("high", 60, 90)), falls_over
    )
    assert (outcome.looked_at, outcome.findings) == (0, ())


def test_a_plate_that_stands_on_its_rim_is_told_how_to_lie(make: SimpleNamespace) -> None:
    plan = make.panels("yard", {"plate": "plate", "w": "w"}, "plate.bottom")
    seat = FaceSeat("w", "plate", "outside", "bottom", (50.0, 40.0), 0.0, None, make.here)
    parts = make.wall("plate", 100, 80), make.wall("w", 60, 40)
    hints = [
        [f.hint for f in falls_over.run(make.assembled(make.design(panels=(one,)), *parts), falls_over).findings]
        for one in (replace(plan, seats=(seat,)), replace(plan, seats=(seat,), stands_on=EdgeRef("plate", "")))
    ]
    assert "say lies_on_table: plate" in hints[0][0]
    assert hints[1] == []
