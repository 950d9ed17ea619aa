from types import SimpleNamespace

import pytest

from publisher.joints.budget.meetings import meetings_of


def test_a_slot_meets_the_board_at_its_thickest_and_thinnest(make: SimpleNamespace) -> None:
    """w 5.3, board 4.8 … 5.2, play 0.5: print scales from 0.981 to 1.000."""
    slot = tuple(reversed(((50.15, 9.85), (44.85, 9.85), (44.85, 30.15), (50.15, 30.15))))
    outer = make.wall("a", 60, 40).outline.outer
    slotted = make.part("a", outer, holes=(make.hole(slot, "right.slot"),), edges=make.wall("a", 60, 40).edges)
    plan = make.panels(
        "x", {"a": "a", "b": "b"}, "a.bottom", make.join("a.right", "b.left", "tab_and_slot", inset=10.0, loosest=0.5)
    )  # fmt: skip
    (met,) = meetings_of(make.assembled(make.design(panels=(plan,)), slotted, make.wall("b", 30, 40)))
    assert (met.part, met.what) == ("a", "slot of part A for the tab of part B")
    assert (met.printed, met.unprinted_least, met.loosest) == pytest.approx((5.3, 5.2, 5.3))
    assert met.loosest is not None
    assert round(met.unprinted_least / met.printed, 3) == 0.981
    assert round(met.loosest / met.printed, 3) == 1.0


def test_a_base_meets_the_tread_and_a_door(make: SimpleNamespace) -> None:
    stair = make.stack("s", ("step", 5, 20.0, (0, 0)))
    needs = (make.need("s.base_that_stands", 25.0), make.need("step.width", 100.0), make.need("s.height", 20.0))
    found = meetings_of(make.assembled(make.design(stacks=(stair,), needs=needs), make.stair_layer()))
    # the height of a stack is counted in boards: it does not shrink with the paper
    assert [m.name for m in found] == ["s.base_that_stands", "step.width"]
    assert found[0].part == "step"
    assert found[0].printed == pytest.approx(27.22, abs=0.01)
    assert (found[0].unprinted_least, found[0].loosest) == (25.0, None)


def test_an_upper_limit_alone_meets_nothing(make: SimpleNamespace) -> None:
    plan = make.design(needs=(make.need("w.width", None, 300.0),))
    assert meetings_of(make.assembled(plan, make.wall("w", 60, 40))) == ()


def test_a_height_that_is_to_agree_meets_what_stands_beside_it(make: SimpleNamespace) -> None:
    """|s·H − layers·t| ≤ allowance, with 0.5 mm: H = 100 allows 0.995 to 1.005."""
    plan = make.panels("box", {"a": "a"}, "a.bottom")
    design = make.design(panels=(plan,), needs=(make.need("box.height", 100.0, 100.0),))
    (met,) = meetings_of(make.assembled(design, make.wall("a", 60, 100)))
    assert (met.name, met.printed, met.unprinted_least, met.loosest) == ("box.height", 100.0, 99.5, 100.5)
    only_least = make.design(panels=(plan,), needs=(make.need("box.height", 90.0),))
    assert meetings_of(make.assembled(only_least, make.wall("a", 60, 100))) == ()


def test_panels_that_cross_meet_each_other_s_board(make: SimpleNamespace) -> None:
    plan, parts = make.crate()
    found = meetings_of(make.assembled(make.design(panels=(plan,)), *parts.values()))
    assert [(m.name, m.what) for m in found] == [
        ("long.lap.short.top", "slot of part L in which part S crosses it"),
        ("short.lap.long.bottom", "slot of part S in which part L crosses it"),
    ]
    assert [(m.printed, m.unprinted_least, m.loosest) for m in found] == [pytest.approx((5.3, 5.2, 5.4))] * 2
