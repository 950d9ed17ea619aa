"""What stands when a step must wait: drawn where an assembly is not whole by then."""

from collections.abc import Callable

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
