"""Words of ours said in German: whole, by sentences, by lists; figures; names; what has no row."""

import pytest

from publisher.pages.model import Words
from publisher.pages.type import BODY, Faces, Setter, Tongue, face
from publisher.pages.type.text import HYPHEN


@pytest.fixture
def tongue() -> Tongue:
    return Tongue("de", ("Zollhaus", "Giebelwand", "Seitenwand"))


@pytest.mark.parametrize(
    ("english", "german"),
    [
        ("Print plan", "Druckplan"),
        ("page 3 of 14", "Seite 3 von 14"),
        ("4.7 to 5.3 mm (0.186 to 0.208 in)", "4,7 bis 5,3 mm (0,186 bis 0,208 in)"),
        ("finished 130.0 × 135.0 mm", "fertig 130,0 × 135,0 mm"),
        ("Then read page 5. Print plan", "Dann Seite 5 lesen. Druckplan"),
        ("pencil, blunt pencil, steel rule", "Bleistift, stumpfer Bleistift, Stahllineal"),
        ("Templates: A Giebelwand · B Seitenwand", "Schablonen: A Giebelwand · B Seitenwand"),
        ("A · cut 2 + 1 spare · THIS SIDE UP", "A · Anzahl 2 + 1 Ersatz · DIESE SEITE OBEN"),
        ("version 1.0.0", "Version 1.0.0"),
        ("12 or more A, or 11 C", "12 oder mehr A, oder 11 C"),
        ("Caution: read “Knife” on page 5.", "Vorsicht: „Messer“ auf Seite 5 lesen."),
        ("Print list: 2, 7-8", "Druckliste: 2, 7-8"),
        ("1 sheet of 297 x 420 mm, or 1 sheet of 50 x 70 cm", "1 Tafel zu 297 x 420 mm, oder 1 Tafel zu 50 x 70 cm"),
        (
            "2 sheets of 20 x 30 in, or 3 sheets of 297 x 420 mm; takes board up to 5.3 mm (0.208 in)",
            "2 Tafeln zu 20 x 30 in, oder 3 Tafeln zu 297 x 420 mm; nimmt Platten bis 5,3 mm (0,208 in)",
        ),
        ("3 sheets of 50 x 70 cm", "3 Tafeln zu 50 x 70 cm"),
        (
            "Page 4. Outlines at true size: B2 Seitenwand, piece 2; C1 Plate behind B1 and B2",
            "Seite 4. Umrisse in wahrer Größe: B2 Seitenwand, Stück 2; C1 Lasche hinter B1 und B2",
        ),
    ],
)
def test_a_text_in_german(tongue: Tongue, english: str, german: str) -> None:
    assert tongue.say(english) == german
    assert not tongue.missing


def test_what_is_said_already_stays(tongue: Tongue) -> None:
    said = tongue.say("Then read page 5.")
    assert tongue.say(said) == said
    assert not tongue.missing


def test_a_text_without_a_row_stays_english_and_is_told(tongue: Tongue) -> None:
    assert tongue.say("Whistle 2.5 mm of tune.") == "Whistle 2,5 mm of tune."
    assert list(tongue.missing) == ["Whistle {} of tune."]


def test_a_name_that_nobody_wrote_fills_no_place(tongue: Tongue) -> None:
    tongue.say("Templates: A Unknown thing")
    assert list(tongue.missing) == ["Templates: A Unknown thing"]


def test_words_of_the_designer_keep_all_but_their_decimal_signs(tongue: Tongue) -> None:
    assert tongue.keep("Print 2.5 mm; version 1.0.0") == "Print 2,5 mm; version 1.0.0"
    assert tongue.say("Print 2,5 mm; version 1.0.0") == "Print 2,5 mm; version 1.0.0"
    assert not tongue.missing


def test_words_with_several_meanings(tongue: Tongue) -> None:
    assert (tongue.say("cut 4"), tongue.meant("straight cut", "cut 4")) == ("Anzahl 4", "Schnitt 4")
    assert tongue.say("Schnitt 4") == "Schnitt 4"


def test_a_key_of_the_spec_may_be_a_word_of_ours(tongue: Tongue) -> None:
    assert (tongue.maybe("foam"), tongue.maybe("gizmo 1.5")) == ("Schaum", "gizmo 1,5")
    assert not tongue.missing


def test_page_numbers_are_found_and_stay_with_their_word(tongue: Tongue) -> None:
    assert [found[1] for found in tongue.page_words.finditer("Seite 3, dann Seiten 4-6 und 9")] == ["3", "4-6 und 9"]
    assert tongue.bound("auf Seite 3") == "auf Seite\u00a03"


