from dataclasses import replace
from types import SimpleNamespace

import pytest

from publisher.joints.checks.traced_without_allowance import traced_without_allowance


def slotted(make: SimpleNamespace, use: str, allowance: float) -> object:
    """A wall with a slot of 5.3 × 20 mm."""
    slot = make.hole(((25.3, 9.0), (20.0, 9.0), (20.0, 29.0), (25.3, 29.0)), "right.slot")
    part = replace(make.part("w", make.wall("w", 60, 40).outline.outer, holes=(slot,)), trace_allowance=allowance)
    return make.assembled(replace(make.design(), use=use), part)


@pytest.mark.keeps("joints/traced-without-allowance")
def test_a_template_that_allows_for_the_pencil_passes(make: SimpleNamespace) -> None:
    outcome = traced_without_allowance.run(slotted(make, "trace", 0.4), traced_without_allowance)
    assert (outcome.looked_at, outcome.findings) == (1, ())


@pytest.mark.breaks("joints/traced-without-allowance")
def test_a_slot_of_5_3_traced_comes_out_as_4_5(make: SimpleNamespace) -> None:
    """0.3 to 0.5 mm (common practice, no source)."""
    (found,) = traced_without_allowance.run(slotted(make, "trace", 0.0), traced_without_allowance).findings
    assert "its slot of 5.30 mm (0.21 in) leaves one of about 4.50 mm (0.18 in)" in found.message


def test_what_is_pasted_needs_no_allowance(make: SimpleNamespace) -> None:
    assert traced_without_allowance.run(slotted(make, "paste", 0.0), traced_without_allowance).looked_at == 0
