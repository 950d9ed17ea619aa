import cmath
from dataclasses import replace
from itertools import pairwise
from math import degrees, hypot, radians
from random import Random
from types import SimpleNamespace

import pytest

from publisher.basics import Pose
from publisher.design import StackPlan
from publisher.geometry import Part, middle_of
from publisher.joints.model import StackLayer
from publisher.joints.stacks.layers import lay_all, shared_name


def test_rows_lie_on_each_other_and_turns_accumulate(make: SimpleNamespace) -> None:
    parts = {"plinth": make.disc(thickness=4.0), "step": make.stair_layer()}
    (stack,), whole = lay_all((make.stack("stair", ("plinth", 1, 0.0, (0, 0)), ("step", 3, 20.0, (0, 0))),), parts)
    assert [(la.part, la.pose.turn, la.bottom, la.number) for la in stack.layers] == [
        ("plinth", 0.0, 0.0, 1),
        ("step", 20.0, 4.0, 2),  # against the one below, also of another row
        ("step", 40.0, 9.0, 3),
        ("step", 60.0, 14.0, 4),
    ]
    assert whole == (stack,)
    assert stack.treads == (1, 2, 3)
    assert stack.loose == (0,)


def test_a_later_row_is_turned_against_what_it_lies_on(make: SimpleNamespace) -> None:
    parts = {"step": make.stair_layer(), "landing": make.disc("landing")}
    plan = make.stack("s", ("step", 3, 20.0, (0, 0)), ("landing", 1, 30.0, (0, 0)), ("step", 1, 0.0, (0, 0)))
    (stack,), _ = lay_all((plan,), parts)
    assert [layer.pose.turn for layer in stack.layers] == [0.0, 20.0, 40.0, 70.0, 70.0]


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
    assert [la.pose.turn for la in stacks[0].layers] == [80.0, 100.0]  # the whole section by 20, and each layer by 20
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


def test_a_disc_stands_on_the_middle_of_a_rectangle(make: SimpleNamespace) -> None:
    """Said of either of the two; the rectangle's origin is its lower left corner, the disc's its axis (flattened, so off by a hair)."""
    parts = {"slab": make.rectangle("slab", 0, 0, 80, 50), "drum": make.disc("drum", 20.0)}
    for own, other in ((True, False), (False, True), (True, True)):
        plan = make.stack("s", ("slab", 1, 0.0, (0, 0)), ("drum", 2, 10.0, (0, 0)))
        rows = (replace(plan.rows[0], centred=own), replace(plan.rows[1], centred=other))
        (stack,), _ = lay_all((replace(plan, rows=rows),), parts)
        slab, drum, upper = (layer.pose for layer in stack.layers)
        assert drum.apply((0, 0)) == pytest.approx(slab.apply((40, 25)), abs=0.01)
        assert upper.apply((0, 0)) == pytest.approx(slab.apply((40, 25)), abs=0.01)


def test_a_centred_section_lies_over_the_middle_of_the_one_below(make: SimpleNamespace) -> None:
    parts = {"slab": make.rectangle("slab", 0, 0, 80, 50), "small": make.rectangle("small", 0, 0, 20, 10)}
    low, top = (
        make.stack("s_low", ("slab", 1, 0.0, (0, 0))),
        make.stack("s_top", ("small", 1, 45.0, (3, 0)), on="s_low"),
    )
    top = replace(top, rows=(replace(top.rows[0], centred=True),))
    (_, stack), _ = lay_all((low, top), parts)
    assert stack.layers[0].pose.apply((10, 5)) == pytest.approx((43, 25))
    assert stack.layers[0].pose.turn == 45.0


def random_stack(make: SimpleNamespace, rng: Random) -> tuple[tuple[StackPlan, ...], dict[str, Part]]:
    """A stack of a few rows with a section on it; every row turned, shifted or centred by chance."""
    parts = {
        "slab": make.rectangle("slab", rng.uniform(-9, 9), rng.uniform(-9, 9), rng.uniform(20, 80), rng.uniform(20, 80)),
        "drum": make.disc("drum", 20.0, sagitta=0.5),
        "kite": make.polygon("kite", [(rng.uniform(-9, 0), 0), (30, -20), (60, rng.uniform(0, 9)), (30, 40)]),
    }  # fmt: skip

    def plan(name: str, on: str, turn: float) -> StackPlan:
        rows = [
            (rng.choice(list(parts)), rng.randint(1, 3), rng.choice((0.0, rng.uniform(-90, 90))), (rng.uniform(-9, 9), 2.0))
            for _ in range(rng.randint(1, 4))
        ]  # fmt: skip
        made: StackPlan = make.stack(name, *rows, on=on, turn=turn)
        return replace(made, rows=tuple(replace(row, centred=rng.random() < 0.4) for row in made.rows))

    return (plan("s_low", "", 0.0), plan("s_top", "s_low", rng.choice((0.0, rng.uniform(-180, 180))))), parts


