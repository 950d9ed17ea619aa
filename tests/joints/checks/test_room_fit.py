"""Things that go into rooms, and strips round tubes, at the limits of board, paint and print."""

from dataclasses import replace
from math import pi
from types import SimpleNamespace
from typing import Any

import pytest

from publisher.basics import Check, Finding, Severity
from publisher.design import FitPlan
from publisher.geometry import DrawnFor, Opening
from publisher.joints import Meeting
from publisher.joints.budget import meetings_of
from publisher.joints.checks.room_fit import AT_LIMITS, DOES_NOT_GO_IN, GAPES, TOO_LOOSE, no_such_room


def fit(
    make: SimpleNamespace, into: str, goes: float | str, *, spread: float = 0.0, paint: float = 0.0, loosest: float | None = None
) -> FitPlan:  # fmt: skip
    wide, fact = (None, goes) if isinstance(goes, str) else (goes, "")
    return FitPlan("dowel", into, wide, fact, spread, paint, loosest, make.here)


def deck(make: SimpleNamespace, wide: float, traced: float = 0.0) -> Any:
    """A deck with a hole ``wide`` mm wide."""
    wall = make.wall("deck", 60, 40)
    ring = make.hole(tuple(reversed(((20, 10), (20 + wide, 10), (20 + wide, 30), (20, 30)))), "hole.side")
    opening = Opening("hole", "window", ring, wide, 20.0, 10.0, 30.0)
    return replace(
        make.part("deck", wall.outline.outer, holes=(ring,), openings=(opening,), edges=wall.edges), trace_allowance=traced
    )  # fmt: skip


def subject(make: SimpleNamespace, plan: FitPlan, *parts: Any) -> Any:
    made = make.assembled(replace(make.design(), fits=(plan,)), *parts)
    return replace(made, meetings=meetings_of(made))


def found(check: Check[Any], made: Any) -> tuple[Finding, ...]:
    return check.run(made, check).findings


@pytest.mark.keeps(
    "joints/fit-unknown", "joints/does-not-go-in", "joints/goes-in-too-loosely", "joints/fit-at-print-limits"
)
def test_a_dowel_that_fits_passes(make: SimpleNamespace) -> None:
    made = subject(make, fit(make, "deck.hole.width", 6.0, spread=0.1, loosest=0.5), deck(make, 6.2))
    for check in (no_such_room, DOES_NOT_GO_IN, TOO_LOOSE, AT_LIMITS):
        outcome = check.run(made, check)
        assert (outcome.looked_at, outcome.findings) == (1, ())


@pytest.mark.breaks("joints/does-not-go-in")
def test_a_dowel_thicker_than_its_hole_stops_the_pack(make: SimpleNamespace) -> None:
    (one,) = found(DOES_NOT_GO_IN, subject(make, fit(make, "deck.hole.width", 6.0, spread=0.2), deck(make, 6.1)))
    assert one.severity is Severity.ERROR
    assert (one.value, one.limit) == (pytest.approx(6.1), pytest.approx(6.2))
    assert "make the room 0.10 mm wider" in one.hint


@pytest.mark.breaks("joints/does-not-go-in")
def test_paint_takes_its_part_of_the_play_of_a_lid(make: SimpleNamespace) -> None:
    """A lid 20 wide in a hole 20.8 wide slides while paint adds 0.2 on each of the four faces, and not with 0.25."""
    lid = make.wall("lid", 20, 20)
    good = subject(make, fit(make, "deck.hole.width", "lid.width", paint=0.2), deck(make, 20.8), lid)
    assert found(DOES_NOT_GO_IN, good) == ()
    (one,) = found(
        DOES_NOT_GO_IN, subject(make, fit(make, "deck.hole.width", "lid.width", paint=0.25), deck(make, 20.8), lid)
    )
    assert (one.value, one.limit) == (pytest.approx(0.8), pytest.approx(1.0))
    assert one.message.endswith("leaves a play of 0.80 mm; 1.00 mm is needed, with spread and paint")


@pytest.mark.breaks("joints/does-not-go-in")
def test_the_play_of_a_lid_between_walls_is_told_without_their_board(make: SimpleNamespace) -> None:
    """A room between two boards of 5 mm in 100 mm of wall, and a lid of 89.4 in it: 0.6 of play, where paint wants 0.8."""
    met = Meeting(
        "fit.1.box.inside_width",
        "wall",
        "room inside box for the lid",
        10.6,
        10.8,
        kind="fit",
        boards=2.0,
        thickness=5.0,
    )
    for between, says in (
        (True, "leaves a play of 0.60 mm; 0.80 mm is needed"),
        (False, "is 10.60 mm; 10.80 mm is needed"),
    ):
        made = replace(
            subject(make, fit(make, "deck.hole.width", 6.0), deck(make, 6.5)), meetings=(replace(met, between=between),)
        )
        (one,) = found(DOES_NOT_GO_IN, made)
        assert says in one.message and (one.value, one.limit) == (10.6, 10.8)


