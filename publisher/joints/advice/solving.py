"""What size would meet a need: the design is worked out again with other values of the size that may be changed.

The search goes outwards from the size as it stands until a value meets the need, then halves the way back on the grid on
which sizes are written (0.1 mm, 0.1 degree, whole counts). So the answer is rounded away from failure and has been tried,
and the next value on the grid towards the old one has been tried too and fails.
"""

from collections.abc import Callable
from dataclasses import dataclass, field, replace
from math import ceil, floor, inf, isfinite, log10

from publisher.basics import record
from publisher.design import Fact, NeedPlan, Size
from publisher.joints.facts import NEED_CLOSE, margin_of, same_kind

Evaluate = Callable[[Size], tuple[Fact, ...] | None]
"""Works the design out with another value of one size; the facts, or None when it cannot be built."""

MOST_TRIALS = 40
"""For one need: a trial of a large building takes a fifth of a second."""

WAYS = (1.1, 1.25, 1.5, 2.0, 3.0, 4.0)
"""Factors by which a size is made larger and smaller in turn until it meets the need."""

FROM_ZERO = (1.0, 2.0, 5.0, 10.0, 20.0, 50.0)
"""Values that are tried when the size is 0: mm, degrees or plain."""


DIGITS = 9
"""Decimals of a value that is tried: 1083 steps of 0.1 mm are 108.3 mm, as a designer writes it."""


@record
class Solution:
    """The value of a size nearest to the old one that meets a need; more (``upward``) or less also does. ``value`` is None
    when none from ``low`` to ``high`` does."""

    size: Size
    value: float | None
    upward: bool
    low: float
    high: float


@dataclass(slots=True)
class Trials:
    """The design at other values of one size; what was tried once is remembered."""

    size: Size
    evaluate: Evaluate
    now: tuple[Fact, ...]
    facts: dict[int, tuple[Fact, ...] | None] = field(default_factory=dict)

    @property
    def grid(self) -> float:
        """The step in which such a size is written."""
        return grid_of(self.size)

    def at(self, step: int) -> tuple[Fact, ...] | None:
        """Return the facts at the value ``step`` · grid."""
        if step not in self.facts:
            self.facts[step] = self.evaluate(replace(self.size, value=round(step * self.grid, DIGITS)))
        return self.facts[step]


def grid_of(size: Size) -> float:
    """Return the step in which a size of this kind is written (mm, degrees, whole, or three digits)."""
    if size.kind in ("length", "angle"):
        return 0.1
    if size.kind == "count":
        return 1.0
    return float(10.0 ** (floor(log10(abs(size.value))) - 2)) if size.value else 0.01


def spare_of(need: NeedPlan, facts: tuple[Fact, ...] | None, scale: float = 1.0) -> float:
    """Return by how much a need is met (negative: by how much it is not) when printed sizes come out ``scale`` times as
    large; -inf when the fact is not there."""
    fact = next((f for f in facts or () if f.name == need.fact), None)
    if fact is None or not same_kind(need, fact):
        return -inf
    return margin_of(need, replace(fact, value=fact.value * scale))


def meets(need: NeedPlan, facts: tuple[Fact, ...] | None, scale: float = 1.0) -> bool:
    """Tell whether a need is met."""
    return spare_of(need, facts, scale) >= -NEED_CLOSE


def solve(need: NeedPlan, trials: Trials, scale: float = 1.0) -> Solution:
    """Return the nearest value of the size that meets a need which is not met now, in at most MOST_TRIALS trials."""
    now, grid = trials.size.value, trials.grid
    most = len(trials.facts) + MOST_TRIALS
    values = [v for way in WAYS for v in (now * way, now / way)] if now else list(FROM_ZERO)
    tried = (min(now, *values), max(now, *values))
    failing = {True: floor(now / grid + 1e-9), False: ceil(now / grid - 1e-9)}  # the last that fails, each way
    for value in values:
        upward = value > now
        step = (ceil if upward else floor)(value / grid + (-1e-9 if upward else 1e-9))
        if (step > failing[upward]) != upward or step == failing[upward]:
            continue
        if not meets(need, trials.at(step), scale):
            failing[upward] = step
            continue
        fails, holds = failing[upward], step
        while abs(holds - fails) > 1 and len(trials.facts) < most:
            middle = _between(need, trials, scale, fails, holds)
            fails, holds = (fails, middle) if meets(need, trials.at(middle), scale) else (middle, holds)
        return Solution(trials.size, holds * grid, upward, *tried)
    return Solution(trials.size, None, True, *tried)


def _between(need: NeedPlan, trials: Trials, scale: float, fails: int, holds: int) -> int:
    """Return a step strictly between: where the secant meets the limit, on the side that holds; every third time the middle."""
    short = spare_of(need, trials.facts.get(fails, trials.now), scale)
    spare = spare_of(need, trials.at(holds), scale)
    guess = (fails + holds) / 2
    if isfinite(short) and isfinite(spare) and short < 0.0 <= spare and len(trials.facts) % 3:
        guess = fails + (holds - fails) * -short / (spare - short)
    step = ceil(guess) if holds > fails else floor(guess)
    first, last = sorted((fails, holds))
    return min(max(step, first + 1), last - 1)
