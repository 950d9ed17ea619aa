"""Rows, and jumps of what is no count, between two neighbouring values."""

from collections.abc import Callable
from pathlib import Path

from publisher.sweep.halving import between, look
from tests.sweep.test_counting import trial_of


def test_a_need_jumps_where_arithmetic_says_and_rows_stand_beside_what_may_be_best(squares: Path) -> None:
    trial = trial_of(squares, "radius = 71 mm to 73 mm")
    low, high = look(trial, (71.0,)), look(trial, (73.0,))
    found = between(trial, low, high)
    assert [(j.kind, j.last, j.first, j.before, j.after) for j in found.jumps] == [
        ("need", 71.99, 72.0, "missed", "met")
    ]
    assert [row.values for row in found.rows] == [(71.99,), (72.0,), (72.49,), (72.5,)]


def test_between_two_values_of_the_same_pages_they_are_not_counted_again(squares: Path) -> None:
    trial = trial_of(squares, "radius = 71 mm to 73 mm")
    sides = (look(trial, (71.0,)), look(trial, (73.0,)))
    middle = look(trial, (72.0,), sides)
    assert middle.row.papers is sides[0].row.papers
    assert middle.row == look(trial, (72.0,)).row


def test_what_cannot_be_built_jumps_to_no(design: Callable[..., Path]) -> None:
    trial = trial_of(design(("sheets: [20 x 30 in]", "sheets: [100 x 100 mm]")), "radius = 45 mm to 55 mm")
    low, high = look(trial, (45.0,)), look(trial, (55.0,))
    (jump,) = [j for j in between(trial, low, high).jumps if j.kind == "built"]
    assert (jump.last, jump.first, jump.before, jump.after) == (50.0, 50.01, "yes", "no")
    assert not low.alike(high) and low.alike(low)
