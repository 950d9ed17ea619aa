"""The words of proposed steps: the same forms in every language that a spec can be in."""

import re

import pytest

from publisher.joints.advice.step_words import FORMS, step_words
from publisher.pages import language_titles

LANGUAGES = [language for language, _ in language_titles()]


@pytest.mark.parametrize("language", LANGUAGES)
def test_each_language_has_each_form_with_the_same_places(language: str) -> None:
    words, english = step_words(language), step_words("en")
    assert words.language == language
    assert words._forms.keys() == english._forms.keys()
    for key, form in english._forms.items():
        if isinstance(form, str):
            there = words._forms[key]
            assert sorted(re.findall(r"{+[^}]*}+", there)) == sorted(re.findall(r"{+[^}]*}+", form)), key
            assert language == "en" or there != form or not re.search(r"[a-z]{3}", re.sub(r"{[^}]*}", "", form)), key


def test_the_forms_stand_sorted() -> None:
    keys = re.findall(r'^  "(\w+)":', FORMS.read_text("utf-8"), re.MULTILINE)
    assert keys == sorted(keys[: len(keys) // len(LANGUAGES)]) * len(LANGUAGES)


def test_lists_counts_and_names() -> None:
    english, german = step_words("en"), step_words("de-AT")
    assert (english.all_of(["a", "b", "c"]), german.all_of(["a", "b"]), german.all_of([])) == (
        "a, b and c",
        "a und b",
        "",
    )
    assert (english.often(2), english.often(9), german.often(3), german.often(12)) == (
        *("twice", "9 times"),
        *("dreimal", "12-mal"),
    )
    assert (english.called("Side wall"), english.called("PVC tube")) == ("side wall", "PVC tube")
    assert german.called("Seitenwand") == "Seitenwand"


def test_a_language_without_words_gets_english_ones() -> None:
    assert step_words("xx").language == "en"
