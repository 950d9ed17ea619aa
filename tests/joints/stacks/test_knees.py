"""Knee braces in their places: by hand on a spiral, and where there is no room."""

from dataclasses import replace
from itertools import pairwise
from math import hypot
from types import SimpleNamespace

import pytest
import shapely

from publisher.design import BracePlan
from publisher.joints.stacks.facts import StackReport
from publisher.joints.stacks.knees import lowest_ply
from tests.joints.conftest import assembled, stair_layer


def report(
    make: SimpleNamespace, run: float, drop: float, *under: int, weak: bool = False, plinth: bool = False
) -> StackReport:
    rows = [("step", 14, 20.0, (0, 0))]
    if plinth:
        rows.insert(0, ("plinth", 1, 0.0, (0, 0)))
    stack = replace(make.stack("s", *rows), brace=BracePlan(run, drop, under, weak, make.here))
    (made,) = assembled(make.design(stacks=(stack,)), stair_layer(), make.disc()).stacks
    return made


def test_a_knee_stands_in_the_middle_of_what_the_step_leaves_free(make: SimpleNamespace) -> None:
    """Step k spans from 20·(k - 1)° to 20·(k + 1)°, of which the step below covers all but the last 20°."""
    found = report(make, 40.0, 30.0, 8, 14)
    for knee, step in zip(found.knees, (8, 14), strict=True):
        assert not knee.blocked
        assert knee.heading % 360.0 == pytest.approx((20.0 * step + 10.0) % 360.0, abs=1.5)
        assert hypot(*knee.at) == pytest.approx(30.0, abs=0.01)
        assert knee.top == 5.0 * (step - 1)
        plan = knee.in_plan(40.0, 5.0)
        assert plan.area == pytest.approx(200.0)
        for k, layer in enumerate(found.stack.layers):
            share = shapely.intersection(plan, found.plan.placed[k]).area / plan.area
            if k == knee.layer:
                assert share == pytest.approx(1.0, abs=1e-3)
            elif knee.top - 30.0 < layer.bottom < knee.top:
                assert share == pytest.approx(0.0, abs=1e-3)


def test_a_knee_that_is_too_long_says_what_fits(make: SimpleNamespace) -> None:
    """From the core at 30 mm to the rim at 92 mm: 61.97 mm with 5 mm of board."""
    (knee,) = report(make, 70.0, 30.0, 10).knees
    assert knee.blocked and knee.fits == 61.5


def test_under_all_steps_those_have_none_whose_knee_would_stand_in_the_plinth(make: SimpleNamespace) -> None:
    found = report(make, 40.0, 30.0, plinth=True)
    assert found.braced == tuple(range(7, 15))  # the first step lies 5 mm up, on the plinth; the seventh 35 mm
    (named,) = report(make, 40.0, 30.0, 6, plinth=True).knees
    assert named.blocked and named.fits == -1.0  # who names it is told


def test_a_step_a_turn_below_stands_in_the_way(make: SimpleNamespace) -> None:
    stack = make.stack("s", ("step", 24, 20.0, (0, 0)))
    stack = replace(stack, brace=BracePlan(40.0, 84.0, (20,), False, make.here))
    (made,) = assembled(make.design(stacks=(stack,)), stair_layer()).stacks
    assert made.knees[0].blocked  # step 3 lies under step 20, its top 80 mm below it
    shorter = replace(stack, brace=BracePlan(40.0, 79.0, (20,), False, make.here))
    (made,) = assembled(make.design(stacks=(shorter,)), stair_layer()).stacks
    assert not made.knees[0].blocked


def test_knees_stand_beside_each_other(make: SimpleNamespace) -> None:
    """Of a step as wide as a quarter turn, the braces of two neighbours would share a place; none does."""
    stack = make.stack("s", ("step", 6, 2.0, (0, 0)))
    stack = replace(stack, brace=BracePlan(40.0, 10.0, (), False, make.here))
    (made,) = assembled(make.design(stacks=(stack,)), stair_layer(sweep=90.0)).stacks
    standing = [knee for knee in made.knees if not knee.blocked]
    for a, b in pairwise(standing):
        if abs(a.top - b.top) < 10.0:
            assert shapely.intersection(a.in_plan(40.0, 5.0), b.in_plan(40.0, 5.0)).area < 1.0


def test_a_doubled_step_is_braced_under_its_lower_board(make: SimpleNamespace) -> None:
    rows = (("step", 9, 20.0, (0, 0)), ("step", 1, 0.0, (0, 0)))
    stack = replace(make.stack("s", *rows), brace=BracePlan(40.0, 30.0, (9,), False, make.here))
    (made,) = assembled(make.design(stacks=(stack,)), stair_layer()).stacks
    (knee,) = made.knees
    assert (knee.layer, lowest_ply(made.stack, knee.layer), knee.top, knee.blocked) == (9, 8, 40.0, False)
