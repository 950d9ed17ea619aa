"""Two squares on one page: which of them was measured is asked, never guessed."""

from dataclasses import replace

import pytest

from publisher.basics import Refusal
from publisher.ruler import PackFacts, check_square, judge, square_readings

BOTH = PackFacts("Canal bridge", "1.0.0", (), outer_square=101.6)
ONE = replace(BOTH, outer_square=0.0)


@pytest.mark.breaks("ruler/square-not-said")
@pytest.mark.parametrize(("across", "down"), [("4 in", "4 in"), ("3 15/16", "3.97"), ("3 7/8 in", "101.6 mm")])
def test_inches_of_a_page_with_both_squares_are_never_judged_by_a_guess(across: str, down: str) -> None:
    with pytest.raises(Refusal, match="two squares: of the outer, 4 in, the readings show") as refused:
        square_readings(across, down, "in", "ruler", BOTH)
    assert "--of 4in" in refused.value.findings[0].hint and "--of 100mm" in refused.value.findings[0].hint


@pytest.mark.keeps("ruler/square-not-said")
@pytest.mark.parametrize(("mm", "facts"), [(100.0, BOTH), (100.0, None), (101.6, ONE), (99.0, BOTH)])
def test_millimetres_are_those_of_the_square_that_is_named_in_millimetres(mm: float, facts: PackFacts | None) -> None:
    readings = square_readings(mm, mm, "mm", "ruler", facts)
    assert [one.true_mm for one in readings] == [100.0, 100.0]
    assert not any(one.also for one in readings)


@pytest.mark.parametrize(
    ("across", "unit", "facts"),
    [("4 in", "mm", None), ("3 15/16", "in", None), ("101.5", "mm", BOTH), ("101.6", "mm", None)],
)
def test_what_may_be_of_the_other_square_is_said_before_all_else(
    across: str, unit: str, facts: PackFacts | None
) -> None:
    found = judge(*square_readings(across, across, unit, "ruler", facts))
    assert found.advice[0].startswith("judged as the square of 100 mm;") and "--of 4in" in found.advice[0]
    assert found.reply.startswith("Which square did you measure")


def test_inches_of_a_page_with_one_square_are_of_that() -> None:
    found = judge(*square_readings("3 15/16", "3 15/16", "in", "ruler", ONE))
    assert "--of" not in " ".join(found.advice)


def test_what_neither_square_can_give_is_judged_as_ever() -> None:
    found = judge(*square_readings("3 1/2 in", "3 1/2 in", "mm", "ruler", BOTH))
    assert (found.verdict, [one.also for one in found.readings]) == ("bad", ["", ""])


@pytest.mark.breaks("ruler/no-such-square")
def test_a_square_of_4_in_that_the_pack_has_not_is_refused() -> None:
    with pytest.raises(Refusal, match="no square of 4 in") as refused:
        check_square((101.6, 101.6), replace(ONE, lines=(180.0, 240.0, 100.0)))
    assert "--of 100mm" in refused.value.findings[0].hint


@pytest.mark.keeps("ruler/no-such-square")
@pytest.mark.parametrize(
    ("mm", "facts"),
    [
        (101.6, replace(BOTH, lines=(180.0, 101.6))),
        (101.6, replace(ONE, lines=(180.0, 101.6))),  # a size beside a template
        (101.6, ONE),  # an older record holds no lines
        (101.6, None),
        (100.0, replace(ONE, lines=(180.0,))),
    ],
)
def test_lines_that_are_there_and_packs_that_do_not_tell_are_not(mm: float, facts: PackFacts | None) -> None:
    check_square((mm, mm), facts)
    assert judge(*square_readings(100.0, 100.0, "mm", "calliper", facts)).verdict == "good"
