"""Words follow each other as in a text that is known; figures and filled-in words have places; a broken word is read whole."""

from itertools import pairwise

import pytest

from publisher.basics import PaperPromise, Promises
from publisher.proof.measuring.known_words import known_by, whole_words, words_in, written_by_others

KNOWN = known_by(
    (
        "Lay it over the glue area of *.",
        "tile # (page #)",
        "The tile lies under the other.",
        "* and *",
        "Stair landing",
        "layer",
    )
)


def follow(line: str) -> bool:
    words = words_in(line)
    return all(KNOWN.follows(*pair) for pair in pairwise(words))


def test_a_figure_stands_with_its_unit_and_what_is_said_in_the_other() -> None:
    assert words_in("It measures 5.00 mm (0.197 in), 3 × 4 in.") == ["it", "measures", "#", ";"]
    assert words_in("A4 and 12") == ["#", "and", "#"]


def test_no_letters_of_a_code_are_words() -> None:
    assert words_in("version 1.0.0 · 7ef4") == ["version", "#", ";", "#"]


@pytest.mark.parametrize(
    "line",
    ["Lay it over the glue area of tile 2 (page 4).", "of tile 2 (page 4) and tile 3 (page 4)", "lies under the other"],
)
def test_a_line_of_what_is_known_is_known(line: str) -> None:
    assert follow(line)


@pytest.mark.parametrize(
    "line", ["Lay it under the glue area", "Lay over the glue area", "lies over the other", "tile 2 page (4) the"]
)
def test_a_word_that_is_exchanged_or_left_out_is_found(line: str) -> None:
    assert not follow(line)


def test_what_is_said_of_a_stop() -> None:
    assert KNOWN.follows("other", ";") and KNOWN.follows(";", "lay") and not KNOWN.follows("lies", ";")


def test_words_broken_at_the_end_of_a_line_are_whole() -> None:
    assert whole_words(["the lay\u2010", "er lies"], KNOWN.words) == [["the", "layer"], ["lies"]]
    assert whole_words(["Stai", "r", "lan", "din", "g of"], KNOWN.words) == [["stair"], [], ["landing"], [], ["of"]]
    assert whole_words(["the lay", "other"], KNOWN.words) == [["the", "lay"], ["other"]]
    assert whole_words(["under the tlle", "lies"], KNOWN.words) == [["under", "the", "tlle"], ["lies"]]


def test_the_name_of_the_paper_may_stand_where_a_name_may() -> None:
    asked = Promises("Bollard", "en", (), (), (), (), (), (), paper=PaperPromise("arch_d"))
    known = known_by(("# sheets *", "up to the arch")).more(known_by(written_by_others(asked)))
    assert known.follows("sheets", "arch") and known.follows("arch", "d")
    assert not known_by(("# sheets *", "up to the arch")).follows("arch", "d")
