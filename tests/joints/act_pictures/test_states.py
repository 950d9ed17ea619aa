"""What stands when a step must wait: drawn where an assembly is not whole by then."""

from collections.abc import Callable
from typing import Any

from publisher.joints.act_pictures.states import draw_states
from publisher.joints.assembled import Assembled
from publisher.joints.building import built_by_steps
from tests.joints.act_pictures.conftest import LID, WALLS
from tests.joints.building.conftest import BOX


def test_a_step_that_waits_shows_what_stands_in_part(assembled: Callable[..., Assembled]) -> None:
    later = f"  - {{title: Lid, say: Do it., stage: glue, adds: [{LID}], wait: 2 h}}\n"
    waiting = f"  - {{title: Walls, say: Do it., stage: glue, adds: [{WALLS}], wait: 24 h}}\n"
    subject = assembled(BOX, after=waiting + later)
    (state,) = draw_states(subject, built_by_steps(subject).additions)
    assert state.name == "state:1" and state.lines and not state.labels
    assert draw_states(subject, ()) == ()


def test_nothing_is_drawn_where_no_step_waits(assembled: Callable[..., Assembled]) -> None:
    subject = assembled(BOX, WALLS, LID)
    assert draw_states(subject, built_by_steps(subject).additions) == ()


def test_what_is_put_up_dry_is_drawn_as_it_stands_then(assembled: Callable[..., Assembled]) -> None:
    dry = f"  - {{title: Walls, say: Do it., stage: dry_fit, adds: [{WALLS}]}}\n"
    glued = f"  - {{title: Walls, say: Do it., stage: glue, adds: [{WALLS}]}}\n"
    lid = f"  - {{title: Lid, say: Do it., stage: glue, adds: [{LID}]}}\n"
    subject = assembled(BOX, after=dry + glued + lid)
    (trial,) = draw_states(subject, built_by_steps(subject).additions)
    assert trial.name == "trial:1" and trial.lines and not trial.labels


def test_what_lifts_off_is_held_off_where_it_is_coated(demo: Callable[..., Any]) -> None:
    """The roof of the toll house was painted on, where the words took it off."""
    house, bridge = demo("toll-house"), demo("bridge")
    last = len(house.design.steps)
    off, whole = house.joined.drawing(f"off:{last}"), house.joined.drawing("whole:house")
    assert off is not None and whole is not None and off.height > 1.15 * whole.height
    assert not [one.name for one in bridge.joined.drawings if one.name.startswith("off:")]  # all of it is glued
    glued = [one.name for one in house.joined.drawings if one.name.startswith("off:")]
    assert glued == [f"off:{last}"]  # no other step coats
