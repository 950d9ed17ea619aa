from dataclasses import replace
from types import SimpleNamespace

import pytest

from publisher.design import BracePlan
from publisher.joints.checks.brace_does_not_fit import brace_does_not_fit


def braced(make: SimpleNamespace, run: float, drop: float, under: tuple[int, ...] = (), weak: bool = False) -> object:
    stack = replace(make.stack("s", ("step", 14, 20.0, (0, 0))), brace=BracePlan(run, drop, under, weak, make.here))
    return make.assembled(make.design(stacks=(stack,)), make.stair_layer())


@pytest.mark.breaks("joints/brace-does-not-fit")
def test_a_knee_that_would_stand_in_the_plinth_is_found(make: SimpleNamespace) -> None:
    rows = (("plinth", 1, 0.0, (0, 0)), ("step", 14, 20.0, (0, 0)))
    stack = replace(make.stack("s", *rows), brace=BracePlan(40.0, 30.0, (6,), False, make.here))
    (found,) = brace_does_not_fit.run(
        make.assembled(make.design(stacks=(stack,)), make.stair_layer(), make.disc()), brace_does_not_fit
    ).findings
    assert "finds no room under step 6 of s" in found.message
    assert found.hint.startswith("make drop smaller")


@pytest.mark.keeps("joints/brace-does-not-fit")
def test_a_knee_under_its_step_and_on_its_core_passes(make: SimpleNamespace) -> None:
    outcome = brace_does_not_fit.run(braced(make, 40.0, 30.0), brace_does_not_fit)
    assert (outcome.looked_at, outcome.findings) == (1, ())


@pytest.mark.breaks("joints/brace-does-not-fit")
def test_a_knee_that_runs_beyond_the_step_is_found(make: SimpleNamespace) -> None:
    (found,) = brace_does_not_fit.run(
        braced(make, 63.0, 30.0), brace_does_not_fit
    ).findings  # the step sticks out 62 mm
    assert (
        "of 63.0 mm (2.48 in) run and 30.0 mm (1.18 in) drop finds no room under step 7 of s, and 7 more"
        in found.message
    )
    assert (found.limit, found.hint) == (61.5, "make run 61.5 mm or less")


def test_a_knee_that_drops_below_the_table_is_found(make: SimpleNamespace) -> None:
    (found,) = brace_does_not_fit.run(
        braced(make, 40.0, 66.0), brace_does_not_fit
    ).findings  # the top step's underside lies 65 mm up
    assert "finds no core to stand on" in found.message
    assert found.limit == 65.0


def test_a_step_that_is_not_there_and_one_that_is_too_low_are_found(make: SimpleNamespace) -> None:
    beyond, low = brace_does_not_fit.run(braced(make, 40.0, 30.0, (3, 12, 15)), brace_does_not_fit).findings
    assert (beyond.message, beyond.limit) == ("there is no step 15: s has 14 steps", 14.0)
    assert "step 3 of s lies 10.0 mm (0.39 in) up" in low.message


def test_where_no_step_is_weak_none_is_braced_and_none_is_missed(make: SimpleNamespace) -> None:
    assert brace_does_not_fit.run(braced(make, 40.0, 30.0, weak=True), brace_does_not_fit).findings == ()


def test_without_braces_there_is_nothing_to_look_at(make: SimpleNamespace) -> None:
    plan = make.design(stacks=(make.stack("s", ("step", 4, 20.0, (0, 0))),))
    assert brace_does_not_fit.run(make.assembled(plan, make.stair_layer()), brace_does_not_fit).looked_at == 0
