from types import SimpleNamespace

import pytest

from publisher.basics import Severity
from publisher.joints.checks.ring_does_not_close import CHECK


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
