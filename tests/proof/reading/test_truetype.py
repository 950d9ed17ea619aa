from io import BytesIO
from random import Random
from typing import Any

from fontTools.subset import Subsetter
from fontTools.ttLib import TTFont
from PIL import ImageFont

from publisher.proof.reading.truetype import read_program


def test_heights_agree_with_freetype(kit: Any) -> None:
    # FreeType (by Pillow) reads the same tables by a road of its own; it draws on whole dots, one to a unit of the font here
    program = read_program(kit.font.read_bytes())
    assert program is not None
    face = ImageFont.truetype(kit.font, program.units, layout_engine=ImageFont.Layout.BASIC)
    for letter in "xHoj1":
        _, top, _, _ = face.getbbox(letter, anchor="ls")
        glyph = program.glyph(ord(letter))
        assert glyph
        assert abs(program.top(glyph) * program.units + top) <= 1.0


def test_any_bytes_get_an_answer(kit: Any) -> None:
    small, dice = Subsetter(), Random(5)
    small.populate(text="xHoj1")
    with TTFont(kit.font) as font, BytesIO() as out:
        small.subset(font)
        font.save(out)
        data = out.getvalue()
    read = 0
    for _ in range(60):
        broken = bytearray(data)
        for _ in range(dice.randint(1, 12)):
            broken[dice.randrange(len(data))] = dice.randrange(256)
        read += read_program(bytes(broken)) is not None
    assert 0 < read < 60  # some can be read, some cannot, none raises


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
