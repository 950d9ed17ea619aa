from types import SimpleNamespace

import pytest

from publisher.basics import Severity
from publisher.joints.checks.ring_does_not_close import CHECK, triangle


def box(make: SimpleNamespace, last: str, corner: float = 90.0) -> object:
    return make.panels(
        "b", {"f": "w", "r": "s", "k": last, "l": "s"}, "f.bottom",
        make.join("f.right", "r.left"), make.join("r.right", "k.left"), make.join("k.right", "l.left"),
        make.join("l.right", "f.left", corner=corner),
    )  # fmt: skip


@pytest.mark.keeps("joints/ring-does-not-close")
def test_a_closed_box_passes(make: SimpleNamespace) -> None:
    subject = make.assembled(make.design(panels=(box(make, "w"),)), make.wall("w", 60, 40), make.wall("s", 30, 40))
    outcome = CHECK.run(subject, CHECK)
    assert (outcome.looked_at, outcome.findings) == (4, ())


@pytest.mark.breaks("joints/ring-does-not-close")
def test_edges_that_do_not_sum_to_zero(make: SimpleNamespace) -> None:
    parts = make.wall("w", 60, 40), make.wall("s", 30, 40), make.wall("longer", 62, 40)
    (found,) = CHECK.run(make.assembled(make.design(panels=(box(make, "longer"),)), *parts), CHECK).findings
    assert found.severity is Severity.ERROR
    assert "l.right and f.left are 2.00 mm apart" in found.message


def test_turns_that_do_not_sum_to_a_full_turn(make: SimpleNamespace) -> None:
    subject = make.assembled(
        make.design(panels=(box(make, "w", 91.0),)), make.wall("w", 60, 40), make.wall("s", 30, 40)
    )
    (found,) = CHECK.run(subject, CHECK).findings
    assert "stand at 90.00° and not at the 91.00°" in found.message


def test_a_crate_closes_and_one_with_a_slot_a_millimetre_off_does_not(make: SimpleNamespace) -> None:
    for second, messages in ((70.0, []), (71.0, ["l2.top and s2.bottom are 1.00 mm apart"])):
        plan, parts = make.crate(second)
        outcome = CHECK.run(make.assembled(make.design(panels=(plan,)), *parts.values()), CHECK)
        assert outcome.looked_at == 4
        assert [said for f, said in zip(outcome.findings, messages, strict=True) if said not in f.message] == []


def test_the_angles_that_close_three_panels_are_said(make: SimpleNamespace) -> None:
    """Sides of 30, 40 and 50 mm: a right angle between the shorter two, and atan(4/3) = 53.13° and 36.87°."""
    plan = make.panels(
        "t", {"a": "w30", "b": "w40", "c": "w50"}, "a.bottom",
        make.join("a.right", "b.left", corner=80.0), make.join("b.right", "c.left", corner=40.0),
        make.join("c.right", "a.left", corner=60.0),
    )  # fmt: skip
    walls = [make.wall(f"w{size}", size, 40) for size in (30, 40, 50)]
    (found,) = CHECK.run(make.assembled(make.design(panels=(plan,)), *walls), CHECK).findings
    assert "a.right – b.left 90.00°, b.right – c.left 36.87°, c.right – a.left 53.13°" in found.hint
    assert triangle(30, 40, 80) is None
