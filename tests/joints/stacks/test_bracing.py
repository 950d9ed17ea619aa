"""Root stress by hand, the weakest step, knee braces."""

from dataclasses import replace
from math import inf, radians
from types import SimpleNamespace

import numpy as np
import pytest

from publisher.design import BracePlan, StackPlan
from publisher.joints.bending import BENDING_STRENGTH, strength_of
from publisher.joints.stacks.bracing import (
    Root,
    brace_length,
    propped,
    weakest,
)
from publisher.joints.stacks.facts import StackReport, facts_of, report_on
from publisher.joints.stacks.layers import lay_all

LOAD = 0.030 * 9.80665  # N: a figure of 30 g, the lightest


def report(make: SimpleNamespace, plan: StackPlan, *parts: object) -> tuple[StackReport, dict[str, float]]:
    by_id, boards = {p.id: p for p in parts}, {"foam": make.board()}  # type: ignore[attr-defined]
    (stack,), _ = lay_all((plan,), by_id)  # type: ignore[arg-type]
    found = report_on(stack, by_id, boards, inf, make.here)  # type: ignore[arg-type]
    return found, {f.name.removeprefix("s."): f.value for f in facts_of(found, by_id, boards)}  # type: ignore[arg-type]


def with_brace(plan: StackPlan, brace: BracePlan) -> StackPlan:
    return StackPlan(plan.name, plan.rows, plan.on, plan.turn, plan.loose, plan.place, brace)


def test_a_cantilever_by_hand(make: SimpleNamespace) -> None:
    """A board 40 wide sticks out 60 over a block: M = F·60 = 17.65 N·mm, w·h²/6 = 40·25/6 = 166.7 mm³: 0.1059 MPa."""
    plan = make.stack("s", ("block", 1, 0.0, (0, 0)), ("beam", 1, 0.0, (0, 0)))
    found, facts = report(make, plan, make.rectangle("block", 0, 0, 50, 40), make.rectangle("beam", 0, 0, 110, 40))
    (root,) = found.roots
    assert (root.layer, root.plies) == (1, 1)
    assert root.arm == pytest.approx(60.0)
    assert root.width == pytest.approx(40.0, abs=0.05)
    assert root.stress == pytest.approx(6 * LOAD * 60 / (40 * 25), rel=2e-3)
    assert facts["strength_factor"] == pytest.approx(0.345 / 0.10591, rel=3e-3)


def test_two_boards_glued_at_the_root_are_four_times_as_strong(make: SimpleNamespace) -> None:
    plan = make.stack("s", ("block", 1, 0.0, (0, 0)), ("beam", 2, 0.0, (0, 0)))
    found, _ = report(make, plan, make.rectangle("block", 0, 0, 50, 40), make.rectangle("beam", 0, 0, 110, 40))
    (root,) = found.roots  # the lower beam is wholly covered: nobody stands on it
    assert (root.plies, root.thick) == (2, 10.0)
    assert root.stress == pytest.approx(6 * LOAD * 60 / (40 * 100), rel=2e-3)


def test_loose_boards_do_not_help_each_other(make: SimpleNamespace) -> None:
    block, beam = make.rectangle("block", 0, 0, 50, 40), make.rectangle("beam", 0, 0, 110, 40)
    low = make.stack("s_low", ("block", 1, 0.0, (0, 0)), ("beam", 1, 0.0, (0, 0)))
    top = make.stack("s_top", ("beam", 1, 0.0, (0, 0)), on="s_low", loose=True)
    by_id, boards = {"block": block, "beam": beam}, {"foam": make.board()}
    _, (whole,) = lay_all((low, top), by_id)
    (root,) = report_on(whole, by_id, boards, inf, make.here).roots
    assert (root.layer, root.plies) == (2, 1)


def test_the_top_step_of_a_spiral_is_the_weak_point(make: SimpleNamespace) -> None:
    """Fact of the trade (common practice, no source): all other steps are glued to the one above, the top one is one board."""
    _, facts = report(make, make.stack("s", ("step", 14, 20.0, (0, 0))), make.stair_layer())
    assert facts["weakest_step"] == facts["steps"] == 14
    root = 30 * radians(40)  # the root's width round the core
    assert facts["root_stress"] == pytest.approx(6 * LOAD * 62 / (root * 25), rel=5e-3)
    assert facts["layer_10.root_stress"] == pytest.approx(facts["root_stress"] / 4, rel=2e-3)
    assert "layer_1.root_stress" not in facts  # it stands on the table


def test_steps_of_three_turns_are_three_boards_thick(make: SimpleNamespace) -> None:
    found, _ = report(make, make.stack("s", ("step", 10, 15.0, (0, 0))), make.stair_layer(sweep=45))
    assert [root.plies for root in found.roots[-4:]] == [3, 3, 2, 1]  # the last but one lacks the second board above it


def test_braces_stand_under_the_steps_that_are_named_while_there_is_height_for_the_knee(make: SimpleNamespace) -> None:
    steps = make.stack("s", ("step", 14, 20.0, (0, 0)))
    found, facts = report(
        make, with_brace(steps, BracePlan(40.0, 30.0, (5, 8, 14), False, make.here)), make.stair_layer()
    )
    # step 5 lies 20 mm up, less than the drop of 30
    assert found.braced == (7, 13)
    assert (facts["braces"], facts["brace_length"]) == (2, 50.0)  # √(40² + 30²)
    assert brace_length(BracePlan(3.0, 4.0, (), False, make.here)) == 5.0
    top = found.roots[-1]
    assert top.braced
    assert top.arm == pytest.approx(62 - 40, abs=0.05)
    assert facts["weakest_step"] == 14
    assert facts["root_stress"] == pytest.approx(6 * LOAD * 22 / (30 * radians(40) * 25), rel=5e-3)


