"""Lines and paragraphs: breaks, bound units, widows, alignment."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from publisher.pages.type.fonts import Faces, face
from publisher.pages.type.styles import BODY, HEADING, NOTE, SMALL
from publisher.pages.type.text import Setter, tidy

SENTENCE = (
    "Turn each layer until its front edge meets the notch of the one below: 14 layers, 70.0 mm (2.76 in) tall. "
    "Press each down for a count of ten, and wipe away what glue comes out before it dries."
)


def test_no_line_is_wider_than_the_column_and_no_word_is_lost(setter: Setter) -> None:
    for width in (40.0, 63.0, 80.0, 187.0):
        lines = setter.lines(SENTENCE, BODY, width)
        assert max(setter.width(line, BODY) for line in lines) <= width
        assert " ".join(lines).replace("\u00a0", " ") == SENTENCE


def test_a_number_stays_with_its_unit(setter: Setter) -> None:
    for width in range(30, 120, 3):
        for line in setter.lines(SENTENCE, BODY, float(width)):
            assert not line.endswith(("70.0", "(2.76"))


def test_an_amount_is_never_broken(setter: Setter) -> None:
    said = "the towpath lies under the deck, which is 3 15/16 in (100 mm) high, 1.91 sq in (12.3 cm²) large and takes a push of 0.52 N"
    amounts = ("3 15/16 in", "(100 mm)", "1.91 sq in", "(12.3 cm²)", "0.52 N")
    for width in range(30, 150):
        lines = " | ".join(setter.lines(said, BODY, float(width))).replace("\u00a0", " ")
        assert all(amount in lines for amount in amounts), lines


def test_the_last_line_is_not_one_short_word(setter: Setter) -> None:
    words = "one two three four five six seven eight nine it"
    greedy_width = setter.width("one two three four five six seven eight nine", BODY)
    lines = setter.lines(words, BODY, greedy_width)
    assert len(lines) == 2
    assert len(lines[-1].split()) > 1


def test_lines_are_as_few_as_greedy_breaking_gives(setter: Setter) -> None:
    for width in (35.0, 55.0, 90.0):
        greedy, used = 1, 0.0
        for word in setter.lines(SENTENCE, BODY, 1e9)[0].split(" "):
            wide = setter.width(word, BODY)
            if used and used + setter.width(" ", BODY) + wide > width:
                greedy, used = greedy + 1, wide
            else:
                used += (setter.width(" ", BODY) if used else 0.0) + wide
        assert len(setter.lines(SENTENCE, BODY, width)) == greedy


def test_a_word_wider_than_the_column_is_broken_at_a_hyphen_first(setter: Setter) -> None:
    width = setter.width("lock-keeper", BODY)
    assert setter.lines("lock-keepers'-house", BODY, width)[0] == "lock-"
    long = setter.lines("m" * 400, BODY, 50.0)
    assert "".join(long) == "m" * 400
    assert max(setter.width(line, BODY) for line in long) <= 50.0


def test_blanks_and_control_letters_are_tidied() -> None:
    assert tidy(" a\tb\r\n c\x00 ") == "a b c"
    assert tidy("e\u0301") == "é"


@pytest.mark.parametrize(
    "text", ["", "one", "Cut along the line. " * 9, "A first part.\n\nA second one, of more words than a line holds."]
)
def test_a_height_is_that_of_the_paragraph_as_it_is_placed(setter: Setter, text: str) -> None:
    assert setter.height(text, BODY, 60.0) == setter.paragraph(text, BODY, 0.0, 0.0, 60.0).height


def test_paragraphs_part_at_blank_lines(setter: Setter) -> None:
    one = setter.paragraph("alpha beta", BODY, 0, 0, 100)
    two = setter.paragraph("alpha\n\nbeta", BODY, 0, 0, 100)
    assert len(one.drawn) == 1
    assert [w.text for w in two.drawn] == ["alpha", "beta"]  # type: ignore[union-attr]
    assert two.height == pytest.approx(2.5 * BODY.leading)


def test_alignment_and_turn(setter: Setter) -> None:
    wide = setter.width("Quay", HEADING)
    assert setter.line("Quay", HEADING, 100, 10, align="right")[0].x == pytest.approx(100 - wide)
    up = setter.line("Quay", HEADING, 100, 10, align="centre", turn=90.0)[0]
    assert (up.x, up.y) == pytest.approx((100, 10 - wide / 2))


def test_words_never_carry_a_letter_that_only_steers_breaking(setter: Setter) -> None:
    drawn = setter.paragraph("is 5 mm\u00a0thick, soft\u00adhyphen", NOTE, 0, 0, 100).drawn
    assert drawn[0].text == "is 5 mm thick, softhyphen"  # type: ignore[union-attr]


def test_the_first_style_that_fits(setter: Setter) -> None:
    assert setter.fitting("Toll house", (HEADING, BODY, NOTE), 1000) is HEADING
    assert setter.fitting("Toll house", (HEADING, BODY, NOTE), 15) is NOTE
    assert setter.fitting("Toll house", (HEADING, BODY, NOTE), 1) is None


@given(st.text(max_size=80), st.floats(20, 120))
def test_any_text_can_be_set(text: str, width: float) -> None:
    setter = Setter(Faces(face("regular"), face("bold")))
    block = setter.paragraph(text, BODY, 0.0, 0.0, width)
    assert block.height >= 0.0
    for thing in block.drawn:
        assert setter.width(thing.text, BODY) <= width + 1e-6 or len(thing.text) == 1  # type: ignore[union-attr]


def test_a_size_too_wide_for_its_column_comes_apart_between_number_and_unit() -> None:
    setter = Setter(Faces(face("regular"), face("bold")))
    lines = setter.lines("finished 140.0 × 80.0 mm", SMALL, setter.width("140.0 × 80.0", SMALL) + 0.2)
    assert [line.replace("\u00a0", " ") for line in lines] == ["finished", "140.0 × 80.0", "mm"]


def test_letters_that_hang_under_the_line_make_a_tail(setter: Setter) -> None:
    assert setter.tail("pages 3-4", BODY) == pytest.approx(0.24 * BODY.size)
    assert setter.tail("2 × A", BODY) == 0.0
