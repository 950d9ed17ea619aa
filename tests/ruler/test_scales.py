"""One rule for good, doubtful and bad: seldom wrong, whatever ruler was used."""

import numpy as np
import pytest

from publisher.ruler import TOOLS, Reading, take_reading
from publisher.ruler.pack_facts import budget_of
from publisher.ruler.readings import STEPS
from publisher.ruler.scales import scale_of
from tests.searches.profile import seeds


@pytest.mark.parametrize(
    ("tool", "good"),
    [
        ("calliper", (99.5, 100.5)),
        ("0.5mm", (99.782, 100.218)),
        ("1/32in", None),
        ("1mm", None),
        ("1/16in", None),
    ],
)
def test_good_is_said_where_the_ruler_can_tell(tool: str, good: tuple[float, float] | None) -> None:
    """By hand: 99.5 − 0.3 + 1.645 u, with u = √(step²/6 + 0.5²/3); coarse marks leave nothing of it."""
    scale = scale_of(take_reading("across", 100.0, "mm", 100.0, tool), budget_of(()))
    assert scale.good == (None if good is None else pytest.approx((good[0] / 100, good[1] / 100), abs=5e-6))
    assert scale.verdict == ("doubtful" if good is None else "good")


def shares(scale: float, line: float, tool: str, seed: int, turns: int) -> dict[str, float]:
    """Return how often each verdict falls when a line that printed at ``scale`` is read again and again: by errors of the normal
    distribution, and by a rule that is off by up to 0.5 mm and read to the nearest mark at both ends, wherever it is laid."""
    dice = np.random.default_rng(seed)
    step = STEPS[tool]
    normal = scale * line + dice.normal(0.0, TOOLS[tool].u_mm, turns)
    start, off = dice.uniform(0.0, step, turns), dice.uniform(-0.5, 0.5, turns)
    marks = step * (np.round((start + scale * line + off) / step) - np.round(start / step))
    worst = {}
    for read in (normal, marks):
        values, counts = np.unique(np.round(read, 2), return_counts=True)
        said = [scale_of(Reading("across", float(v), line, TOOLS[tool]), budget_of(())).verdict for v in values]
        for word in ("good", "bad"):
            share = sum(int(n) for n, one in zip(counts, said, strict=True) if one == word) / turns
            worst[word] = max(worst.get(word, 0.0), share)
    return worst


@pytest.mark.search
@seeds(1, 40)
@pytest.mark.parametrize("line", [100.0, 180.0, 240.0])
@pytest.mark.parametrize("tool", STEPS)
def test_verdicts_are_seldom_wrong(tool: str, line: float, seed: int) -> None:
    """Good 0.3 % outside one time in twenty at most; bad inside one time in two hundred at most, on either axis."""
    turns = 20_000
    slack = 4.0 * (0.05 * 0.95 / turns) ** 0.5  # four standard deviations of the share of so many turns
    for outside in (0.992, 1.008, 0.99, 1.012):
        assert shares(outside, line, tool, seed, turns)["good"] <= 0.05 + slack
    for inside in (0.995, 1.005, 1.0):
        assert shares(inside, line, tool, seed, turns)["bad"] <= 0.0025 + slack / 4


def test_a_rule_that_believes_the_ruler_is_found_out() -> None:
    """The former rule, good wherever the reading lies in the limits, is wrong far more often than that."""
    dice = np.random.default_rng(0)
    read = 0.992 + dice.normal(0.0, TOOLS["0.5mm"].u_mm, 20_000) / 100.0
    assert np.mean((read >= 0.995) & (read <= 1.005)) > 0.15
