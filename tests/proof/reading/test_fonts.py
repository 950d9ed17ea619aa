"""Letters, widths and missing letters of simple and composite fonts."""

from typing import Any

import pytest

from publisher.proof.reading.reader import read_file

MM = 25.4 / 72
MAP = b"beginbfchar <0003> <0041> <0004> <00660069> endbfchar"


def composite(kit: Any, content: bytes, widths: bytes = b"[3 [500 250]]") -> Any:
    return read_file(
        kit.raw_pdf(
            content,
            resources=b"/Font << /F 5 0 R >>",
            objects=(
                (
                    5,
                    b"<< /Type /Font /Subtype /Type0 /BaseFont /Sign /Encoding /Identity-H /DescendantFonts [6 0 R] /ToUnicode 7 0 R >>",
                ),
                (6, b"<< /Type /Font /Subtype /CIDFontType2 /BaseFont /Sign /DW 1000 /W " + widths + b" >>"),
                (7, kit.raw_stream(MAP)),
            ),
        ),
        "test.pdf",
    ).pages[0]


def test_two_byte_codes_widths_and_meanings(kit: Any) -> None:
    page = composite(kit, b"BT /F 10 Tf 100 200 Td <000300040003> Tj ET")
    (run,) = page.texts
    assert run.text == "AfiA"
    assert (run.end_x - run.x) / MM == pytest.approx(12.5)
    assert page.fonts[0].embedded is False
    assert page.fonts[0].meaning is True


def test_a_range_of_widths(kit: Any) -> None:
    (run,) = composite(kit, b"BT /F 10 Tf <00030004> Tj ET", b"[3 9 700]").texts
    assert (run.end_x - run.x) / MM == pytest.approx(14)


def test_a_code_without_meaning_is_broken(kit: Any) -> None:
    (run,) = composite(kit, b"BT /F 10 Tf <00030099> Tj ET").texts
    assert run.broken == 1


def test_spaces_stretch_and_rise_move_letters(kit: Any) -> None:
    runs = composite(
        kit, b"BT /F 10 Tf 2 Tc 50 Tz 3 Ts 20 TL 100 200 Td <0003> Tj [<0003> -1000 <0003>] TJ T* <0003> ' ET"
    ).texts
    assert (runs[0].end_x - runs[0].x) / MM == pytest.approx(3.5)
    assert runs[0].y / MM == pytest.approx(203)
    assert runs[1].text == "A A"
    assert (runs[1].end_x - runs[1].x) / MM == pytest.approx(3.5 + 5 + 3.5)
    assert runs[2].y / MM == pytest.approx(203 - 40)


def test_letters_of_a_standard_font_are_read_but_it_is_not_embedded(kit: Any) -> None:
    page = read_file(
        kit.raw_pdf(
            b"BT /F 10 Tf (Note) Tj ET",
            resources=b"/Font << /F << /Type /Font /Subtype /Type1 /BaseFont /Helvetica >> >>",
        ),
        "test.pdf",
    ).pages[0]
    assert page.texts[0].text == "Note"
    assert [(f.name, f.embedded) for f in page.fonts] == [("Helvetica", False)]


@pytest.mark.parametrize(
    "font",
    [
        b"<< >>", b"[1 2]", b"(x)", b"<< /Subtype /Type0 /DescendantFonts [] >>", b"<< /Subtype /Type0 /DescendantFonts 7 >>",
        b"<< /Subtype /TrueType /FirstChar (a) /Widths 7 /FontDescriptor [] /ToUnicode (x) >>",
        b"<< /Subtype /Type3 /FontMatrix [0 0 0 0 0 0] /Widths [1 2] >>",
    ],
)  # fmt: skip
def test_odd_fonts_do_no_harm(kit: Any, font: bytes) -> None:
    data = kit.raw_pdf(b"BT /F 10 Tf (Note) Tj ET 0 0 m 9 9 l S", resources=b"/Font << /F " + font + b" >>")
    file = read_file(data, "test.pdf")
    assert file.trouble == ""
    assert len(file.pages[0].pieces) == 1
