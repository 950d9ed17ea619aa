"""The print-scale budget against the worked example of the trade: slot 5.3, board 4.8 to 5.2, play 0.5."""

from math import inf

import pytest

from publisher.joints import Meeting
from publisher.joints.budget.scale_budget import budget_of

SLOT = Meeting("gable.slot", "gable", "slot of part A", 5.3, 5.2, 5.3)  # holds up to least board 4.8 + 0.5


def test_the_worked_example() -> None:
    # goes in: s >= 5.2 / 5.3 = 0.981; holds: s <= 5.3 / 5.3 = 1; the general band of 0.5 % is the tighter lower bound
    allowed = budget_of((SLOT,))
    assert (round(allowed.fits_least, 3), round(allowed.fits_most, 3)) == (0.981, 1.0)
    assert (allowed.fits_least_by, allowed.fits_most_by) == ("gable.slot", "gable.slot")
    assert (allowed.least, allowed.least_by) == (0.995, "")
    assert (allowed.most, allowed.most_by) == (1.0, "gable.slot")


def test_the_tightest_of_several_binds() -> None:
    base = Meeting("stair.tread", "step", "tread for a 25 mm base", 25.05, 25.0)
    allowed = budget_of((SLOT, base))
    assert allowed.least_by == "stair.tread"
    assert allowed.least == pytest.approx(25.0 / 25.05)


def test_without_meetings_the_general_band_holds() -> None:
    allowed = budget_of(())
    assert (allowed.least, allowed.most) == (0.995, 1.005)
    assert (allowed.fits_least, allowed.fits_most, allowed.fits_least_by) == (0.0, inf, "")


def test_true_size_is_never_shut_out_but_the_misfit_is_said() -> None:
    allowed = budget_of((Meeting("x", "x", "slot that is too narrow", 5.0, 5.2, 4.9),))
    assert (allowed.least, allowed.most) == (1.0, 1.0)
    assert (allowed.fits_least, allowed.fits_most) == pytest.approx((1.04, 0.98))
    assert budget_of((Meeting("x", "x", "nothing", 0.0, 5.0),)).least_by == ""


def test_a_traced_slot_is_drawn_wider_and_the_pencil_takes_it_back() -> None:
    """s·(5.3 + 0.8) − 0.8 from 5.2 to 5.4: 98.36 to 101.64 %, where a pasted one would have 98.11 to 101.89 %."""
    traced = Meeting("slot", "a", "slot of part A", 5.3, 5.2, 5.4, grown=0.8)
    pasted = Meeting("slot", "a", "slot of part A", 5.3, 5.2, 5.4)
    assert [round(100 * end, 2) for end in (budget_of((traced,)).fits_least, budget_of((traced,)).fits_most)] == [
        98.36,
        101.64,
    ]
    assert [round(100 * end, 2) for end in (budget_of((pasted,)).fits_least, budget_of((pasted,)).fits_most)] == [
        98.11,
        101.89,
    ]
    assert traced.cut_at(1.0) == pytest.approx(5.3)
