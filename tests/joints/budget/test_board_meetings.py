"""Board in a rib's slots and in a rabbet; tabs and crossing panels stand in ``test_meetings.py``."""

from dataclasses import replace
from types import SimpleNamespace

import pytest

from publisher.geometry import DrawnFor
from publisher.joints.budget import meetings_of


def test_the_slots_of_a_rib_meet_the_board_that_crosses_it(make: SimpleNamespace) -> None:
    rib = replace(make.wall("rib", 100, 40), drawn_for=(DrawnFor("slot", 5.3, 5.0),), trace_allowance=0.4)
    (met,) = meetings_of(make.assembled(make.design(), rib))
    assert (met.kind, met.board, met.printed, met.unprinted_least, met.grown) == ("slot", "foam", 5.3, 5.2, 0.8)
    strange = replace(rib, drawn_for=(DrawnFor("slot", 3.3, 3.0),))
    (met,) = meetings_of(make.assembled(make.design(), strange))
    assert (met.board, met.thickness, met.unprinted_least) == ("crossing board", 3.0, 3.0)


def test_a_rabbet_is_level_with_the_board_in_it(make: SimpleNamespace) -> None:
    plan = make.panels("x", {"a": "a", "b": "b"}, "a.bottom", replace(make.join("a.right", "b.left"), joint="rabbet"))
    one = replace(make.wall("a", 60, 40), trace_allowance=0.4)
    (met,) = meetings_of(make.assembled(make.design(panels=(plan,)), one, make.wall("b", 30, 40)))
    assert (met.kind, met.printed, met.unprinted_least, met.loosest, met.grown) == (
        "level", 5.0, pytest.approx(4.7), pytest.approx(5.3), -0.4,
    )  # fmt: skip
