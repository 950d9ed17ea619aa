"""Verdicts: good, doubtful, bad; causes never named alone; what will not fit."""

import pytest

from publisher.basics import Severity
from publisher.ruler import AllowedScale, Verdict, judge, take_reading, take_readings
from publisher.ruler.answers import say_range
from publisher.ruler.pack_facts import Met, budget_of

SLOT = Met("slot of part A for the tab of part B", 5.3, 5.2, 5.4)  # board 4.8 to 5.2, play 0.6: trade practice


def verdict(across: float, down: float, tool: str = "calliper", *met: Met) -> Verdict:
    return judge(take_reading("across", across, "mm", 100.0, tool), take_reading("down", down, "mm", 100.0, tool), met)


@pytest.mark.keeps("ruler/scale-bad", "ruler/scale-doubtful")
def test_true_size_is_good() -> None:
    result = verdict(100.0, 100.1)
    assert (result.verdict, result.findings, result.causes) == ("good", (), ())


@pytest.mark.breaks("ruler/scale-bad")
def test_a_letter_page_fitted_to_a4_is_bad_and_no_cause_is_named_alone() -> None:
    result = verdict(97.3, 97.2, "ruler")
    assert result.verdict == "bad"
    assert [f.severity for f in result.findings] == [Severity.ERROR, Severity.ERROR]
    # check values 11.3: 0.9727, 0.9714 and 0.9722 lie closer together than a ruler can tell
    assert len(result.causes) >= 3
    assert any("Letter page fitted to A4" in c for c in result.causes)
    assert any("A4 page fitted to Letter" in c for c in result.causes) is False


@pytest.mark.breaks("ruler/scale-doubtful")
def test_near_the_limit_a_ruler_leaves_doubt_and_a_calliper_does_not() -> None:
    assert verdict(99.2, 99.9, "ruler").verdict == "doubtful"
    assert verdict(98.9, 99.9, "calliper").verdict == "bad"


def test_one_stretched_direction_is_said() -> None:
    result = verdict(100.0, 98.0)
    assert result.uneven
    assert any("two directions differ" in a for a in result.advice)
    assert not verdict(98.0, 98.0).uneven


def test_a_slot_narrows_the_budget_and_is_named() -> None:
    budget = budget_of((Met("slot", 5.3, 5.29, 5.31),))
    assert budget.least == pytest.approx(5.29 / 5.3)
    assert budget.most == pytest.approx(5.31 / 5.3)
    assert (budget.least_by, budget.most_by) == ("slot", "slot")


def test_what_the_pack_says_it_allows_is_used() -> None:
    readings = (
        take_reading("across", 99.0, "mm", 100.0, "calliper"),
        take_reading("down", 99.0, "mm", 100.0, "calliper"),
    )
    assert judge(*readings).verdict == "bad"
    allowed = judge(*readings, recorded=AllowedScale(0.98, 1.0, "the general limit", "slot of part A"))
    assert (allowed.verdict, allowed.budget.least) == ("good", 0.98)


def test_four_inches_on_a_sixteenth_ruler_are_not_bad() -> None:
    result = judge(*take_readings("4 in", "4 in"))
    assert (result.verdict, say_range(*result.scales[0].true, inwards=False)) == ("doubtful", "100.1 … 103.1 %")
