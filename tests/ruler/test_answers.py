"""What is said of a print: causes, what will not fit, what to do, and what to write to the buyer."""

import pytest

from publisher.ruler import LONG_RULERS, AllowedScale, judge, say_range, take_readings
from publisher.ruler.answers import factors
from publisher.ruler.pack_facts import Met

SLOT = Met("slot of part A for the tab of part B", 5.3, 5.2, 5.4)  # board 4.8 to 5.2, play 0.6: trade practice


def test_what_will_not_fit_is_said_in_millimetres() -> None:
    result = judge(*take_readings("97.3", "97.3"), (SLOT,))
    assert result.misfits == ("slot of part A for the tab of part B: 5.16 mm when cut, at least 5.20 mm is needed",)
    assert judge(*take_readings("100.0", "100.0"), (SLOT,)).misfits == ()


def test_the_factors_are_those_of_the_paper_sizes() -> None:
    # check values 11.3 (CALC from ISO 216 and ANSI sizes)
    table = [round(f, 4) for f, _ in factors()]
    for factor in (0.9727, 0.9407, 0.9714, 0.9722, 0.9597, 0.9395, 0.9412, 0.8790):
        assert factor in table


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
