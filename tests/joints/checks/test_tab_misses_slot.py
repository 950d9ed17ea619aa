from types import SimpleNamespace

import pytest

from publisher.basics import Severity
from publisher.joints.checks.tab_misses_slot import tab_misses_slot


def joined(make: SimpleNamespace, hole: float) -> object:
    """A wall 60 × 40 with one slot for a panel 10 mm from its right end, which has one tab 20 long, ``hole`` mm from below."""
    slot = ((50.15, hole), (44.85, hole), (44.85, hole + 20.3), (50.15, hole + 20.3))
    slotted = make.polygon(
        "a", [(0, 0), (60, 0), (60, 40), (0, 40)], ("bottom", "right", "top", "left"), holes=(slot[::-1],)
    )
    outline = [(5, 0), (50, 0), (50, 40), (5, 40), (5, 30), (0, 30), (0, 10), (5, 10)]
    tabbed = make.part("b", make.polygon("b", outline).outline.outer, edges=make.wall("b", 50, 40).edges)
    plan = make.panels(
        "x", {"a": "a", "b": "b"}, "a.bottom", make.join("a.right", "b.left", "tab_and_slot", inset=10.0, tabs=1)
    )
    return make.assembled(make.design(panels=(plan,)), slotted, tabbed)


@pytest.mark.keeps("joints/tab-misses-slot")
def test_a_tab_in_its_slot_passes(make: SimpleNamespace) -> None:
    outcome = tab_misses_slot.run(joined(make, 9.85), tab_misses_slot)
    assert (outcome.looked_at, outcome.findings) == (1, ())


@pytest.mark.breaks("joints/tab-misses-slot")
def test_a_slot_three_millimetres_off_is_found(make: SimpleNamespace) -> None:
    (found,) = tab_misses_slot.run(joined(make, 13.0), tab_misses_slot).findings
    assert found.severity is Severity.ERROR
    assert "the tabs of b.left do not go into the slots of a.right" in found.message
    assert found.value is not None
    assert 2.5 < found.value < 3.5