def test_a_printed_part_shrinks_with_its_room(make: SimpleNamespace) -> None:
    """s·20.8 − s·20 = s·0.8: a print at 99.5 % takes 0.004 mm of the play, not 0.1; traced, a pencil's width more."""
    lid = replace(make.wall("lid", 20, 20), trace_allowance=0.4)
    (met,) = subject(make, fit(make, "deck.hole.width", "lid.width"), deck(make, 20.8, 0.4), lid).meetings
    hole, piece = 0.995 * (20.8 + 0.8) - 0.8, 0.995 * (20.0 - 0.8) + 0.8
    assert met.cut_at(0.995) == pytest.approx(hole - piece)
    (dowel,) = subject(make, fit(make, "deck.hole.width", 20.0), deck(make, 20.8, 0.4)).meetings
    assert dowel.cut_at(0.995) == pytest.approx(hole)


def test_board_that_slides_in_a_groove_brings_its_spread(make: SimpleNamespace) -> None:
    """A door of 5 ± 0.2 mm, painted 0.2 a face, wants 5.2 + 0.8 = 6.0."""
    door = make.wall("door", 30, 30)
    (met,) = subject(
        make, fit(make, "deck.hole.width", "door.thickness", paint=0.2, loosest=1.5), deck(make, 6.1), door
    ).meetings
    assert (met.unprinted_least, met.loosest) == (pytest.approx(6.0), pytest.approx(6.3))
    assert (met.board, met.boards, met.spread) == ("foam", 1.0, 0.2)


@pytest.mark.breaks("joints/goes-in-too-loosely")
def test_a_dowel_that_wobbles_stops_the_pack(make: SimpleNamespace) -> None:
    (one,) = found(TOO_LOOSE, subject(make, fit(make, "deck.hole.width", 6.0, loosest=0.3), deck(make, 6.5)))
    assert (one.value, one.limit) == (pytest.approx(6.5), pytest.approx(6.3))


@pytest.mark.breaks("joints/fit-at-print-limits")
def test_a_dowel_that_fits_only_a_perfect_print_is_told(make: SimpleNamespace) -> None:
    (one,) = found(AT_LIMITS, subject(make, fit(make, "deck.hole.width", 20.0), deck(make, 20.05)))
    assert "at 99.5 % it is 19.95 mm, at least 20.00 mm is needed" in one.message
    assert "0.10 mm larger" in one.hint
    (one,) = found(AT_LIMITS, subject(make, fit(make, "deck.hole.width", 20.0, loosest=0.25), deck(make, 20.2)))
    assert "at 100.5 % it is 20.30 mm, at most 20.25 mm is needed" in one.message


@pytest.mark.breaks("joints/fit-unknown")
@pytest.mark.parametrize(
    ("into", "goes", "says"),
    [
        ("deck.hole.widht", 6.0, "did you mean “deck.hole.width”?"),
        ("deck.area", 6.0, "no width on paper"),
        ("deck.hole.width", "lid.wide", "there is no fact “lid.wide”"),
        ("deck.hole.width", "lid.perimeter", "no width on paper"),
    ],
)
def test_a_fit_that_names_nothing_is_told(into: str, goes: float | str, says: str, make: SimpleNamespace) -> None:
    made = subject(make, fit(make, into, goes), deck(make, 6.2), make.wall("lid", 20, 20))
    (one,) = found(no_such_room, made)
    assert says in f"{one.message} | {one.hint}"


def wrapped(make: SimpleNamespace, spread: float, thickness: float = 2.0) -> Any:
    """A strip round a tube of 40 mm."""
    girth = pi * (40.0 + thickness)
    strip = replace(make.wall("strip", girth, 30, thickness=thickness), drawn_for=(DrawnFor("seam", girth, 40.0),))
    made = make.assembled(make.design(boards=(make.board(thickness, spread=spread),)), strip)
    return replace(made, meetings=meetings_of(made))


@pytest.mark.keeps("joints/seam-gapes")
def test_a_strip_of_card_goes_round_its_tube(make: SimpleNamespace) -> None:
    made = wrapped(make, 0.05)
    (met,) = made.meetings
    assert (met.kind, met.boards) == ("seam", pi)
    assert met.unprinted_least == pytest.approx(pi * 42.05 - 1.0)
    assert found(GAPES, made) == ()
    assert found(AT_LIMITS, made) == ()


@pytest.mark.breaks("joints/seam-gapes", "joints/fit-at-print-limits")
def test_the_ends_of_a_thick_strip_gape(make: SimpleNamespace) -> None:
    """0.4 mm thicker it is π · 0.4 = 1.26 mm short; with 0.2 mm only a print at 99.5 % leaves more than 1 mm."""
    (one,) = found(GAPES, wrapped(make, 0.4))
    assert "its ends gape by 1.26 mm" in one.message
    (one,) = found(AT_LIMITS, wrapped(make, 0.2))
    assert "lap: 8 mm" in one.hint and "larger" not in one.hint  # no length holds both ends
    assert one.value == pytest.approx(0.995 * pi * 42.0)
