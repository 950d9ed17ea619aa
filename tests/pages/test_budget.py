"""The print-scale budget against the worked example of the trade: slot 5.3, board 4.8 to 5.2, play 0.5."""

import pytest

from publisher.joints import Meeting
from publisher.pages.budget import budget

SLOT = Meeting("gable.slot", "gable", "slot of part A", 5.3, 5.2, 5.3)  # holds up to least board 4.8 + 0.5


def test_the_worked_example() -> None:
    # goes in: s >= 5.2 / 5.3 = 0.981; holds: s <= 5.3 / 5.3 = 1; the general band of 0.5 % is the tighter lower bound
    allowed = budget((SLOT,))
    assert allowed.least == 0.995
    assert allowed.most == 1.0
    assert allowed.tightest is None
    assert allowed.loosest is SLOT


def test_the_tightest_of_several_binds() -> None:
    base = Meeting("stair.tread", "step", "tread for a 25 mm base", 25.05, 25.0)
    assert budget((SLOT, base)).tightest is base
    assert budget((SLOT, base)).least == pytest.approx(25.0 / 25.05)


def test_without_meetings_the_general_band_holds() -> None:
    allowed = budget(())
    assert (allowed.least, allowed.most) == (0.995, 1.005)


def test_true_size_is_never_shut_out() -> None:
    too_narrow = Meeting("x", "x", "slot that is too narrow", 5.0, 5.2, 4.9)
    allowed = budget((too_narrow,))
    assert allowed.least == 1.0
    assert allowed.most == 1.0
    assert budget((Meeting("x", "x", "nothing", 0.0, 5.0),)).tightest is None
