"""Needs that bind over the whole spread of board: 4 discs of 5 ± 0.2 mm are 19.2 to 20.95 mm."""

from dataclasses import replace
from types import SimpleNamespace
from typing import Any

import pytest

from publisher.joints.checks.need_over_spread import need_over_spread


def pile(make: SimpleNamespace, need: Any, sheets: int = 0) -> Any:
    plan = replace(make.stack("pile", ("plinth", 4, 0.0, (0, 0))), sheets=sheets)
    return make.assembled(make.design(stacks=(plan,), needs=(need,)), make.disc())


@pytest.mark.keeps("joints/need-over-spread")
def test_a_need_that_holds_at_both_ends_passes(make: SimpleNamespace) -> None:
    for least, most, over in ((19.2, 21.0, "spread"), (20.0, 20.0, "measured")):
        made = pile(make, replace(make.need("pile.height", least, most), over=over))
        outcome = need_over_spread.run(made, need_over_spread)
        assert (outcome.looked_at, outcome.findings) == (1 if over == "spread" else 0, ())


@pytest.mark.parametrize(
    ("least", "most", "value"), [(19.5, 30.0, 19.2), (10.0, 20.9, 20.95)], ids=["all thin", "all thick, with glue"]
)
@pytest.mark.breaks("joints/need-over-spread")
def test_a_need_that_fails_at_one_end_is_an_error(
    least: float, most: float, value: float, make: SimpleNamespace
) -> None:
    made = pile(make, replace(make.need("pile.height", least, most), over="spread"))
    (found,) = need_over_spread.run(made, need_over_spread).findings
    assert found.value == pytest.approx(value)
    assert "over the spread of the board" in found.message


def test_mixed_boards_are_held_to_95_percent(make: SimpleNamespace) -> None:
    """4 layers from 4 batches: 1.96 · 2 · 0.2 / √3 = 0.453 in place of 0.8."""
    need = replace(make.need("pile.height", 19.5, 30.0), over="spread")
    assert need_over_spread.run(pile(make, need, sheets=4), need_over_spread).findings == ()
    assert len(need_over_spread.run(pile(make, need), need_over_spread).findings) == 1


@pytest.mark.breaks("joints/need-over-spread")
def test_a_fact_that_is_no_pile_of_boards_has_no_spread(make: SimpleNamespace) -> None:
    made = pile(make, replace(make.need("plinth.width", 100.0), over="spread"))
    (found,) = need_over_spread.run(made, need_over_spread).findings
    assert "nothing is known of its spread" in found.message


def test_facts_tell_the_ends(make: SimpleNamespace) -> None:
    made = pile(make, make.need("pile.height", 10.0), sheets=4)
    ends = [made.fact(f"pile.height_{end}").value for end in ("least", "most", "likely_least", "likely_most")]
    assert ends == pytest.approx([19.2, 20.95, 20.0 - 0.45264, 20.0 + 0.45264 + 0.15], abs=1e-4)
