"""The print-scale budget is one and the same in joints, on paper and for those who measure a print."""

from math import pi
from pathlib import Path
from random import Random

import pytest

from publisher.basics import Place
from publisher.brief import read_brief
from publisher.design import Board
from publisher.joints import Meeting
from publisher.joints.budget import board_ranges
from publisher.joints.budget import budget_of as joints_budget
from publisher.pipeline import work
from publisher.ruler import board_range
from publisher.ruler.judge import budget_of
from publisher.ruler.pack_facts import Met
from tests.searches.profile import dice, rounds
from tests.whole.conftest import demo, demo_pack

DESIGNS = Path(__file__).parents[2] / "designs"


def met(meeting: Meeting) -> Met:
    return Met(
        meeting.what, meeting.printed, meeting.unprinted_least, meeting.loosest, meeting.grown,
        meeting.board, meeting.boards, meeting.thickness, meeting.spread,
    )  # fmt: skip


@pytest.mark.parametrize("slug", ["lock-stair", "quay"])
def test_the_recorded_budget_agrees_with_the_one_that_a_ruler_works_out(slug: str) -> None:
    worked = demo(slug)
    assert worked.joined is not None
    meetings = worked.joined.meetings
    assert meetings
    own = budget_of(tuple(map(met, meetings)))
    said = worked.joined.budget
    assert (own.least, own.most) == pytest.approx((said.least, said.most), abs=1e-9)
    for name, words in ((said.least_by, own.least_by), (said.most_by, own.most_by)):
        meeting = worked.joined.meeting(name)
        assert words == (meeting.what if meeting else "the general limit")
    (record,) = [a.data for a in demo_pack(slug, "a4").attachments if a.name == "facts.json"]
    assert b'"budget": {' in record


@pytest.mark.search
def test_joints_and_ruler_agree_on_random_meetings() -> None:
    """Fitting, tight, impossible, traced, pasted, with board in them: by threes, so that one binds among others."""
    random, board = dice(4), Board("foam", 5.0, 0.2, "bare", (), 0.0, 0.0, "none", Place("spec.yaml"))
    bound = tried = 0
    for _ in range(rounds(300, 3334)):
        meetings = tuple(_random_meeting(random, str(number)) for number in range(3))
        (one_board,) = board_ranges(meetings, (board,))
        least, most = board_range(tuple(map(met, meetings)), "foam")
        assert (least, most) == pytest.approx((one_board.least, one_board.most), abs=1e-9)
        tried += len(meetings)
        one, other = joints_budget(meetings), budget_of(tuple(map(met, meetings)))
        assert (one.least, one.most) == pytest.approx((other.least, other.most), abs=1e-12)
        assert other.least <= 1.0 <= other.most
        for scale in (one.least + 1e-9, one.most - 1e-9):
            if one.least + 1e-8 < one.most:
                for meeting in meetings:  # inside the budget all that fits at true size still fits
                    cut = meeting.cut_at(scale)
                    assert cut >= meeting.unprinted_least - 1e-9 or meeting.cut_at(1.0) < meeting.unprinted_least
                    assert (
                        meeting.loosest is None
                        or cut <= meeting.loosest + 1e-9
                        or meeting.cut_at(1.0) > meeting.loosest
                    )
        bound += bool(one.least_by or one.most_by)
    assert bound > tried / 10  # the search is near the limits


def _random_meeting(random: Random, name: str) -> Meeting:
    printed = random.uniform(2.0, 250.0)
    grown = random.choice((0.0, 0.8, -0.8, 1.0, -1.0))
    least = printed * random.uniform(0.985, 1.002)
    loosest = random.choice((None, printed * random.uniform(0.999, 1.02)))
    thickness, spread, boards = (
        random.uniform(1.0, 10.0),
        random.uniform(0.0, 0.5),
        random.choice((0.0, 1.0, 2.0, 0.5, pi, -2.0)),
    )
    return Meeting(
        name, "a", name, printed, least, loosest, grown,
        board=random.choice(("foam", "foam", "card")), thickness=thickness, spread=spread, boards=boards,
    )  # fmt: skip


@pytest.mark.parametrize(
    ("slug", "value", "rule"),
    [
        ("toll-house", "0.15 mm", "joints/slot-too-narrow"),  # the board spreads by 0.2 mm
        ("toll-house", "0.21 mm", "joints/slot-at-print-limits"),
    ],
)
def test_a_slot_that_the_board_does_not_fit_is_found_at_its_line(slug: str, value: str, rule: str) -> None:
    worked = work(read_brief(DESIGNS / slug, (("slot_play", value),)))
    found = [f for f in worked.findings if f.check == rule]
    assert found
    assert all(f.place is not None and f.place.line > 0 for f in found)
    assert rule not in {f.check for f in demo(slug).findings}
