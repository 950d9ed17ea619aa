import pytest

from publisher.proof.reading.letter_meanings import read_meanings
from publisher.proof.reading.objects import Spent, TooMuch


def test_single_codes_and_ranges() -> None:
    table = read_meanings(
        b"2 beginbfchar <01> <0041> <02> <00660069> endbfchar "
        b"2 beginbfrange <10> <12> <0061> <20> <21> [<0078> <0079>] endbfrange",
        Spent(),
    )
    assert table == {1: "A", 2: "fi", 16: "a", 17: "b", 18: "c", 32: "x", 33: "y"}


def test_letters_beyond_the_first_plane() -> None:
    assert read_meanings(b"beginbfchar <0001> <D83DDE00> endbfchar", Spent()) == {1: "\U0001f600"}


def test_codes_that_mean_nothing_are_left_out() -> None:
    assert read_meanings(b"beginbfchar <01> <> <02> <FFFD> endbfchar", Spent()) == {}


def test_ranges_without_end_are_too_much() -> None:
    with pytest.raises(TooMuch):
        read_meanings(b"beginbfrange <00> <ffffffff> <0041> endbfrange " * 1000, Spent())
