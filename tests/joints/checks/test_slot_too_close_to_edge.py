from types import SimpleNamespace

import pytest

from publisher.basics import Severity
from publisher.joints.checks.slot_too_close_to_edge import CHECK


def slotted(make: SimpleNamespace, away: float) -> object:
    right = 60 - away
    slot = tuple(reversed(((right, 10.0), (right - 5.3, 10.0), (right - 5.3, 30.0), (right, 30.0))))
    part = make.polygon("a", [(0, 0), (60, 0), (60, 40), (0, 40)])
    return make.part("a", part.outline.outer, holes=(make.hole(slot, "right.slot"),))


@pytest.mark.keeps("joints/slot-too-close-to-edge")
def test_a_slot_one_board_from_the_edge_passes(make: SimpleNamespace) -> None:
    outcome = CHECK.run(make.assembled(make.design(), slotted(make, 5.0)), CHECK)
    assert (outcome.looked_at, outcome.findings) == (1, ())


@pytest.mark.breaks("joints/slot-too-close-to-edge")
def test_a_slot_nearer_than_the_board_is_thick_is_found(make: SimpleNamespace) -> None:
    (found,) = CHECK.run(make.assembled(make.design(), slotted(make, 4.0)), CHECK).findings
    assert found.severity is Severity.WARNING
    assert "leaves 4.00 mm" in found.message
    assert (found.value, found.limit) == (4.0, 5.0)
