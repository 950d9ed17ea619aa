"""Fonts: metrics as in the files, fallback to a design's font, letters that nothing can draw."""

from io import BytesIO

import pytest
from fontTools.ttLib import TTFont

from publisher.pages.type.fonts import Faces, face, read_face


@pytest.mark.parametrize("weight", ["regular", "bold"])
def test_widths_are_those_of_the_file(weight: str) -> None:
    mine = face(weight)  # type: ignore[arg-type]
    font = TTFont(BytesIO(mine.data))
    for letter in "AW.i–mЖΩ½→":
        glyph = font.getBestCmap()[ord(letter)]
        assert mine.widths[letter] == font["hmtx"][glyph][0] / font["head"].unitsPerEm
    assert mine.x_height == font["OS/2"].sxHeight / 1000
    assert mine.cap_height == pytest.approx(0.714)


@pytest.mark.parametrize("weight", ["regular", "bold"])
def test_latin_greek_cyrillic_and_signs_are_there(weight: str) -> None:
    mine = face(weight)  # type: ignore[arg-type]
    needed = "Łódź Ångström ñandú façade Straße Ελλάδα Україна Ёлка 1½ × 3⅛ − ± ≤ ≥ ≈ ° ′ ″ “” ‘’ … – — → ↑ ⌀ ✓ □ €"
    assert [c for c in needed if not mine.has(c)] == []


def test_figures_are_all_of_one_width() -> None:
    for weight in ("regular", "bold"):
        mine = face(weight)  # type: ignore[arg-type]
        assert len({mine.widths[c] for c in "0123456789"}) == 1


def test_a_file_that_is_no_font_is_refused() -> None:
    for data in (b"", b"not a font", face("regular").data[:300], b"\x00\x01\x00\x00" + b"\xff" * 64):
        with pytest.raises(ValueError, match="no TrueType font"):
            read_face("mine", data)


def test_letters_go_to_the_first_font_that_has_them() -> None:
    own = read_face("design 1", face("bold").data)
    only_greek = type(own)("design 1", own.data, {"\u05d0": 0.6}, 1, -0.3, 0.5, 0.7)
    faces = Faces(face("regular"), face("bold"), (only_greek,))
    assert [(f.name, t) for f, t in faces.runs("a\u05d0\u05d0b", "regular")] == [
        ("regular", "a"),
        ("design 1", "\u05d0\u05d0"),
        ("regular", "b"),
    ]
    assert faces.missing("a\u05d0b") == ""


def test_missing_letters_are_named_once() -> None:
    faces = Faces(face("regular"), face("bold"))
    assert faces.missing("a漢b字漢") == "漢字"
    assert faces.missing("plain") == ""
    assert faces.runs("漢", "bold")[0][0].name == "bold"