@pytest.mark.parametrize(
    ("english", "german"),
    [
        ("cut\u00a011: this is 10\u00a0of\u00a011", "Anzahl\u00a011: dies ist 10\u00a0von\u00a011"),
        ("cut\u00a04\u00a0+\u00a01\u00a0spare", "Anzahl\u00a04\u00a0+\u00a01\u00a0Ersatz"),
        (
            "cut\u00a01\u00a0+\u00a01\u00a0spare: this is 2\u00a0of\u00a02, a spare",
            "Anzahl\u00a01\u00a0+\u00a01\u00a0Ersatz: dies ist 2\u00a0von\u00a02, ein Ersatz",
        ),
        ("finished 130.0\u00a0×\u00a0135.0\u00a0mm", "fertig 130,0\u00a0×\u00a0135,0\u00a0mm"),
        ("B Giebelwand, cut\u00a02", "B Giebelwand, Anzahl\u00a02"),
    ],
)
def test_words_that_stay_on_one_line_do_so_in_german(tongue: Tongue, english: str, german: str) -> None:
    assert tongue.say(english) == german
    assert tongue.say(german) == german
    assert not tongue.missing


def test_a_label_breaks_no_count_of_copies(tongue: Tongue) -> None:
    setter = Setter(Faces(face("regular"), face("bold")), tongue)
    text = "cut\u00a011: this is 10\u00a0of\u00a011"
    wide = setter.wide("Anzahl 11: dies ist 10", BODY) + 0.1  # the rest has no room
    block = setter.paragraph(text, BODY, 0.0, 0.0, wide)
    lines = [thing.text for thing in block.drawn if isinstance(thing, Words)]
    assert lines == ["Anzahl 11: dies ist", "10 von 11"]


def test_a_place_holds_no_further_sentences(tongue: Tongue) -> None:
    """A row for “glue to {part}” took the whole of a compass strip's words for a part."""
    said = tongue.say("Glue to card. Pin through the cross, pencil through the hole; cut on the pencil line.")
    assert said == "Auf Karton kleben. Nadel durchs Kreuz, Bleistift durchs Loch; auf der Bleistiftlinie schneiden."


def test_a_line_of_a_broken_text_is_known_as_pages_promise_it(tongue: Tongue) -> None:
    tongue.known("9\u00a0von", "12")
    for line in ("9\u00a0von", "9 von", "12"):
        assert tongue.say(line) == line
    assert not tongue.missing


def test_long_words_are_parted_between_syllables(tongue: Tongue) -> None:
    setter = Setter(Faces(face("regular"), face("bold")), tongue)
    tongue.keep("Bleistiftschablonenlinie")
    first, *_, last = setter.lines("Bleistiftschablonenlinie", BODY, 22.0)
    assert first.endswith(HYPHEN) and len(first) - 1 in tongue.hyphens("Bleistiftschablonenlinie")
    assert (
        "".join(setter.lines("Bleistiftschablonenlinie", BODY, 22.0)).replace(HYPHEN, "") == "Bleistiftschablonenlinie"
    )
    assert not last.endswith(HYPHEN)


def test_english_is_set_as_it_is_given() -> None:
    setter = Setter(Faces(face("regular"), face("bold")))
    assert setter.say("Print plan") == setter.meant("straight cut", "Print plan") == "Print plan"
    assert setter.lines("Print plan", BODY, 100.0) == ("Print plan",)


def test_a_count_before_a_name_with_a_figure_in_it_is_said() -> None:
    """A part called “Wall 1” whose count finds no room beside its letter: the name is the designer’s, the count needs no words."""
    tongue = Tongue("de", ["Wall 1"])
    assert tongue.say("2 × Wall 1") == "2 × Wall 1" and not tongue.missing


@pytest.mark.parametrize(
    "what",
    [
        "slot of part A for the tab of part B",
        "slot of part A in which part B crosses it",
        "slot of part A for the rib that crosses it",
        "rabbet of part A",
        "length of part A round its tube",
        "opening of part A for the board of part B",
        "opening of part A for the post, part B, from corner to corner",
    ],
)
@pytest.mark.parametrize("board", ["thinner", "thicker", "thinner or thicker"])
def test_whatever_fails_first_in_other_board_is_said_in_german(what: str, board: str) -> None:
    tongue = Tongue("de")
    said = tongue.say(f"In {board} board the {what} is the first that no longer fits.")
    assert not tongue.missing and "Teil A" in said and "part" not in said and "first" not in said


@pytest.mark.parametrize(
    ("english", "german"),
    [
        ("up to 3.9 mm (0.153 in)", "bis 3,9 mm (0,153 in)"),
        ("of 4.7 mm (0.186 in) or more", "zu 4,7 mm (0,186 in) oder mehr"),
        (
            "1 sheet of 20 x 30 in; takes board up to 3.9 mm (0.153 in)",
            "1 Tafel zu 20 x 30 in; nimmt Platten bis 3,9 mm (0,153 in)",
        ),
        (
            "Some boards sold as 5 mm are thinner (usually 4.8 to 5.2 mm): measure.",
            "Manche als 5 mm verkaufte Platten sind dünner (meist 4,8 bis 5,2 mm): messen.",
        ),
    ],
)  # fmt: skip
def test_boards_with_one_limit_are_said_in_german(english: str, german: str) -> None:
    tongue = Tongue("de")
    assert tongue.say(english) == german and not tongue.missing


def test_the_version_of_a_licence_keeps_its_point() -> None:
    """4.0 behind a name and a hyphen counts no millimetres."""
    assert Tongue("de").figures("CC-BY-4.0, 4.0 mm, 3.5-4.0 mm") == "CC-BY-4.0, 4,0 mm, 3,5-4,0 mm"
