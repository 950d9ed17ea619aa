"""Verdicts: good, doubtful, bad; causes never named alone; what will not fit."""

import numpy as np
import pytest

from publisher.basics import Severity
from publisher.ruler import LONG_RULERS, TOOLS, AllowedScale, Reading, Verdict, judge, take_reading, take_readings
from publisher.ruler.answers import factors, say_range
from publisher.ruler.pack_facts import Met, budget_of
from publisher.ruler.readings import STEPS
from publisher.ruler.scales import scale_of
from tests.searches.profile import seeds

SLOT = Met("slot of part A for the tab of part B", 5.3, 5.2, 5.4)  # board 4.8 to 5.2, play 0.6: trade practice


def verdict(across: float, down: float, tool: str = "calliper", *met: Met) -> Verdict:
    return judge(take_reading("across", across, "mm", 100.0, tool), take_reading("down", down, "mm", 100.0, tool), met)


@pytest.mark.keeps("ruler/scale-bad", "ruler/scale-doubtful")
def test_true_size_is_good() -> None:
    result = verdict(100.0, 100.1)
    assert (result.verdict, result.findings, result.causes) == ("good", (), ())


@pytest.mark.breaks("ruler/scale-bad")
def test_a_letter_page_fitted_to_a4_is_bad_and_no_cause_is_named_alone() -> None:
    result = verdict(97.3, 97.2, "ruler")
    assert result.verdict == "bad"
    assert [f.severity for f in result.findings] == [Severity.ERROR, Severity.ERROR]
    # check values 11.3: 0.9727, 0.9714 and 0.9722 lie closer together than a ruler can tell
    assert len(result.causes) >= 3
    assert any("Letter page fitted to A4" in c for c in result.causes)
    assert any("A4 page fitted to Letter" in c for c in result.causes) is False


@pytest.mark.breaks("ruler/scale-doubtful")
def test_near_the_limit_a_ruler_leaves_doubt_and_a_calliper_does_not() -> None:
    assert verdict(99.2, 99.9, "ruler").verdict == "doubtful"
    assert verdict(98.9, 99.9, "calliper").verdict == "bad"


def test_one_stretched_direction_is_said() -> None:
    result = verdict(100.0, 98.0)
    assert result.uneven
    assert any("two directions differ" in a for a in result.advice)
    assert not verdict(98.0, 98.0).uneven


def test_a_slot_narrows_the_budget_and_is_named() -> None:
    budget = budget_of((Met("slot", 5.3, 5.29, 5.31),))
    assert budget.least == pytest.approx(5.29 / 5.3)
    assert budget.most == pytest.approx(5.31 / 5.3)
    assert (budget.least_by, budget.most_by) == ("slot", "slot")


def test_what_will_not_fit_is_said_in_millimetres() -> None:
    result = verdict(97.3, 97.3, "ruler", SLOT)
    assert result.misfits == ("slot of part A for the tab of part B: 5.16 mm when cut, at least 5.20 mm is needed",)
    assert verdict(100.0, 100.0, "ruler", SLOT).misfits == ()


def test_the_factors_are_those_of_the_paper_sizes() -> None:
    # check values 11.3 (CALC from ISO 216 and ANSI sizes)
    table = [round(f, 4) for f, _ in factors()]
    for factor in (0.9727, 0.9407, 0.9714, 0.9722, 0.9597, 0.9395, 0.9412, 0.8790):
        assert factor in table


def test_what_the_pack_says_it_allows_is_used() -> None:
    readings = (
        take_reading("across", 99.0, "mm", 100.0, "calliper"),
        take_reading("down", 99.0, "mm", 100.0, "calliper"),
    )
    assert judge(*readings).verdict == "bad"
    allowed = judge(*readings, recorded=AllowedScale(0.98, 1.0, "the general limit", "slot of part A"))
    assert (allowed.verdict, allowed.budget.least) == ("good", 0.98)


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
    (scale, _) = verdict(100.0, 100.0, tool).scales
    assert scale.good == (None if good is None else pytest.approx((good[0] / 100, good[1] / 100), abs=5e-6))
    assert scale.verdict == ("doubtful" if good is None else "good")


def test_a_coarse_ruler_is_good_on_the_long_rulers_and_its_advice_says_how() -> None:
    square = judge(*take_readings("3 15/16 in", "3 15/16 in"))
    whole = judge(*take_readings("100", "100"))
    assert whole.advice[0].endswith("240 mm down: publisher measure --rulers ACROSS DOWN")
    assert square.verdict == "doubtful"
    assert "with a finer ruler: publisher measure --rulers ACROSS DOWN" in square.advice[0]
    assert judge(*take_readings("180", "240", true_mm=LONG_RULERS)).verdict == "good"
    assert judge(*take_readings("7 3/32 in", "9 14/32 in", true_mm=LONG_RULERS)).verdict == "good"
    assert any("--tool 1/32in" in row for row in square.advice)


def test_on_the_long_rulers_a_finer_ruler_is_what_helps() -> None:
    long = judge(*take_readings("179", "239", true_mm=LONG_RULERS))
    assert "finer marks" in long.advice[0] and "--rulers" not in long.advice[0]
    fine = judge(*take_readings("178.9", "238.5", true_mm=LONG_RULERS))
    assert (fine.verdict, "--tool calliper" in fine.advice[0]) == ("doubtful", True)


def test_what_no_long_ruler_settles_asks_for_a_finer_one_too() -> None:
    narrow = AllowedScale(0.999, 1.0, "slot", "slot")
    assert "with a finer ruler" in judge(*take_readings("100", "100"), recorded=narrow).advice[0]


def test_four_inches_on_a_sixteenth_ruler_are_not_bad() -> None:
    result = judge(*take_readings("4 in", "4 in"))
    assert (result.verdict, say_range(*result.scales[0].true, inwards=False)) == ("doubtful", "100.1 … 103.1 %")


def test_what_is_shown_is_rounded_outwards_and_what_is_allowed_inwards() -> None:
    assert say_range(0.99512, 1.00488, inwards=True) == "99.6 … 100.4 %"
    assert say_range(0.99512, 1.00488, inwards=False) == "99.5 … 100.5 %"
    assert say_range(0.9981, 0.9989, inwards=True) == "99.81 … 99.89 %"
    assert say_range(0.995, 1.005, inwards=True) == say_range(0.995, 1.005, inwards=False) == "99.5 … 100.5 %"


@pytest.mark.parametrize(
    ("across", "says"), [("100.0", "go on and use it"), ("99.5", "two long rulers"), ("97.3", "do not cut from it")]
)
def test_the_reply_to_a_buyer_tells_what_to_do(across: str, says: str) -> None:
    reply = judge(*take_readings(across, "100.0")).reply
    assert says in reply and "publisher" not in reply


def test_digits_that_may_be_exchanged_are_asked_about_before_anything_else() -> None:
    result = judge(*take_readings("79", "97"))
    assert result.verdict == "bad"
    assert result.advice[0] == "across: two digits may be exchanged: 97 in place of 79"
    assert "once more" in result.reply


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