def misplaced(plans: tuple[StackPlan, ...], parts: dict[str, Part], layers: tuple[StackLayer, ...]) -> float:
    """How far (mm, or degrees) any layer lies from where its row says, by complex numbers from one layer to the next."""
    said = [
        (row, plan.turn * (not i and not copy))
        for plan in plans
        for i, row in enumerate(plan.rows)
        for copy in range(row.count)
    ]
    worst, below_seat = 0.0, 0j
    for k, ((row, more), layer) in enumerate(zip(said, layers, strict=True)):
        own = complex(*middle_of(parts[layer.part])) if row.centred else 0j
        turn = cmath.exp(1j * radians(layer.pose.turn))
        here = complex(layer.pose.x, layer.pose.y) + turn * own
        if k:
            below = layers[k - 1]
            seat = complex(*middle_of(parts[below.part])) if row.centred else below_seat
            before = cmath.exp(1j * radians(below.pose.turn))
            there = complex(below.pose.x, below.pose.y) + before * (seat + complex(*row.shift))
            worst = max(worst, abs(here - there))
            worst = max(worst, abs(degrees(cmath.phase(turn / before / cmath.exp(1j * radians(row.turn + more))))))
        else:
            worst = max(worst, abs(here), abs(degrees(cmath.phase(turn))))
        below_seat = own
    return worst


@pytest.mark.parametrize("seed", range(40))
def test_every_row_of_a_random_stack_is_turned_and_shifted_against_the_one_below(
    make: SimpleNamespace, seed: int
) -> None:
    plans, parts = random_stack(make, Random(seed))
    _, (whole,) = lay_all(plans, parts)
    assert misplaced(plans, parts, whole.layers) < 1e-9
    for k in range(1, len(whole.layers)):  # a layer that keeps the direction or the place of the one below is found
        (row,) = [row for plan in plans for row in plan.rows for _ in range(row.count)][k : k + 1]
        lower, own = (whole.layers[i].pose for i in (k - 1, k))
        for wrong in (Pose(own.x, own.y, lower.turn), Pose(lower.x, lower.y, own.turn)):
            if hypot(own.x - wrong.x, own.y - wrong.y) + abs(own.turn - wrong.turn) > 0.01:
                layers = (*whole.layers[:k], replace(whole.layers[k], pose=wrong), *whole.layers[k + 1 :])
                assert misplaced(plans, parts, layers) > 0.001, row


@pytest.mark.parametrize("seed", range(40))
def test_no_turn_and_no_shift_is_without_effect(make: SimpleNamespace, seed: int) -> None:
    """Take one away anywhere but under the lowest layer, and layers lie otherwise on each other."""
    plans, parts = random_stack(make, Random(seed))

    def between(plans: tuple[StackPlan, ...]) -> list[tuple[float, ...]]:
        _, (whole,) = lay_all(plans, parts)
        found = []
        for lower, upper in pairwise(layer.pose for layer in whole.layers):
            turn = cmath.exp(-1j * radians(lower.turn))
            way = turn * complex(upper.x - lower.x, upper.y - lower.y)
            found.append((way.real, way.imag, (upper.turn - lower.turn) % 360.0))
        return found

    true = between(plans)
    for p, plan in enumerate(plans):
        for r, row in enumerate(plan.rows):
            if p == r == 0 and row.count == 1:
                continue  # the lowest layer of all: it has a finding
            for changed in (replace(row, turn=0.0), replace(row, shift=(0.0, 0.0))):
                rows = (*plan.rows[:r], changed, *plan.rows[r + 1 :])
                other = between((*plans[:p], replace(plan, rows=rows), *plans[p + 1 :]))
                assert (other != true) == (changed != row)
