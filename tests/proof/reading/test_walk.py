"""The walk follows matrices, forms, clips, layers, pictures and letters."""

from math import hypot
from typing import Any

import numpy as np
import pytest

from publisher.proof.reading.model import PageRead
from publisher.proof.reading.reader import read_file

MM = 25.4 / 72


def page_of(data: bytes) -> PageRead:
    file = read_file(data, "test.pdf")
    assert file.trouble == ""
    return file.pages[0]


def test_matrices_multiply_and_are_restored(kit: Any) -> None:
    page = page_of(kit.raw_pdf(b"q 2 0 0 2 10 0 cm q 1 0 0 1 5 5 cm 2 w 0 0 m 1 0 l S Q 0 0 m 1 0 l S Q 0 0 m 1 0 l S"))
    starts = [p.points[0] / MM for p in page.pieces]
    assert np.allclose(starts, [(20, 10), (10, 0), (0, 0)])
    assert [p.width / MM for p in page.pieces] == pytest.approx([4, 2, 1])


def test_a_stroke_under_an_uneven_matrix_has_two_widths(kit: Any) -> None:
    piece = page_of(kit.raw_pdf(b"3 0 0 0.5 0 0 cm 1 w 0 0 m 9 0 l S")).pieces[0]
    assert (piece.width / MM, piece.widest / MM) == pytest.approx((0.5, 3.0))


def test_a_form_stands_in_its_own_space_and_box(kit: Any) -> None:
    form = kit.raw_stream(b"0 0 m 100 0 l S", b"/Type /XObject /Subtype /Form /BBox [0 -5 40 5] /Matrix [2 0 0 2 7 0]")
    page = page_of(
        kit.raw_pdf(
            b"1 0 0 1 100 50 cm /F Do 0 0 m 1 1 l S", resources=b"/XObject << /F 5 0 R >>", objects=((5, form),)
        )
    )
    inner, outer = page.pieces
    assert np.allclose(inner.points / MM, [(107, 50), (307, 50)])
    assert inner.clip.box.right / MM == pytest.approx(187)
    assert np.allclose(outer.points[0] / MM, (100, 50))
    assert outer.clip.box.right == pytest.approx(page.width)


