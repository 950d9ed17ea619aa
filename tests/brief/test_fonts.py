"""Fonts: what is no whole TrueType font is named for what it is; of a good one nothing stays but its letters."""

from io import BytesIO

import pytest
from fontTools.ttLib import TTFont

from publisher.basics import Finding, Place
from publisher.brief.fonts import plain_font
from tests.odd_fonts import BOLD, LETTERS, lettering

PLACE = Place("spec.yaml", 3, 7)


def _plain(data: bytes, name: str = "a.ttf") -> TTFont:
    found = plain_font(data, name, PLACE)
    assert isinstance(found, bytes), found
    return TTFont(BytesIO(found))


def _refused(data: bytes) -> Finding:
    found = plain_font(data, "a.ttf", PLACE)
    assert isinstance(found, Finding)
    assert found.place == PLACE
    return found


def _changed(**tables: object) -> bytes:
    """Return the font with other values in its tables: ``head_unitsPerEm=0``."""
    font = TTFont(BytesIO(lettering()), recalcBBoxes=False)
    for name, value in tables.items():
        table, _, what = name.partition("_")
        setattr(font[table], what, value)
    out = BytesIO()
    font.save(out)
    return out.getvalue()


def test_a_good_font_keeps_its_letters_their_widths_and_outlines_and_nothing_else() -> None:
    before, after = TTFont(BytesIO(lettering())), _plain(lettering())
    assert after.getBestCmap().keys() == set(map(ord, LETTERS))
    for code, name in before.getBestCmap().items():
        mine = after.getBestCmap()[code]
        assert after["hmtx"][mine] == before["hmtx"][name]
        assert (
            after["glyf"][mine].getCoordinates(after["glyf"])[0]
            == before["glyf"][name].getCoordinates(before["glyf"])[0]
        )
    assert {"fpgm", "prep", "cvt ", "GSUB", "GPOS", "kern"}.isdisjoint(after.keys())


def test_a_whole_font_of_a_thousand_letters_keeps_them_all() -> None:
    data = BOLD.read_bytes()
    assert _plain(data).getBestCmap().keys() == TTFont(BytesIO(data)).getBestCmap().keys()


@pytest.mark.parametrize("said", ["Odd (Bold) [x] <y> {z}/%", "", "NotoSans-Regular", "é" * 200, "a b\tc"])
def test_a_font_has_a_plain_name_of_its_own_whatever_it_calls_itself(said: str) -> None:
    data = lettering(ps_name=said)
    names = [str(_plain(data, file)["name"].getDebugName(6)) for file in ("a.ttf", "b.ttf", "a.ttf")]
    assert names[0] == names[2] != names[1]
    assert names[0].replace("-", "").isalnum()
    assert names[0].isascii()
    assert len(names[0]) < 60


@pytest.mark.parametrize(
    ("data", "words"),
    [
        (b"OTTO" + lettering()[4:], "PostScript"),
        (b"ttcf" + lettering()[4:], "collection"),
        (b"wOF2" + lettering()[4:], "web font"),
        (b"", "not a TrueType font"),
        (b"\0\1\0\0", "not a TrueType font"),
        (b"hello, this is no font at all", "not a TrueType font"),
        (lettering()[:-40], "cut short"),
        (lettering()[:40], "damaged"),
        (lettering().replace(b"hmtx", b"hmty", 1), "lacks outlines"),
        (b"\0\1\0\0" + b"\xff\xff" + bytes(6), "damaged"),
        (_changed(head_unitsPerEm=0), "no size"),
        (_changed(hhea_ascent=30_000), "no sensible height"),
    ],
)
def test_other_files_are_named_for_what_they_are(data: bytes, words: str) -> None:
    finding = _refused(data)
    assert finding.check == "brief/not-a-font"
    assert words in finding.message
    assert ".ttf" in finding.hint


def _with_letter(change: str) -> bytes:
    """Return the font with one letter spoilt: put together from itself, empty, or five em wide."""
    font = TTFont(BytesIO(lettering()), recalcBBoxes=False)
    put_together = next(n for n in font["glyf"].keys() if font["glyf"][n].isComposite())  # noqa: SIM118
    if change == "endless":
        font["glyf"][put_together].components[0].glyphName = put_together
    elif change == "wide":
        font["hmtx"][put_together] = (5 * font["head"].unitsPerEm, 0)
    else:
        font["glyf"][put_together] = type(font["glyf"][put_together])()
    out = BytesIO()
    font.save(out)
    return out.getvalue()


def test_a_letter_put_together_from_itself_is_found() -> None:
    assert "from itself" in _refused(_with_letter("endless")).message


@pytest.mark.parametrize("change", ["wide", "empty"])
def test_a_letter_that_no_page_could_show_is_left_out(change: str) -> None:
    assert len(_plain(_with_letter(change)).getBestCmap()) == len(LETTERS) - 1


@pytest.mark.parametrize(
    ("fs_type", "words"),
    [(0x0002, "must not be embedded"), (0x0200, "bitmaps"), (0x0104, "as a whole"), (0x0102, "must not be embedded")],
)
def test_what_the_maker_forbids_is_said(fs_type: int, words: str) -> None:
    finding = _refused(lettering(fs_type))
    assert finding.check == "brief/font-rights"
    assert words in finding.message
    assert "licence" in finding.hint


@pytest.mark.parametrize("fs_type", [0x0000, 0x0004, 0x0008, 0x0006])
def test_preview_and_editing_allow_a_pack(fs_type: int) -> None:
    """OpenType 1.9, fsType: 4 preview and print, 8 editable; of several bits, which old files have, the softest counts."""
    assert _plain(lettering(fs_type)).getBestCmap()


def test_a_letter_stands_where_its_outline_says() -> None:
    """Readers of fonts shift a letter whose side bearing says another left side, each in its own way; ours says none."""
    font = TTFont(BytesIO(lettering()))
    name = font.getBestCmap()[ord(LETTERS[0])]
    advance, _ = font["hmtx"].metrics[name]
    font["hmtx"].metrics[name] = (advance, 555)
    out = BytesIO()
    font.save(out)
    plain = _plain(out.getvalue())
    sides = plain["hmtx"].metrics[plain.getBestCmap()[ord(LETTERS[0])]]
    assert sides == (advance, plain["glyf"][plain.getBestCmap()[ord(LETTERS[0])]].xMin)
