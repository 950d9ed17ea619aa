"""The PDF writer: true lengths, embedded fonts, links, same bytes twice."""

from collections.abc import Callable
from dataclasses import replace
from io import BytesIO

import numpy as np
import pikepdf
import pypdf
import pypdfium2
import pytest

from publisher.basics import Box, Layer, polyline
from publisher.pages import Bookmark, Drawn, LineStyle, Pack, Stroke
from publisher.press import write_pdf


def test_a_hundred_millimetres_are_283_4646_points(make_pack: Callable[..., Pack]) -> None:
    # ISO 32000-1, 8.3.2.3: user space is 1/72 inch; 100 mm = 283.4646 pt
    line = Stroke(LineStyle("cut", 0.5), (polyline(((20.0, 20.0), (120.0, 20.0))),), Layer.OUTLINES)
    reader = pypdf.PdfReader(BytesIO(write_pdf(make_pack(line))))
    operations = pypdf.generic.ContentStream(reader.pages[0].get_contents(), reader).operations
    start = next(o for o, op in operations if op == b"m")
    end = next(o for o, op in operations if op == b"l")
    assert float(end[0]) - float(start[0]) == pytest.approx(283.464567, abs=2e-4)
    assert float(reader.pages[0].mediabox.width) == pytest.approx(595.275591, abs=1e-3)


def test_same_pack_same_bytes(make_pack: Callable[..., Pack], sample: tuple[Drawn, ...]) -> None:
    pack = make_pack(*sample, pages=3)
    assert write_pdf(pack) == write_pdf(pack)


def test_fonts_are_embedded_subsets_and_text_reads_back(
    make_pack: Callable[..., Pack], sample: tuple[Drawn, ...]
) -> None:
    data = write_pdf(make_pack(*sample))
    reader = pypdf.PdfReader(BytesIO(data))
    assert "Schleuse Ω Шлюз 50 mm" in reader.pages[0].extract_text(orientations=(90,))
    with pikepdf.open(BytesIO(data)) as pdf:
        for _, font in pdf.pages[0].obj.Resources.Font.items():
            assert "/FontFile2" in font.FontDescriptor
            assert "/ToUnicode" in font


def test_a_clip_is_written_before_the_stroke(make_pack: Callable[..., Pack]) -> None:
    line = Stroke(
        LineStyle("cut", 0.5), (polyline(((0.0, 20.0), (300.0, 20.0))),), Layer.OUTLINES, clip=Box(10, 10, 100, 100)
    )
    reader = pypdf.PdfReader(BytesIO(write_pdf(make_pack(line))))
    names = [op for _, op in pypdf.generic.ContentStream(reader.pages[0].get_contents(), reader).operations]
    assert names.index(b"W") < names.index(b"S")
    assert b"re" in names


def test_ink_ends_half_its_width_beyond_the_tip_of_an_acute_corner(make_pack: Callable[..., Pack]) -> None:
    # a tip of 12 degrees, at which a mitre would stick out by 2.4 mm
    tip = polyline(((150.0, 100.0), (50.0, 110.5), (150.0, 121.0)), True)
    page = pypdfium2.PdfDocument(write_pdf(make_pack(Stroke(LineStyle("cut", 0.5), (tip,), Layer.OUTLINES))))[0]
    dots = page.render(scale=600 / 72, grayscale=True).to_numpy()
    left = np.flatnonzero((dots < 128).any(axis=0))[0] * 25.4 / 600
    assert left == pytest.approx(50.0 - 0.25, abs=0.05)


def test_links_and_bookmarks_lead_to_pages(make_pack: Callable[..., Pack], sample: tuple[Drawn, ...]) -> None:
    reader = pypdf.PdfReader(BytesIO(write_pdf(make_pack(*sample))))
    assert reader.outline[0]["/Title"] == "Templates"
    assert reader.pages[0]["/Annots"][0].get_object()["/Subtype"] == "/Link"


def test_an_upright_rectangle_is_one_operator_and_a_turned_one_is_not(make_pack: Callable[..., Pack]) -> None:
    upright = polyline(((10.0, 10.0), (30.0, 10.0), (30.0, 15.0), (10.0, 15.0)), True)
    turned = polyline(((10.0, 50.0), (20.0, 60.0), (10.0, 70.0), (0.0, 60.0)), True)
    stroke = Stroke(LineStyle("cut", 0.5), (upright, turned), Layer.OUTLINES)
    reader = pypdf.PdfReader(BytesIO(write_pdf(make_pack(stroke))))
    operations = pypdf.generic.ContentStream(reader.pages[0].get_contents(), reader).operations
    (box,) = [[float(v) * 25.4 / 72 for v in o] for o, op in operations if op == b"re"]
    assert box == pytest.approx([10.0, 10.0, 20.0, 5.0], abs=1e-4)
    assert [op for _, op in operations].count(b"l") == 3


def test_bookmarks_of_one_page_have_their_own_parents(make_pack: Callable[..., Pack]) -> None:
    """PDFium as the outside reader: title, level, page, and the height that it scrolls to (y upward from the page's foot, in pt)."""
    marks = (
        Bookmark("Templates", 1), Bookmark("A Step", 1, 1), Bookmark("Instructions", 2), Bookmark("1 Cut", 2, 1, 250.0),
        Bookmark("2 Glue", 2, 1, 100.0),
    )  # fmt: skip
    data = write_pdf(replace(make_pack(pages=2), bookmarks=marks))
    found = []
    for mark in pypdfium2.PdfDocument(data).get_toc():
        place = mark.get_dest()
        assert place is not None
        _, at = place.get_view()
        found.append((mark.get_title(), mark.level, place.get_index(), at[1] if len(at) > 1 else None))
    steps = [pytest.approx(mm * 72 / 25.4, abs=1e-3) for mm in (250.0, 100.0)]
    assert found == [
        ("Templates", 0, 0, None), ("A Step", 1, 0, None), ("Instructions", 0, 1, None), ("1 Cut", 1, 1, steps[0]),
        ("2 Glue", 1, 1, steps[1]),
    ]  # fmt: skip
