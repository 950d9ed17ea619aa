"""Slots against board that is not nominal. Limits by hand: board 5 ± 0.2 mm, slots 5 mm + play."""

from dataclasses import replace
from random import Random
from types import SimpleNamespace

import pytest

from publisher.basics import Severity
from publisher.joints.assembled import Assembled
from publisher.joints.budget import meetings_of
from publisher.joints.checks.slot_fit import AT_LIMITS, BEYOND_USE, TOO_NARROW, TOO_WIDE, least_play
from publisher.joints.model import Meeting
from tests.joints.panels.test_posts import box, posted


def crossed(
    make: SimpleNamespace, play: float, loosest: float | None = None, spread: float = 0.2, squeeze: float = 0.0
) -> object:
    """Two ribs that cross with this play, of a board with this spread."""
    plan = make.panels(
        "crate", {"a": "long", "b": "short"}, "a.bottom", make.crossing("a.top", "b.bottom", 50, 30, play=play)
    )
    join = replace(plan.joins[0], loosest=loosest)
    board = replace(make.board(spread=spread), squeeze=squeeze)
    _, parts = make.crate()
    subject = make.assembled(
        make.design(panels=(replace(plan, joins=(join,)),), boards=(board,)), parts["long"], parts["short"]
    )
    return replace(subject, meetings=meetings_of(subject))


@pytest.mark.parametrize(("play", "spread", "squeeze"), [(0.3, 0.2, 0.0), (0.15, 0.2, 0.1), (0.0, 0.2, 0.25)])
@pytest.mark.keeps(
    "joints/slot-too-narrow", "joints/slot-too-wide", "joints/slot-at-print-limits", "joints/slot-play-beyond-use"
)
def test_a_slot_that_takes_every_board_passes(
    make: SimpleNamespace, play: float, spread: float, squeeze: float
) -> None:
    subject = crossed(make, play, spread=spread, squeeze=squeeze)
    for check in (TOO_NARROW, TOO_WIDE, AT_LIMITS, BEYOND_USE):
        outcome = check.run(subject, check)  # type: ignore[arg-type]
        assert (outcome.looked_at, outcome.findings) == (2, ())


@pytest.mark.parametrize(
    ("play", "spread", "least"),
    [
        (0.15, 0.2, "0.25 mm"),  # 5.2 / 0.995 - 5 = 0.226
        (0.3, 0.5, "0.55 mm"),  # 5.5 / 0.995 - 5 = 0.528
        (0.0, 0.1, "0.15 mm"),
    ],
)
@pytest.mark.breaks("joints/slot-too-narrow")
def test_a_slot_narrower_than_the_thickest_board_stops_the_pack(
    make: SimpleNamespace, play: float, spread: float, least: str
) -> None:
    first, _ = TOO_NARROW.run(crossed(make, play, spread=spread), TOO_NARROW).findings  # type: ignore[arg-type]
    assert first.severity is Severity.ERROR
    assert (first.value, first.limit) == (pytest.approx(5 + play), pytest.approx(5 + spread))
    assert f"make its play {least} or more" in first.hint
    assert AT_LIMITS.run(crossed(make, play, spread=spread), AT_LIMITS).findings == ()  # type: ignore[arg-type]
    cured = crossed(make, float(least.split(maxsplit=1)[0]), spread=spread)
    for check in (TOO_NARROW, AT_LIMITS):
        assert check.run(cured, check).findings == ()  # type: ignore[arg-type]


@pytest.mark.breaks("joints/slot-at-print-limits")
def test_a_slot_that_fits_only_a_perfect_print_is_told(make: SimpleNamespace) -> None:
    first, _ = AT_LIMITS.run(crossed(make, 0.21), AT_LIMITS).findings  # type: ignore[arg-type]
    assert first.severity is Severity.WARNING
    assert "at 99.5 % it is 5.18 mm wide, 5.20 mm is needed" in first.message  # 0.995 · 5.21
    loose, _ = AT_LIMITS.run(crossed(make, 0.4, loosest=0.6), AT_LIMITS).findings  # type: ignore[arg-type]
    assert "at 100.5 %: it is 5.43 mm wide, at most 5.40 mm holds" in loose.message  # 1.005 · 5.4


@pytest.mark.breaks("joints/slot-too-wide")
def test_a_slot_that_does_not_hold_the_thinnest_board_stops_the_pack(make: SimpleNamespace) -> None:
    """5.3 mm against 4.8 + 0.4: loose on a sheet that prints true, so no range of print is worth a word."""
    subject = crossed(make, 0.3, loosest=0.4)
    first, _ = TOO_WIDE.run(subject, TOO_WIDE).findings  # type: ignore[arg-type]
    assert first.severity is Severity.ERROR
    assert (first.value, first.limit) == (pytest.approx(5.3), pytest.approx(5.2))
    assert "make its loosest 0.55 mm or more" in first.hint  # 1.005 · 5.3 - 4.8 = 0.5265
    assert AT_LIMITS.run(subject, AT_LIMITS).findings == ()  # type: ignore[arg-type]
    for check in (TOO_WIDE, AT_LIMITS):
        assert check.run(crossed(make, 0.3, loosest=0.55), check).findings == ()  # type: ignore[arg-type]


@pytest.mark.breaks("joints/slot-play-beyond-use")
def test_play_beyond_all_use_is_told(make: SimpleNamespace) -> None:
    first, _ = BEYOND_USE.run(crossed(make, 4.0), BEYOND_USE).findings  # type: ignore[arg-type]
    assert (first.value, first.limit) == (pytest.approx(4.0), 1.0)


def test_the_play_that_is_named_will_do_and_a_twentieth_less_will_not() -> None:
    dice = Random(11)
    for _ in range(500):
        t, spread, grown = (
            dice.choice((3.0, 4.7625, 5.0, 10.0)),
            dice.uniform(0.0, 0.6),
            dice.choice((0.0, 0.6, 0.8, 1.0)),
        )
        slot = Meeting("s", "a", "slot", t, t + spread, None, grown, "slot", None, "foam", t)
        play = least_play(slot)
        assert replace(slot, printed=t + play).cut_at(0.995) >= slot.unprinted_least - 1e-9
        assert replace(slot, printed=t + play - 0.0501).cut_at(0.995) < slot.unprinted_least


@pytest.mark.breaks("joints/slot-too-narrow")
def test_an_opening_that_takes_a_post_has_no_play_to_change(make: SimpleNamespace) -> None:
    """What is named, 5.25 mm for board of up to 5.2 mm, is the opening's, and does; a play stands nowhere in the spec."""

    def posts(across: float) -> Assembled:
        made = posted(make, box(30, 30, 20.4, across))
        boards = (make.board(5.0, spread=0.2),)
        made = replace(made, design=replace(made.design, boards=boards))
        made = make.assembled(made.design, *made.parts)
        return replace(made, meetings=meetings_of(made))

    (first,) = TOO_NARROW.run(posts(5.0), TOO_NARROW).findings
    assert first.hint.startswith("make the opening socket 5.25 mm or more across the board of the post, or")
    assert first.cure is None
    for check in (TOO_NARROW, AT_LIMITS):
        assert check.run(posts(5.25), check).findings == ()
