"""Shapes of letters: the same in a subset, whatever the units of the em, other for another letter; any bytes get an answer."""

from io import BytesIO
from typing import Any

import pytest
from fontTools.subset import Subsetter
from fontTools.ttLib import TTFont
from fontTools.ttLib.scaleUpem import scale_upem

from publisher.proof.reading.glyph_shapes import letter_shapes, shapes_of

LETTERS = "cut14Aäé.-"


def subset(path: Any, units: int = 0) -> tuple[bytes, dict[str, int]]:
    """A program with a few letters, and the number of the glyph of each."""
    small = Subsetter()
    small.populate(text=LETTERS)
    with TTFont(path) as font, BytesIO() as out:
        small.subset(font)
        if units:
            scale_upem(font, units)
        font.save(out)
        order, letters = font.getGlyphOrder(), font.getBestCmap()
        return out.getvalue(), {letter: order.index(letters[ord(letter)]) for letter in LETTERS}


def test_a_letter_keeps_its_shape_in_a_subset(kit: Any) -> None:
    data, glyphs = subset(kit.font)
    shapes = shapes_of(data, tuple(glyphs.values()))
    whole = letter_shapes(kit.font.read_bytes())
    assert shapes is not None
    for letter, glyph in glyphs.items():
        found = whole.letter(letter)
        assert found is not None
        assert shapes[glyph] == found[0] != ()


def test_letters_differ_and_those_with_accents_are_put_together(kit: Any) -> None:
    whole = letter_shapes(kit.font.read_bytes())
    found = [whole.letter(letter) for letter in LETTERS]
    assert len(set(found)) == len(LETTERS)
    plain, accented = whole.letter("a"), whole.letter("ä")
    assert plain is not None and accented is not None
    assert len(accented[0]) > len(plain[0])
    assert plain[1] == accented[1] == TTFont(kit.font)["hmtx"]["a"][0] / TTFont(kit.font)["head"].unitsPerEm


def test_units_of_the_em_make_no_difference_to_whole_shapes(kit: Any) -> None:
    data, glyphs = subset(kit.font, 2000)  # twice as fine: all coordinates stay whole
    shapes, whole = shapes_of(data, (glyphs["1"],)), letter_shapes(kit.font.read_bytes()).letter("1")
    assert shapes is not None and whole is not None
    assert shapes[glyphs["1"]] == pytest.approx(whole[0])


def test_a_blank_has_no_shape_and_a_letter_that_is_not_there_none(kit: Any) -> None:
    whole = letter_shapes(kit.font.read_bytes())
    blank = whole.letter(" ")
    assert blank is not None and blank[0] == ()
    assert whole.letter("\u4e00") is None


@pytest.mark.parametrize("data", [b"", b"\x00\x01\x00\x00" + b"\xff" * 300, b"OTTO" + b"\x00" * 99])
def test_what_is_no_program_has_no_shapes(data: bytes) -> None:
    assert shapes_of(data, (1,)) is None
