"""Lengths, lists and nearest words, as every room but the judges says them."""

import math
import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from publisher.basics.wording import (
    LONGEST_WORD,
    Rounds,
    beyond,
    counted,
    cut,
    did_you_mean,
    figures_apart,
    fixed,
    lengths_apart,
    listed,
    mm_apart,
    nearest,
    ordered,
    paired,
    ruled,
    ruled_inches,
    say_inches,
    say_length,
    say_mm,
    say_push,
    say_size,
    shares_apart,
    trimmed,
    written_angle,
    written_length,
)


@pytest.mark.parametrize(
    ("mm", "text"),
    [
        (70.0, "70.0 mm (2.76 in)"),
        (5.0625, "5.06 mm (0.20 in)"),
        (4.7625, "4.76 mm (0.19 in)"),
        (9.999, "10.00 mm (0.39 in)"),
        (9.9996, "10.0 mm (0.39 in)"),
        (25.4, "25.4 mm (1.00 in)"),
        (100.0125, "100.0 mm (3.94 in)"),
        (0.0, "0.00 mm (0.00 in)"),
        (-0.001, "0.00 mm (0.00 in)"),
        (-12.25, "-12.3 mm (-0.48 in)"),
        (math.inf, "open"),
    ],
)
def test_lengths_are_said_in_mm_and_inches(mm: float, text: str) -> None:
    assert say_length(mm) == text


@given(st.floats(0.0, 500.0), st.floats(-3.0, 3.0).map(lambda power: 10.0**power / 500.0), st.sampled_from((1.0, -1.0)))
def test_a_value_and_its_limit_are_never_said_alike_and_keep_their_order(one: float, apart: float, way: float) -> None:
    other = one + way * apart
    for said in (lengths_apart(one, other), mm_apart(one, other), figures_apart(one, other, 2)):
        first, second = (float(re.match(r"-?[\d.]+", text)[0]) for text in said)  # type: ignore[index]
        assert (first < second) == (one < other) and first != second


def test_values_that_differ_are_said_with_as_many_decimals_as_tell_them_apart() -> None:
    assert lengths_apart(15.98, 16.0) == ("15.98 mm (0.629 in)", "16.00 mm (0.630 in)")
    assert lengths_apart(12.0, 16.0) == ("12.0 mm (0.47 in)", "16.0 mm (0.63 in)")
    assert figures_apart(0.34498, 0.345, 3) == ("0.34498", "0.34500")
    assert shares_apart(0.248, 0.25) == ("24.8%", "25.0%")
    assert shares_apart(0.1, 0.25) == ("10%", "25%")
    assert mm_apart(16.0, 16.0) == ("16.0 mm", "16.0 mm")  # no decimals tell one value from itself


def test_halves_are_rounded_away_from_zero() -> None:
    # in binary 5.065 lies a hair under the half; people round it up
    assert fixed(5.065, 2) == "5.07"
    assert fixed(-5.065, 2) == "-5.07"
    assert fixed(2.675, 2) == "2.68"
    assert say_mm(0.285) == "0.29 mm"
    assert trimmed(20.0, 2) == "20"
    assert trimmed(100.0, 0) == "100"


def test_lengths_and_angles_as_they_are_written_in_a_spec() -> None:
    assert written_length(92.0) == "92 mm"
    assert written_length(4.76250001) == "4.763 mm"
    assert written_length(-0.0001) == "0 mm"
    assert written_angle(22.5) == "22.5°"
    assert written_angle(360 / 7) == "51.43°"


def test_promises_go_down_and_limits_up_but_for_dust() -> None:
    assert [fixed(25.07, 1, way) for way in ("down", "nearest", "up")] == ["25.0", "25.1", "25.1"]
    assert [fixed(25.0, 1, way) for way in ("down", "nearest", "up")] == ["25.0"] * 3
    assert [fixed(0.1 + 0.2, 1, way) for way in ("down", "up")] == ["0.3", "0.3"]
    assert [fixed(-0.26, 1, way) for way in ("down", "up")] == ["-0.3", "-0.2"]
    assert [trimmed(20.06, 1, way) for way in ("down", "up")] == ["20", "20.1"]
    assert say_mm(9.9999, "down") == "9.99 mm"
    assert say_mm(9.99999999, "down") == "10.0 mm"


@given(st.floats(0.0, 2000.0), st.sampled_from(("down", "nearest", "up")))
def test_the_inches_are_those_of_the_millimetres_that_are_shown(mm: float, rounds: Rounds) -> None:
    metric, imperial = re.fullmatch(r"([0-9.]+) mm [(]([0-9.]+) in[)]", say_length(mm, rounds)).groups()  # type: ignore[union-attr]
    assert say_length(mm, rounds, "in") == f"{imperial} in ({metric} mm)"
    assert abs(float(imperial) * 25.4 - float(metric)) <= (0.127 if rounds == "nearest" else 0.254) + 1e-4
    if rounds == "down":
        assert float(imperial) * 25.4 - 1e-4 <= float(metric) <= mm + 1e-6
    if rounds == "up":
        assert float(imperial) * 25.4 + 1e-4 >= float(metric) >= mm - 1e-6


