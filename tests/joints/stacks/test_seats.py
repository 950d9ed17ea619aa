from types import SimpleNamespace

import pytest

from publisher.joints.stacks.layers import lay_all
from publisher.joints.stacks.seats import seats_of


def test_a_section_says_where_it_sits_on_the_one_below(make: SimpleNamespace) -> None:
    """Six layers of 20° below: the top one lies at 100°; the upper section is turned by 30° and its
    layer by its own 20° more; it sits 30 mm up."""
    low = make.stack("s_low", ("step", 6, 20.0, (0, 0)))
    top = make.stack("s_top", ("step", 3, 20.0, (0, 0)), on="s_low", turn=30.0, loose=True)
    _, (whole,) = lay_all((low, top), {"step": make.stair_layer()})
    found = {f.name: f.value for f in seats_of(whole, {})}
    assert found == pytest.approx(
        {"s_top.underside": 30.0, "s_top.seat_layer": 6, "s_top.seat_turn": 50.0, "s_top.seat_across": 0.0, "s_top.seat_up": 0.0},
        abs=1e-9,
    )  # fmt: skip


def test_shifts_are_in_the_directions_of_the_layer_below(make: SimpleNamespace) -> None:
    low = make.stack("s_low", ("a", 2, 90.0, (0, 0)))
    top = make.stack("s_top", ("a", 1, 0.0, (0, 0)), on="s_low")
    _, (whole,) = lay_all((low, top), {"a": make.rectangle("a", 0, 0, 50, 20)})
    shifted = whole.layers[-1].__class__("a", whole.layers[-1].pose.__class__(3.0, 4.0, 90.0), 10.0, 5.0, "s_top", 3)
    moved = whole.__class__("s", (*whole.layers[:-1], shifted), whole.rows, whole.loose)
    found = {f.name: f.value for f in seats_of(moved, {})}
    assert (found["s_top.seat_across"], found["s_top.seat_up"]) == pytest.approx(
        (4.0, -3.0)
    )  # the lower one lies at 90°


def test_a_stack_without_sections_has_no_seats(make: SimpleNamespace) -> None:
    _, (whole,) = lay_all((make.stack("s", ("step", 6, 20.0, (0, 0))),), {"step": make.stair_layer()})
    assert seats_of(whole, {}) == []
