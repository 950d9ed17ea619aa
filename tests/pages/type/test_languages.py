"""Tables of languages: complete in themselves, and what finds their rows."""

import json
from collections import Counter

import pytest

from publisher.pages.type.languages import FOLDER, PLACE, known_languages, language_titles, table_of

OTHERS = known_languages()[1:]


def rows_of(language: str) -> list[tuple[str, str]]:
    files = (file for file in sorted((FOLDER / language).glob("*.json")) if file.name != "language.json")
    return [row for file in files for row in json.loads(file.read_text("utf-8")).items()]


def test_english_comes_first_and_german_has_a_table() -> None:
    assert known_languages() == ("en", "de")
    assert language_titles() == (("en", "English"), ("de", "Deutsch"))


@pytest.mark.parametrize("language", OTHERS)
def test_every_row_has_the_same_places_in_both_forms(language: str) -> None:
    for key, form in rows_of(language):
        named = Counter(PLACE.findall(key)), Counter("" if name.isdigit() else name for name in PLACE.findall(form))
        assert named[0] == named[1], key


@pytest.mark.parametrize("language", OTHERS)
def test_no_row_stands_in_two_tables_or_says_nothing(language: str) -> None:
    rows = rows_of(language)
    assert [key for key, times in Counter(key for key, _ in rows).items() if times > 1] == []
    assert [key for key, form in rows if not form.strip()] == []


@pytest.mark.parametrize("language", OTHERS)
def test_tables_are_sorted(language: str) -> None:
    for file in sorted((FOLDER / language).glob("*.json")):
        keys = list(json.loads(file.read_text("utf-8")))
        assert file.name == "language.json" or keys == sorted(keys), file.name


def test_a_language_without_a_table_is_refused() -> None:
    with pytest.raises(FileNotFoundError):
        table_of("xx")


@pytest.mark.parametrize("language", OTHERS)
def test_every_table_has_the_words_that_stand_between_figures_and_in_lists(language: str) -> None:
    assert dict(table_of(language).language.between).keys() == {"and", "or", "to", "with"}
