from typing import Any

from fontTools.ttLib import TTFont

from publisher.proof.reading.truetype import read_program


def test_heights_agree_with_a_general_font_library(kit: Any) -> None:
    # fontTools reads the same tables by a road of its own
    program = read_program(kit.font.read_bytes())
    font = TTFont(kit.font)
    assert program is not None
    assert program.units == font["head"].unitsPerEm
    names = font.getGlyphOrder()
    for letter in "xHoj1":
        name = font.getBestCmap()[ord(letter)]
        assert program.top(names.index(name)) == font["glyf"][name].yMax / program.units
        assert program.glyph(ord(letter)) == names.index(name)


def test_the_x_height_of_the_font_of_the_tests(kit: Any) -> None:
    program = read_program(kit.font.read_bytes())
    assert program is not None
    assert program.top(program.glyph(ord("x")) or 0) == TTFont(kit.font)["OS/2"].sxHeight / program.units


def test_a_letter_that_is_not_there_is_glyph_0(kit: Any) -> None:
    program = read_program(kit.font.read_bytes())
    assert program is not None
    assert program.glyph(0x4E00) == 0


def test_what_is_no_font_is_none(kit: Any) -> None:
    data = kit.font.read_bytes()
    assert read_program(b"") is None
    assert read_program(b"OTTO" + data[4:]) is None
    assert read_program(data[:200]) is None
    assert read_program(b"\x00\x01\x00\x00" + b"\xff" * 300) is None
