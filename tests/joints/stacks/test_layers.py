from types import SimpleNamespace

import pytest

from publisher.joints.stacks.layers import lay_all, shared_name


def test_rows_lie_on_each_other_and_turns_accumulate(make: SimpleNamespace) -> None:
    parts = {"plinth": make.disc(thickness=4.0), "step": make.stair_layer()}
    (stack,), whole = lay_all((make.stack("stair", ("plinth", 1, 0.0, (0, 0)), ("step", 3, 20.0, (0, 0))),), parts)
    assert [(la.part, la.pose.turn, la.bottom, la.number) for la in stack.layers] == [
        ("plinth", 0.0, 0.0, 1),
        ("step", 0.0, 4.0, 2),  # not turned against a layer of another row
        ("step", 20.0, 9.0, 3),
        ("step", 40.0, 14.0, 4),
    ]
    assert whole == (stack,)
    assert stack.treads == (1, 2, 3)
    assert stack.loose == (0,)


def test_a_later_row_keeps_the_direction_of_what_it_lies_on(make: SimpleNamespace) -> None:
    parts = {"step": make.stair_layer(), "landing": make.disc("landing")}
    plan = make.stack("s", ("step", 3, 20.0, (0, 0)), ("landing", 1, 20.0, (0, 0)))
    (stack,), _ = lay_all((plan,), parts)
    assert stack.layers[-1].pose.turn == 40.0


def test_shifts_are_in_the_frame_of_the_layer_below(make: SimpleNamespace) -> None:
    parts = {"a": make.rectangle("a", 0, 0, 40, 20)}
    (straight,), _ = lay_all((make.stack("s", ("a", 3, 0.0, (10, 2))),), parts)
    assert (straight.layers[2].pose.x, straight.layers[2].pose.y) == (20, 4)
    (bent,), _ = lay_all((make.stack("s", ("a", 3, 90.0, (10, 0))),), parts)
    assert (bent.layers[2].pose.x, bent.layers[2].pose.y) == pytest.approx((10, 10))


def test_sections_stand_on_the_top_layer_of_the_one_below(make: SimpleNamespace) -> None:
    parts = {"step": make.stair_layer()}
    lower = make.stack("stair_lower", ("step", 3, 20.0, (0, 0)))
    upper = make.stack("stair_upper", ("step", 2, 20.0, (0, 0)), on="stair_lower", turn=20.0, loose=True)
    stacks, whole = lay_all((upper, lower), parts)
    assert [s.name for s in stacks] == ["stair_upper", "stair_lower"]
    assert [la.pose.turn for la in stacks[0].layers] == [60.0, 80.0]
    assert stacks[0].layers[0].bottom == 15.0
    (stair,) = whole
    assert stair.name == "stair"
    assert [la.number for la in stair.layers] == [1, 2, 3, 4, 5]
    assert stair.loose == (0, 3)


def test_a_row_without_its_part_is_left_out(make: SimpleNamespace) -> None:
    plan = make.stack("s", ("gone", 2, 0.0, (0, 0)), ("step", 2, 20.0, (0, 0)))
    (stack,), _ = lay_all((plan,), {"step": make.stair_layer()})
    assert [la.part for la in stack.layers] == ["step", "step"]


def test_sections_are_named_by_what_they_share() -> None:
    assert shared_name(["stair_lower", "stair_upper"]) == "stair"
    assert shared_name(["stair", "stair_upper"]) == "stair"
    assert shared_name(["a", "b"]) == "a"