def test_braces_under_all_steps_stand_where_there_is_height_for_the_knee(make: SimpleNamespace) -> None:
    plan = with_brace(make.stack("s", ("step", 14, 20.0, (0, 0))), BracePlan(40.0, 30.0, (), False, make.here))
    assert report(make, plan, make.stair_layer())[0].braced == tuple(range(6, 14))  # from step 7, which lies 30 mm up


def test_braces_under_weak_steps_stand_under_those_that_break_without_one(make: SimpleNamespace) -> None:
    plan = with_brace(make.stack("s", ("step", 8, 20.0, (0, 0))), BracePlan(60.0, 20.0, (), True, make.here))
    found, facts = report(make, plan, make.stair_layer(reach=142))
    assert found.braced == (7,)  # the top step, the only one that is one board thick
    assert facts["strength_factor"] > 1.0
    assert report(make, plan, make.stair_layer(reach=92))[0].braced == ()


@pytest.mark.parametrize("turn", [20.0, -16.3636])
def test_no_hair_of_two_steps_carries_a_third(make: SimpleNamespace, turn: float) -> None:
    """Each step spans two turns: the edges of the first and of the third lie over each other, and nothing more."""
    rows = ("plinth", 1, 0.0, (0, 0)), ("step", 9, turn, (0, 0))
    parts = make.disc("plinth", 87.5), make.stair_layer(46.1, 87.5, 2 * abs(turn))
    found, _ = report(make, make.stack("s", *rows), *parts)
    assert {round(root.arm, 1) for root in found.roots} == {41.4}


def test_braces_weigh_with_the_steps_that_they_stand_under(make: SimpleNamespace) -> None:
    """One brace, on the side to which the beam hangs over: the balance by moments of three boards."""
    knee = make.polygon("knee", [(0, 0), (40, 30), (0, 30)])
    rows = ("base", 8, 0.0, (0, 0)), ("beam", 1, 0.0, (0, 0))
    parts = make.rectangle("base", 0, 0, 60, 80), make.rectangle("beam", 0, 0, 110, 80)
    brace = BracePlan(40.0, 30.0, (), False, make.here, part="knee")
    found, facts = report(make, with_brace(make.stack("s", *rows), brace), *parts, knee)
    assert [one.layer for one in found.knees] == [8] and not found.knees[0].blocked
    areas, middles = np.array([8 * 4800.0, 8800.0, 600.0]), np.array([30.0, 55.0, 60.0 + 40.0 / 3.0])
    assert facts["mass"] == pytest.approx(areas.sum() * 150e-6)
    assert facts["balance_margin"] == pytest.approx(60.0 - (areas * middles).sum() / areas.sum())


def test_a_section_counts_no_braces_of_its_own(make: SimpleNamespace) -> None:
    brace = BracePlan(40.0, 30.0, (9,), False, make.here)
    low = with_brace(make.stack("s_low", ("step", 6, 20.0, (0, 0))), brace)
    top = with_brace(make.stack("s_top", ("step", 4, 20.0, (0, 0)), on="s_low"), brace)
    sections, (whole,) = lay_all((low, top), {"step": make.stair_layer()})
    assert [one.brace for one in sections] == [None, None]
    assert report_on(whole, {"step": make.stair_layer()}, {"foam": make.board()}, inf, make.here).braced == (8,)


def test_a_hill_has_no_weak_step(make: SimpleNamespace) -> None:
    plan = make.stack("s", ("a", 1, 0.0, (0, 0)), ("b", 1, 0.0, (0, 0)))
    found, facts = report(make, plan, make.disc("a", 80), make.disc("b", 60))
    assert found.roots == ()
    assert weakest(found.roots) is None
    assert "weakest_step" not in facts


def test_a_board_says_its_strength_or_the_assumption_holds(make: SimpleNamespace) -> None:
    assert strength_of(make.board()) == BENDING_STRENGTH == 0.345
    assert strength_of(make.board(bending=0.5)) == 0.5


def test_of_equal_stresses_the_highest_is_named() -> None:
    roots = tuple(Root(k, 10.0, 10.0, 1, 5.0, 0.1, False) for k in (3, 4, 5))
    found = weakest(roots)
    assert found is not None
    assert found.layer == 5


def test_a_brace_leaves_the_load_less_room_to_spread_and_reaches_one_side_alone(make: SimpleNamespace) -> None:
    brace = BracePlan(35.0, 30.0, (9,), False, make.here)
    long = Root(3, 60.0, 85.0, 1, 5.0, 0.1, False)
    (near,) = propped((long,), {3}, brace, 25.0)
    assert (near.arm, near.width, near.beside) == (25.0, 50.0, None)
    assert near.stress == pytest.approx(0.1 * 25.0 / 60.0 * 85.0 / 50.0)
    other = replace(long, arm=58.0, stress=0.09)
    (worst,) = propped((replace(long, beside=other),), {3}, brace, 25.0)
    assert (worst.arm, worst.stress, worst.braced) == (58.0, 0.09, True)
    assert propped((long,), (), brace, 25.0) == (long,) == propped((long,), {3}, None, 25.0)
