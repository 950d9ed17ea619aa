"""Layers that hang on each other and on nothing that goes down to the table, against elementary bending by hand."""

from math import inf
from random import Random
from types import SimpleNamespace

import pytest

from publisher.joints.stacks.corbels import hangings_of
from publisher.joints.stacks.facts import report_on
from publisher.joints.stacks.layers import lay_all
from publisher.joints.stacks.plan_geometry import PlanGeometry

LOAD = 0.030 * 9.80665  # N: a figure of 30 g, the lightest
BASE, BOARD = 25.0, 5.0  # mm


def corbel(make: SimpleNamespace, wide: float, deep: float, shift: float, count: int, *, rows: bool) -> SimpleNamespace:
    """Return boards that each reach out over the one below, on a plate: as one row, or each as a row of its own."""
    parts = {
        "plate": make.rectangle("plate", -300, -200, 900, 200),
        "course": make.rectangle("course", 0, 0, wide, deep),
    }
    climb = [("course", 1, 0.0, (shift, 0.0))] * count if rows else [("course", count, 0.0, (shift, 0.0))]
    plan = make.stack("s", ("plate", 1, 0.0, (0, 0)), *climb)
    (stack,), _ = lay_all((plan,), parts)
    report = report_on(stack, parts, {"foam": make.board()}, inf, make.here)
    return SimpleNamespace(stack=stack, plan=PlanGeometry(stack.layers, parts), report=report)


def by_hand(wide: float, deep: float, shift: float, top: int, over: int, count: int) -> tuple[float, float]:
    """Return arm and stress at the rim of course ``over`` under a figure at the bare edge of course ``top``: of the courses over that
    one those that reach back over its rim bend as one board."""
    thick = BOARD * sum(1 for i in range(over + 1, count + 1) if (i - over) * shift < wide - 0.1)
    arm = (top - over) * shift if top == count else (top + 1 - over) * shift - wide
    return arm, 6.0 * LOAD * arm / (min(deep, BASE + arm) * thick**2)


@pytest.mark.parametrize("seed", range(12))
def test_courses_of_a_corbel_bend_as_by_hand(make: SimpleNamespace, seed: int) -> None:
    dice = Random(seed)
    wide, deep, count = dice.uniform(30, 60), dice.uniform(20, 90), dice.randint(3, 6)
    shift = dice.uniform(0.35, 0.9) * wide
    made = corbel(make, wide, deep, shift, count, rows=False)
    for top in range(2, count + 1):
        found = {one.over: one for one in hangings_of(made.stack, made.plan, top, BASE)}
        for over in range(1, top):
            arm, wanted = by_hand(wide, deep, shift, top, over, count)
            assert (over in found) is (arm >= 1.0) or arm == pytest.approx(1.0, abs=0.01)
            if over in found:
                assert found[over].arm == pytest.approx(arm, abs=0.01)
                assert found[over].stress(LOAD) == pytest.approx(wanted, rel=5e-3), (top, over)


def test_the_last_course_is_judged_though_nothing_under_it_stands_on_the_table(make: SimpleNamespace) -> None:
    """Four courses 47 wide, each 25 farther out: over the first the last reaches 75, on one board 63.5 deep."""
    for rows in (False, True):
        made = corbel(make, 47.0, 63.5, 25.0, 4, rows=rows)
        root = next(root for root in made.report.roots if root.layer == 4)
        assert (root.arm, root.plies, root.deck) == (pytest.approx(75.0), 1, False)
        assert root.stress == pytest.approx(6 * LOAD * 75 / (63.5 * 25), rel=5e-3)


def test_a_sliver_of_core_is_no_root(make: SimpleNamespace) -> None:
    """Three courses of which the third lies over the first by 1 mm: the second carries it, not that millimetre."""
    made = corbel(make, 47.0, 60.0, 23.0, 3, rows=False)
    assert made.report.grounds[-1].area > 50.0
    root = next(root for root in made.report.roots if root.layer == 3)
    hanging = max(hangings_of(made.stack, made.plan, 3, BASE), key=lambda one: one.stress(LOAD))
    assert root.stress == pytest.approx(hanging.stress(LOAD)) and root.width > 40.0


def test_what_lies_loose_hangs_on_nothing(make: SimpleNamespace) -> None:
    parts = {"plate": make.rectangle("plate", -300, -200, 900, 200), "course": make.rectangle("course", 0, 0, 47, 60)}
    low = make.stack("s_low", ("plate", 1, 0.0, (0, 0)), ("course", 2, 0.0, (25.0, 0.0)))
    top = make.stack("s_top", ("course", 2, 0.0, (25.0, 0.0)), on="s_low", loose=True)
    _, (whole,) = lay_all((low, top), parts)
    plan = PlanGeometry(whole.layers, parts)
    last = len(whole.layers) - 1
    over = [one.over for one in hangings_of(whole, plan, last, BASE)]
    assert over and min(over) >= min(whole.loose) - 1