def test_a_quarter_circle_of_the_usual_bezier_is_flattened_on_the_curve(kit: Any) -> None:
    k = 0.5522847498
    content = f"300 0 m 300 {300 * k} {300 * k} 300 0 300 c S".encode()
    points = page_of(kit.raw_pdf(content)).pieces[0].points / MM
    t = np.linspace(0, 1, 5001)[:, None]
    corners = np.array(((300, 0), (300, 300 * k), (300 * k, 300), (0, 300)))
    weights = np.hstack(((1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3))
    curve = weights @ corners
    a, b = points[:-1], points[1:]
    way = b - a
    share = np.clip(((curve[:, None] - a) * way).sum(-1) / (way**2).sum(-1), 0, 1)
    away = np.hypot(*np.moveaxis(curve[:, None] - (a + share[..., None] * way), -1, 0)).min(axis=1)
    assert away.max() * MM <= 0.002


def test_closing_and_going_on_after_it(kit: Any) -> None:
    piece = page_of(kit.raw_pdf(b"0 0 m 10 0 l 10 10 l h 5 5 l 20 20 10 10 re S")).pieces[0]
    lines = [(line / MM).round(6).tolist() for line in piece.lines()]
    assert lines[0] == [[0, 0], [10, 0], [10, 10], [0, 0]]
    assert lines[1] == [[0, 0], [5, 5]]
    assert lines[2] == [[20, 20], [30, 20], [30, 30], [20, 30], [20, 20]]


def test_clips_meet(kit: Any) -> None:
    page = page_of(kit.raw_pdf(b"q 10 10 80 80 re W n 50 0 100 60 re W n 0 0 m 99 99 l S Q 0 0 m 1 1 l S"))
    box = page.pieces[0].clip.box
    assert [v / MM for v in (box.left, box.bottom, box.right, box.top)] == pytest.approx([50, 10, 90, 60])
    assert page.pieces[1].clip.box.left == 0.0


def test_greys_after_transparency(kit: Any) -> None:
    page = page_of(
        kit.raw_pdf(
            b"0.5 G /T gs 0 0 m 1 1 l S 1 0 0 RG 0 0 m 1 1 l S", resources=b"/ExtGState << /T << /CA 0.5 /LW 3 >> >>"
        )
    )
    assert [p.grey for p in page.pieces] == pytest.approx([0.75, 1 - 0.701 * 0.5])
    assert page.pieces[0].width / MM == pytest.approx(3)


def test_pictures_have_their_placed_size(kit: Any) -> None:
    image = kit.raw_stream(
        b"\x00" * 12, b"/Type /XObject /Subtype /Image /Width 4 /Height 3 /BitsPerComponent 8 /ColorSpace /DeviceGray"
    )
    page = page_of(
        kit.raw_pdf(
            b"q 0 72 -144 0 200 100 cm /I Do Q q 36 0 0 36 0 0 cm BI /W 2 /H 2 /BPC 8 /CS /G ID abcd EI Q",
            resources=b"/XObject << /I 5 0 R >>",
            objects=((5, image),),
        )
    )
    turned, inline = page.images
    assert (turned.across, turned.down) == pytest.approx((25.4, 50.8))
    assert (turned.pixels_across, turned.pixels_down) == (4, 3)
    assert (inline.across, inline.pixels_across) == (pytest.approx(12.7), 2)


def test_layers_that_are_off_hide_what_lies_on_them(kit: Any) -> None:
    layers = (
        b"/OCProperties << /OCGs [6 0 R 7 0 R 8 0 R] /D << /OFF [6 0 R] /AS [<< /Event /Print /OCGs [8 0 R] >>] >> >>"
    )
    names = b"/Properties << /Off 6 0 R /On 7 0 R /Screen 8 0 R /Both 9 0 R >>"
    objects = (
        (6, b"<< /Type /OCG /Name (Notes) >>"),
        (7, b"<< /Type /OCG /Name (Outlines) >>"),
        (8, b"<< /Type /OCG /Name (Screen) /Usage << /Print << /PrintState /OFF >> >> >>"),
        (9, b"<< /Type /OCMD /OCGs [6 0 R 7 0 R] /P /AllOn >>"),
    )
    content = b"".join(b"/OC /%s BDC 0 0 m 1 1 l S EMC " % n for n in (b"Off", b"On", b"Screen", b"Both"))
    page = page_of(kit.raw_pdf(content, catalogue=layers, resources=names, objects=objects))
    assert [p.visible for p in page.pieces] == [False, True, False, False]
    assert set(page.hidden_layers) == {"Notes", "Screen"}


def test_letters_of_an_embedded_font_have_text_place_and_size(kit: Any) -> None:
    pack = kit.good()
    pack.sheets = pack.sheets[1:2]
    pack.sheets[0].items = {"words": kit.words("Turn ą “x”", 30.0, 40.0, 5.0)}
    run = page_of(pack.write()).texts[0]
    assert run.text == "Turn ą “x”"
    assert (run.x, run.y, run.size) == pytest.approx((30.0, 40.0, 5.0), abs=1e-3)
    assert run.x_height == pytest.approx(5.0 * 0.536, abs=1e-3)
    assert 20 < hypot(run.end_x - run.x, run.end_y - run.y) < 30
    assert run.broken == 0


def test_a_change_of_scale_inside_a_path_is_named(kit: Any) -> None:
    page = page_of(kit.raw_pdf(b"0 0 m 0.5 0 0 0.5 0 0 cm 10 10 l S"))
    assert any("middle of a line" in what for what in page.unread)


def test_operators_are_counted_inside_forms_too(kit: Any) -> None:
    form = kit.raw_stream(b"0 0 m 1 0 l S", b"/Type /XObject /Subtype /Form /BBox [0 0 9 9]")
    page = page_of(kit.raw_pdf(b"/F Do /F Do 0 0 5 5 re f", resources=b"/XObject << /F 5 0 R >>", objects=((5, form),)))
    assert page.operators == 8


# ISO 32000-1, annex A, all operators, each with operands that do no harm
OPERATORS = (
    "0 0 m 9 9 l b", "0 0 m 9 9 l B", "0 0 m 9 9 l b*", "0 0 m 9 9 l B*", "/Span << >> BDC EMC", "/Span BMC EMC", "BX EX",
    "BI /W 1 /H 1 /CS /G /BPC 8 ID \x00 EI", "BT ET", "0 0 m 1 1 2 2 3 3 c S", "1 0 0 1 0 0 cm", "/DeviceGray CS", "/DeviceGray cs",
    "[] 0 d", "9 0 d0", "9 0 0 0 9 9 d1", "/X Do", "/Span << >> DP", "0 0 m 9 9 l f", "0 0 m 9 9 l F", "0 0 m 9 9 l f*", "0 G", "0 g",
    "/S gs", "0 0 m h S", "0.5 i", "0 j", "0 J", "0 0 0 1 K", "0 0 0 1 k", "10 M", "/Span MP", "0 0 m n", "q Q", "0 0 9 9 re S",
    "0 0 0 RG", "0 0 0 rg", "/Perceptual ri", "0 0 m 9 9 l s", "0 SC", "0 sc", "0 SCN", "0 scn", "BT T* 0 Tc 1 2 Td 1 2 TD 9 TL ET",
    "BT 1 0 0 1 0 0 Tm 0 Tr 0 Ts 0 Tw 100 Tz ET", "0 0 m 1 1 2 2 v S", "0 0 m 1 1 2 2 y S", "2 w", "0 0 9 9 re W n", "0 0 9 9 re W* n",
)  # fmt: skip


@pytest.mark.parametrize("code", OPERATORS)
def test_every_operator_of_the_standard_is_known(kit: Any, code: str) -> None:
    assert read_file(kit.raw_pdf(code.encode()), "test.pdf").pages[0].unread == ()


@pytest.mark.parametrize(("code", "resources", "objects", "words"), [
    ("0 0 9 9 re xf", b"", (), "does not have"),
    ("/S sh", b"/Shading << /S << >> >>", (), "shading"),
    ("BT /T 9 Tf (a) Tj ET", b"/Font << /T << /Type /Font /Subtype /Type3 /FontMatrix [1 0 0 1 0 0] >> >>", (), "Type 3"),
    ("BT /T 9 Tf 7 Tr (a) Tj ET", b"/Font << /T << /Type /Font /Subtype /TrueType >> >>", (), "cut off"),
    ("BT /T 9 Tf 5 Tr (a) Tj ET", b"/Font << /T << /Type /Font /Subtype /TrueType >> >>", (), "cut off"),
    ("/X Do", b"/XObject << /X 5 0 R >>", (b"/Subtype /PS",), "another"),
    ("/X Do", b"/XObject << /X 5 0 R >>", (b"/Subtype /Form /BBox [0 0 9 9] /Ref << >>",), "another"),
    ("/X Do", b"/XObject << /X 5 0 R >>", (b"/Subtype /Image /Width 1 /Height 1 /Alternates []",), "another"),
    ("/X Do", b"/XObject << /X 5 0 R >>", (b"/Subtype /Image /Width 1 /Height 1 /OPI << >>",), "another"),
])  # fmt: skip
def test_what_readers_treat_in_different_ways_is_named(
    kit: Any, code: str, resources: bytes, objects: tuple[bytes, ...], words: str
) -> None:
    streams = tuple((5 + i, kit.raw_stream(b"", entries)) for i, entries in enumerate(objects))
    page = read_file(kit.raw_pdf(code.encode(), resources=resources, objects=streams), "test.pdf").pages[0]
    assert any(words in what for what in page.unread)
