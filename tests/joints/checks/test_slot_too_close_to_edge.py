from types import SimpleNamespace

import pytest

from publisher.basics import Severity
from publisher.joints.checks.slot_too_close_to_edge import slot_too_close_to_edge


def slotted(make: SimpleNamespace, away: float) -> object:
    right = 60 - away
    slot = tuple(reversed(((right, 10.0), (right - 5.3, 10.0), (right - 5.3, 30.0), (right, 30.0))))
    part = make.polygon("a", [(0, 0), (60, 0), (60, 40), (0, 40)])
    return make.part("a", part.outline.outer, holes=(make.hole(slot, "right.slot"),))


@pytest.mark.keeps("joints/slot-too-close-to-edge")
def test_a_slot_one_board_from_the_edge_passes(make: SimpleNamespace) -> None:
    outcome = slot_too_close_to_edge.run(make.assembled(make.design(), slotted(make, 5.0)), slot_too_close_to_edge)
    assert (outcome.looked_at, outcome.findings) == (1, ())


@pytest.mark.breaks("joints/slot-too-close-to-edge")
def test_a_slot_nearer_than_the_board_is_thick_is_found(make: SimpleNamespace) -> None:
    (found,) = slot_too_close_to_edge.run(
        make.assembled(make.design(), slotted(make, 4.0)), slot_too_close_to_edge
    ).findings
    assert found.severity is Severity.WARNING
    assert "leaves 4.00 mm" in found.message
    assert (found.value, found.limit) == (4.0, 5.0)


def test_it_says_how_many_tabs_fit(make: SimpleNamespace) -> None:
    """Six tabs on 60 mm: slots of 5.3 mm begin 2.35 mm from the ends. With n tabs it is 60/4n − 0.15 mm: two leave 7.35, three 4.85."""
    plain = make.wall("front", 120, 60)
    slots = [(y, y + 5.3) for y in (2.35 + 10.0 * i for i in range(6))]
    holes = tuple(make.hole(((104.7, a), (104.7, b), (110.15, b), (110.15, a)), "right.slot") for a, b in slots)
    front = make.part("front", plain.outline.outer, holes=holes, edges=plain.edges)
    plan = make.panels(
        "corner", {"front": "front", "side": "side"}, "front.bottom",
        make.join("front.right", "side.left", "tab_and_slot", inset=10.0, tabs=6),
    )  # fmt: skip
    subject = make.assembled(make.design(panels=(plan,)), front, make.wall("side", 80, 60))
    (found,) = slot_too_close_to_edge.run(subject, slot_too_close_to_edge).findings
    assert found.value == pytest.approx(2.35)
    assert "say tabs: 2 (that many fit between front.right and side.left)" in found.hint
