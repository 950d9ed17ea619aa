"""Every meeting solved for the thickness of board."""

from dataclasses import replace
from math import inf, pi
from types import SimpleNamespace

import pytest

from publisher.joints.budget import board_ranges
from publisher.joints.model import Meeting
from tests.searches.profile import dice, rounds

SLOT = Meeting("a.slot", "a", "slot of part A", 5.3, 5.2, 5.4, board="foam", thickness=5.0, spread=0.2, boards=1.0)


def test_a_slot_of_5_3_that_holds_with_0_6_takes_board_from_4_7_to_5_3(make: SimpleNamespace) -> None:
    tight = replace(SLOT, name="b.slot", printed=5.25, loosest=5.3)
    (found,) = board_ranges((SLOT, tight), (make.board(),))
    assert (found.least, found.most) == pytest.approx((4.75, 5.25))
    assert (found.least_by, found.most_by) == ("b.slot", "b.slot")
    (alone,) = board_ranges((SLOT,), (make.board(),))
    assert (alone.least, alone.most) == pytest.approx((4.7, 5.3))
    assert board_ranges((), (make.board(),))[0].most == inf


@pytest.mark.search
def test_at_its_ends_a_meeting_just_holds() -> None:
    """The other way round: the limits stated for another thickness of board, and held against the size as printed."""
    random = dice(5)
    for _ in range(rounds(100, 10_000)):
        t, spread, boards = (
            random.uniform(0.5, 10.0),
            random.uniform(0.0, 0.5),
            random.choice((1.0, 2.0, 0.5, pi, -1.0, -3.0)),
        )
        printed = random.uniform(2.0, 150.0)
        side = spread if boards > 0 else -spread

        def least_at(
            board: float, t: float = t, side: float = side, boards: float = boards, printed: float = printed
        ) -> float:
            return printed - 0.2 + boards * (board - t - side)

        def most_at(
            board: float, t: float = t, side: float = side, boards: float = boards, printed: float = printed
        ) -> float:
            return printed + 0.3 + boards * (board - t + side)

        met = Meeting(
            "m",
            "a",
            "m",
            printed,
            least_at(t + side),
            most_at(t - side),
            board="foam",
            thickness=t,
            spread=spread,
            boards=boards,
        )
        low, high = met.takes_board()
        assert low < high
        for end in (low, high):
            assert least_at(end) == pytest.approx(printed) or most_at(end) == pytest.approx(printed)
        middle = (low + high) / 2.0
        assert least_at(middle) <= printed <= most_at(middle)
