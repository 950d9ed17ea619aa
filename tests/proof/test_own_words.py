"""The list of the tool's own words has what pages say in each language; what stands in it is known, whole and in parts."""

import pytest

from publisher.proof.checks.own_words import not_known, own_texts, part_of
from publisher.proof.measuring import known_by


@pytest.mark.parametrize(
    ("language", "text"),
    [
        ("en", "cut line cut right through"),
        ("en", "* and *"),
        ("en", "Boards sold as # are usually #: measure yours."),
        ("de", "* und *"),
        ("de", "nur in einer Richtung"),
    ],
)
def test_the_list_has_a_text(language: str, text: str) -> None:
    assert text in own_texts(language)


def test_a_language_without_a_list_is_that_of_pages_without_a_table() -> None:
    assert own_texts("xx") == own_texts("en")


@pytest.mark.parametrize("language", ["de", "en"])
def test_every_text_of_the_list_is_known_by_it(language: str) -> None:
    known = known_by(own_texts(language))
    lines = [text.replace("#", "7") for text in own_texts(language) if "*" not in text]
    assert list(not_known(lines, known)) == []


@pytest.mark.parametrize(
    ("said", "left"),
    [("st", True), ("nor", True), ("thernmo", True), ("sn", False), ("rn", False), ("weir", True), ("wier", False)],
)
def test_of_a_name_that_is_broken_a_part_is_left_and_few_letters_only_at_an_end_of_it(said: str, left: bool) -> None:
    """A misprint of two letters stands somewhere in the texts of every design."""
    assert part_of(said, "northernmost lesson of the weir") is left
