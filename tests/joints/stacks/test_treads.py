from math import inf
from types import SimpleNamespace

import pytest

from publisher.joints.stacks.layers import lay_all
from publisher.joints.stacks.plan_geometry import PlanGeometry
from publisher.joints.stacks.treads import Tread, treads_of


def treads(make: SimpleNamespace, plan: object, *parts: object, height: float = inf) -> tuple[Tread, ...]:
    by_id = {p.id: p for p in parts}  # type: ignore[attr-defined]
    (stack,), _ = lay_all((plan,), by_id)  # type: ignore[arg-type]
    return treads_of(stack, PlanGeometry(stack.layers, by_id), height)


def test_a_straight_stair_has_treads_as_deep_as_its_shift(make: SimpleNamespace) -> None:
    found = treads(make, make.stack("s", ("a", 4, 0.0, (30, 0))), make.rectangle("a", 0, 0, 90, 50))
    assert [t.base_stands for t in found] == pytest.approx([30, 30, 30, 50], abs=0.003)
    assert all(t.headroom == inf for t in found)
    # a base may hang over the front edge: its centre 2 mm inside, 28 mm from the riser
    assert found[0].base_holds == pytest.approx(56, abs=0.01)
    assert found[3].base_holds == inf


def test_figures_pass_under_what_is_high_enough(make: SimpleNamespace) -> None:
    step, lid = make.rectangle("a", 0, 0, 90, 50), make.rectangle("lid", -40, 0, 90, 50)
    plan = make.stack("s", ("a", 4, 0.0, (30, 0)), ("lid", 1, 0.0, (0, 0)))
    low = treads(make, plan, step, lid)
    assert low[1].base_stands == pytest.approx(20, abs=0.003)  # the lid's end covers the last 10 mm: 50 … 30
    assert low[1].headroom == 10.0
    assert low[1].covered_by == 4
    high = treads(make, plan, step, lid, height=10.0)
    assert high[1].base_stands == pytest.approx(30, abs=0.003)


def test_a_layer_wholly_under_the_next_is_no_tread(make: SimpleNamespace) -> None:
    pier = make.stack("s", ("a", 3, 0.0, (0, 0)))
    found = treads(make, pier, make.rectangle("a", 0, 0, 40, 40))
    assert [t.layer for t in found] == [2]


def test_terraces_of_a_hill(make: SimpleNamespace) -> None:
    parts = [make.rectangle(f"c{i}", 15 * i, 15 * i, 200 - 15 * i, 150 - 15 * i) for i in range(3)]
    found = treads(make, make.stack("hill", *[(p.id, 1, 0.0, (0, 0)) for p in parts]), *parts)
    assert [t.layer for t in found] == [0, 1, 2]
    assert [t.base_stands for t in found[:2]] == pytest.approx([2 * 15 / (1 + 0.5**0.5) * 1.0, 17.574], abs=0.01)
    assert found[0].base_holds == pytest.approx(26 * 2**0.5, abs=0.02)  # in a corner: (15 − 2)·√2 from the next layer


def test_the_line_up_notch_takes_no_room_from_a_figure(make: SimpleNamespace) -> None:
    plan = make.stack("s", ("step", 4, 20.0, (0, 0)))
    plain = treads(make, plan, make.stair_layer())
    notched = treads(make, plan, make.stair_layer(notch_at=10.0))
    assert [t.base_stands for t in notched] == pytest.approx([t.base_stands for t in plain], abs=0.002)
