"""A design at one value: parts are kept, only inputs go to another process, a count that is no whole number is refused."""

import pickle
from collections.abc import Callable
from pathlib import Path

from publisher.sweep.trying import KEPT, Trial
from tests.sweep.test_counting import trial_of


def test_parts_are_made_once_for_a_value_and_few_are_kept(design: Callable[..., Path]) -> None:
    trial = trial_of(design(), "radius = 15 mm to 30 mm")
    first = trial.make((20.0,))
    assert trial.make((20.0,)) is first
    for k in range(KEPT):
        trial.make((20.0 + 0.01 * (k + 1),))
    assert trial.make((20.0,)) is not first


def test_only_inputs_go_to_another_process(design: Callable[..., Path]) -> None:
    trial = trial_of(design(), "radius = 15 mm to 30 mm")
    trial.make((20.0,))
    there: Trial = pickle.loads(pickle.dumps(trial))
    assert there._made == {} and there.make((20.0,)) == trial.make((20.0,))


def test_a_value_that_cannot_be_made_says_why(design: Callable[..., Path]) -> None:
    row, joined = trial_of(design(), "radius = 15 mm to 30 mm").join((-1.0,))
    assert joined is None and row.why and not row.met
