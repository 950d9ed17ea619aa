"""Designs from seeds: the true one, and its twin with one change that makes it untrue."""

from dataclasses import replace

from tests.random_designs.design import Design
from tests.random_designs.dice import Dice
from tests.random_designs.kinds import KINDS


def true_design(seed: int, kind: str = "", paper: str = "") -> Design:
    """Return the true design of a seed; its kind follows from the seed where none is asked for."""
    kind = kind or tuple(KINDS)[seed % len(KINDS)]
    dice = Dice(f"{kind} {seed}", paper)
    made: Design = KINDS[kind].design(KINDS[kind].draw(dice))
    return replace(made, seed=seed, near=tuple(sorted(dice.near.items())))


def false_twin(true: Design, change: str = "") -> tuple[str, Design]:
    """Return a change, one of its kind's by the seed where none is asked for, and the design with it."""
    kind = KINDS[true.kind]
    dice = Dice(f"false {true.kind} {true.seed}")
    plans = kind.faults(true.plan, dice)
    change = change or dice.one_of(sorted(plans))
    return change, replace(kind.design(plans[change]), seed=true.seed)
