"""Designs from seeds: the true one, and its twin with one change that makes it untrue."""

from dataclasses import replace

from tests.random_designs.breaks import broken
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
    """Return a change, one by the seed where none is asked for, and the design with it."""
    twins = false_twins(true)
    change = change or Dice(f"change {true.kind} {true.seed}").one_of(sorted(twins))
    return change, twins[change]


def false_twins(true: Design) -> dict[str, Design]:
    """Return all twins of a design by the change that makes them untrue: those of its kind, and the breaks that every kind has."""
    kind = KINDS[true.kind]
    plans = kind.faults(true.plan, Dice(f"false {true.kind} {true.seed}"))
    made = {name: replace(kind.design(plan), seed=true.seed) for name, plan in plans.items()}
    return {**made, **broken(true, Dice(f"breaks {true.kind} {true.seed}"))}
