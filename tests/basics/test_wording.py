"""Lengths, lists and nearest words, as every room but the judges says them."""

import math

import pytest

from publisher.basics.wording import (
    LONGEST_WORD,
    cut,
    did_you_mean,
    fixed,
    listed,
    nearest,
    say_length,
    say_mm,
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


def test_long_lists_are_cut_off() -> None:
    assert listed([f"n{i}" for i in range(14)], 3) == "n0, n1, n2 and 11 more"
    assert cut("a" * 200) == "a" * 200
    assert cut("a" * 201) == "a" * 199 + "…"