@pytest.mark.parametrize(
    ("mm", "rounds", "words"),
    [
        (4.7625, "nearest", "3/16 in"),
        (25.4, "nearest", "1 in"),
        (92.0, "nearest", "3 5/8 in"),  # 92.075
        (92.0, "down", "3.62 in"),  # 3 5/8 would promise more than there is
        (92.1, "down", "3 5/8 in"),
        (92.0, "up", "3 5/8 in"),
        (25.0, "nearest", "0.98 in"),  # 0.4 mm from an inch
        (5.0, "nearest", "0.20 in"),
        (0.05, "nearest", "0.00 in"),  # no sixteenth at all
    ],
)
def test_a_sixteenth_stands_only_where_it_is_true(mm: float, rounds: Rounds, words: str) -> None:
    assert say_inches(mm, rounds, fractions=True) == words
    assert "/" not in say_inches(mm, rounds)


def test_nearest_is_the_likely_word_and_keeps_its_capitals() -> None:
    assert nearest("bord", ["reach", "board"]) == "board"
    assert nearest("REACH", ["reach", "board"]) == "reach"
    assert nearest("reach", ["Reach", "board"]) == "Reach"
    assert nearest("zzz", ["reach", "board"]) == ""
    assert nearest("aa", ["ab", "ac"]) == nearest("aa", ["ab", "ac"])


def test_a_slip_of_a_sign_or_a_part_of_a_word_finds_the_word() -> None:
    assert nearest("Arch Top", ["arch_top", "arch"]) == "arch_top"
    assert nearest("gable", ["disc", "gable_wall"]) == "gable_wall"
    assert nearest("la", ["disc", "gable_wall"]) == ""
    assert nearest("d" * (LONGEST_WORD + 1), ["d" * LONGEST_WORD]) == ""


def test_hints() -> None:
    assert did_you_mean("bord", ["board"]) == "did you mean “board”?"
    assert did_you_mean("zzz", ["board"]) == ""


def test_one_is_not_many() -> None:
    assert [counted(n, "part") for n in (0, 1, 2, 1200)] == ["0 parts", "1 part", "2 parts", "1,200 parts"]


def test_long_lists_are_cut_off() -> None:
    assert listed([f"n{i}" for i in range(14)], 3) == "n0, n1, n2 and 11 more"
    assert cut("a" * 200) == "a" * 200
    assert cut("a" * 201) == "a" * 199 + "…"


def test_what_lies_beyond_a_limit_is_said_in_one_way() -> None:
    assert beyond("tabs of lid", "0", "1", most=False) == "tabs of lid is 0; it must be at least 1"
    assert beyond("width of disc", "6 m", "5 m", most=True) == "width of disc is 6 m; it must be at most 5 m"


def test_sizes_and_texts_have_the_unit_of_the_paper_first() -> None:
    assert say_size(187.24, 281.2) == "187.2 × 281.2 mm (7.37 × 11.07 in)"
    assert say_size(187.24, 281.2, "in") == "7.37 × 11.07 in (187.2 × 281.2 mm)"
    assert paired("4.7 to 5.3 mm", "0.186 to 0.208 in", "in") == "0.186 to 0.208 in (4.7 to 5.3 mm)"
    rule = "steel rule, 300 mm (12 in) or longer, and board of 5 mm (3/16 in)"
    assert ordered(rule, "mm") == rule
    assert ordered(rule, "in") == "steel rule, 12 in (300 mm) or longer, and board of 3/16 in (5 mm)"
    assert ordered("A (20 times), 5 mm thick (bare)", "in") == "A (20 times), 5 mm thick (bare)"
    assert (
        ordered("card, 0.3 to 0.5 mm (0.012 to 0.02 in) thick", "in") == "card, 0.012 to 0.02 in (0.3 to 0.5 mm) thick"
    )


def test_a_place_on_a_rule() -> None:
    """Half millimetres or tenths; parts of an inch, hundredths in decimals."""
    assert [ruled(mm, 0.5) for mm in (0.0, 3.1, 131.6, 9.74)] == ["0", "3", "131.5", "9.5"]
    assert ruled(131.62, 0.1) == "131.6"
    assert [ruled_inches(mm, 32) for mm in (0.0, 3.0, 25.4, 98.0, 355.99)] == ["0", "1/8", "1", "3 27/32", "14"]
    assert ruled_inches(3.0, 64) == "1/8" and ruled_inches(3.0, 100) == "0.12"


@pytest.mark.parametrize(
    ("newtons", "rounds", "said"),
    [
        (0.53, "down", "about 50 g"),
        (4.99, "down", "about 500 g"),
        (0.1, "down", "about 10 g"),
        (0.13, "nearest", "about 13 g"),
    ],
)
def test_a_push_is_said_as_what_lies_as_heavily_on_a_hand(newtons: float, rounds: Rounds, said: str) -> None:
    assert say_push(newtons, rounds) == said


def test_a_sentence_says_lengths_without_zeros_at_the_end() -> None:
    assert say_length(100.0, plain=True) == "100 mm (3 15/16 in)"
    assert say_mm(5.3, plain=True) == "5.3 mm" and say_mm(5.0) == "5.00 mm"
