"""German words taken down in English, word by word: what checks look for is found, and nothing else is changed."""

import json
from importlib.resources import files

import pytest

from publisher.proof.reading.other_words import reader_of, unbroken


@pytest.mark.parametrize(
    ("german", "read"),
    [
        ("Seite 3 von 14", "page 3 of 14"),
        ("Anzahl 2 + 1 Ersatz", "cut 2 + 1 spare"),
        ("4,7 bis 5,3 mm (0,186 bis 0,208 in)", "4.7 to 5.3 mm (0.186 to 0.208 in)"),
        ("Kachel A 2 von 6", "tile A 2 of 6"),
        ("DIESE SEITE OBEN: die Außenseite", "THIS SIDE UP: the outside face"),
        ("Pappe, 2, 3 Stück", "Pappe, 2, 3 Stück"),
    ],
)
def test_a_text_is_taken_down(german: str, read: str) -> None:
    take_down = reader_of("de")
    assert take_down is not None and take_down(german) == read


def test_lines_read_as_their_paragraph_does() -> None:
    take_down = reader_of("de-DE")
    assert take_down is not None
    text = "Dann Seite 5 lesen und mit dem Passstück von Seite 2 beginnen"
    for cut in range(1, len(text.split())):
        words = text.split()
        lines = " ".join(words[:cut]), " ".join(words[cut:])
        assert " ".join(map(take_down, lines)) == take_down(text)


def test_english_and_unknown_languages_are_read_as_they_are() -> None:
    assert reader_of("en") is None and reader_of("") is None and reader_of("xx") is None


def test_words_are_whole_again_behind_a_hyphen_at_the_end_of_a_line() -> None:
    assert unbroken("Klebe\u2010 fläche an der Falz-kante") == "Klebefläche an der Falz-kante"


def test_each_entry_is_one_word() -> None:
    table = json.loads((files("publisher.proof.reading") / "other_words.json").read_text(encoding="utf-8"))["de"]
    assert [word for word in table if not (word.isalpha() or word in "„“")] == []
