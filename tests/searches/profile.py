"""How many random cases a test takes: few and the same in each run, many and new ones when a search is asked for."""

from collections.abc import Callable
from dataclasses import dataclass
from random import Random, SystemRandom
from typing import Any, TypeVar

import pytest
from hypothesis import HealthCheck, seed, settings

Test = TypeVar("Test", bound=Callable[..., Any])


@dataclass
class Profile:
    """What the command line asked for. ``cases`` stands for the many of each search, where it is given."""

    large: bool = False
    seed: int = 0
    cases: int | None = None


PROFILE = Profile()


def choose(config: pytest.Config) -> str:
    """Read ``--large``, ``--cases`` and ``--seed``, before any test is collected; return a line that tells the choice.

    The seed is put back into the options, so that all workers of one run search from the same one."""
    option = config.option
    PROFILE.large = option.large or option.cases is not None or option.seed is not None
    if not PROFILE.large:
        return "random cases: few, the same in each run"
    if option.seed is None:
        option.seed = SystemRandom().randrange(1_000_000)
    PROFILE.seed, PROFILE.cases = option.seed, option.cases
    many = f"{option.cases} of each" if option.cases else "many"
    return f"random cases: {many}, from seed {option.seed} (--seed {option.seed} repeats them)"


def rounds(few: int, many: int) -> int:
    """Return how many cases this run takes."""
    return (PROFILE.cases or many) if PROFILE.large else few


def cases(few: int, many: int) -> Callable[[Test], Test]:
    """Let a hypothesis test take ``few`` examples, or ``many`` from the seed of a search. It stands above ``@given``."""

    def chosen(test: Test) -> Test:
        slow = [HealthCheck.too_slow, HealthCheck.function_scoped_fixture]
        own = settings(max_examples=rounds(few, many), derandomize=not PROFILE.large, suppress_health_check=slow)(test)
        return seed(PROFILE.seed)(own) if PROFILE.large else own

    return chosen


def seeds(few: int, many: int, **kept: int) -> Any:
    """Parametrize a test by ``seed``: the ``kept`` ones, each named by what went wrong, and ``few`` or ``many`` others."""
    first = PROFILE.seed if PROFILE.large else 0
    others = [pytest.param(first + i, id=str(first + i)) for i in range(rounds(few, many))]
    return pytest.mark.parametrize("seed", [*(pytest.param(n, id=name) for name, n in kept.items()), *others])


def dice(usual: int) -> Random:
    """Return a source of random numbers: from ``usual`` in each run, or from the seed of a search."""
    return Random(PROFILE.seed if PROFILE.large else usual)
