"""The budget of the pages is the one that joints worked out, with the meetings that bind."""

from publisher.joints import Joined, Meeting, ScaleBudget, budget_of
from publisher.pages.front.scale_range import budget

SLOT = Meeting("gable.slot", "gable", "slot of part A", 5.3, 5.2, 5.3)
BASE = Meeting("stair.tread", "step", "tread for a 25 mm base", 25.05, 25.0)


def joined(*meetings: Meeting) -> Joined:
    return Joined((), (), (), meetings, (), (), budget_of(meetings))


def test_the_meetings_that_bind_are_named() -> None:
    allowed = budget(joined(SLOT, BASE))
    assert allowed.tightest is BASE
    assert allowed.loosest is SLOT


def test_the_range_is_that_of_joints_and_not_worked_out_again() -> None:
    said = Joined((), (), (), (SLOT,), (), (), ScaleBudget(0.9, 1.1))
    allowed = budget(said)
    assert (allowed.least, allowed.most, allowed.tightest, allowed.loosest) == (0.9, 1.1, None, None)
