"""Any bytes at all may come in; pages are read in mm as a viewer shows them."""

import random
import zlib
from typing import Any

import numpy as np
import pytest

from publisher.proof import prove
from publisher.proof.reading.model import PageRead
from publisher.proof.reading.reader import read_file

MM = 25.4 / 72


def one_page(data: bytes) -> PageRead:
    file = read_file(data, "test.pdf")
    assert file.trouble == ""
    return file.pages[0]


def first_line(page: PageRead) -> Any:
    return page.pieces[0].points / MM


@pytest.mark.parametrize(
    ("page", "expected", "size"),
    [
        (b"", ((0, 0), (100, 50)), (595.2756, 841.8898)),
        (b"/Rotate 90", ((0, 595.2756), (50, 495.2756)), (841.8898, 595.2756)),
        (b"/Rotate 180", ((595.2756, 841.8898), (495.2756, 791.8898)), (595.2756, 841.8898)),
        (b"/Rotate 270", ((841.8898, 0), (791.8898, 100)), (841.8898, 595.2756)),
        (b"/UserUnit 2", ((0, 0), (200, 100)), (1190.5512, 1683.7796)),
        (b"/CropBox [10 20 300 400]", ((-10, -20), (90, 30)), (290, 380)),
    ],
)
def test_places_are_those_that_a_viewer_shows(
    kit: Any, page: bytes, expected: tuple[tuple[float, float], ...], size: tuple[float, float]
) -> None:
    read = one_page(kit.raw_pdf(b"0 0 m 100 50 l S", page=page))
    assert np.allclose(first_line(read), expected)
    assert (read.width / MM, read.height / MM) == pytest.approx(size)


def test_boxes_are_inherited_from_the_page_tree(kit: Any) -> None:
    data = kit.raw_pdf(b"", pages=b"<< /Type /Pages /Kids [3 0 R] /Count 1 /CropBox [0 0 100 200] /Rotate 90 >>")
    read = one_page(data)
    assert (read.width / MM, read.height / MM) == pytest.approx((200, 100))


def test_preferences_title_and_language(kit: Any) -> None:
    pack = kit.good()
    file = read_file(pack.write(), "good.pdf")
    assert (file.print_scaling, file.enforced, file.duplex, file.pick_tray) == (
        "None",
        ("PrintScaling",),
        "Simplex",
        True,
    )
    assert (file.title, file.language) == (pack.promises.title, "en")


@pytest.fixture(scope="module")
def odd_files(kit: Any) -> dict[str, bytes]:
    """Files that nobody should have made, by name."""
    good = kit.good().write()
    noise = random.Random(7)
    bomb = zlib.compress(b"0 0 m 1 1 l S " * 3_000_000, 9)
    form = b"/Type /XObject /Subtype /Form /BBox [0 0 99 99] /Resources << /XObject << /F 5 0 R >> >>"
    corners = b"".join(b"%d %d l " % (noise.randrange(600), noise.randrange(600)) for _ in range(4000))
    files = {
        "nothing": b"",
        "text": b"hello",
        "only a header": b"%PDF-1.7\n",
        "noise": b"%PDF-1.7\n" + noise.randbytes(200_000),
        "bomb": kit.raw_pdf(
            b"/F Do",
            resources=b"/XObject << /F 5 0 R >>",
            objects=((5, kit.raw_stream(bomb, b"/Filter /FlateDecode /Subtype /Form")),),
        ),
        "two contents": kit.raw_pdf(
            page=b"/Contents 5 0 R", objects=((5, kit.raw_stream(bomb, b"/Filter /FlateDecode")),)
        ),
        "form in itself": kit.raw_pdf(
            b"/F Do", resources=b"/XObject << /F 5 0 R >>", objects=((5, kit.raw_stream(b"/F Do /F Do", form)),)
        ),
        "page tree in itself": kit.raw_pdf(pages=b"<< /Type /Pages /Kids [2 0 R 2 0 R] /Count 9999 >>"),
        "pages counted wrong": kit.raw_pdf(pages=b"<< /Type /Pages /Kids [3 0 R] /Count 9999 >>"),
        "many pages": kit.raw_pdf(pages=b"<< /Type /Pages /Kids [" + b"3 0 R " * 900 + b"] /Count 900 >>"),
        "no page": kit.raw_pdf(pages=b"<< /Type /Pages /Kids [] /Count 0 >>"),
        "huge page": kit.raw_pdf(b"0 0 m 9 9 l S", box=b"[0 0 1000000000 1000000000]"),
        "odd box": kit.raw_pdf(b"0 0 m 9 9 l S", box=b"[0 (x) 5]"),
        "huge numbers": kit.raw_pdf(b"9" * 400 + b" 0 m 9 9 l S"),
        "q without end": kit.raw_pdf(b"q " * 600_000),
        "marks without end": kit.raw_pdf(b"/A BMC " * 5000 + b"0 0 m 1 1 l S"),
        "crossing clip": kit.raw_pdf(b"0 0 m " + corners + b"W n 0 0 m 500 500 l S"),
        "crossing cover": kit.raw_pdf(b"0 0 m 500 500 l S 1 g 0 0 m " + corners + b"f"),
        "odd catalogue": kit.raw_pdf(
            catalogue=b"/OCProperties [1] /ViewerPreferences 3 /Names 4 /AcroForm [] /OpenAction 7"
        ),
        "odd operands": kit.raw_pdf(b"[(a) /b] 0 d (x) w /n m l 1 re (a) Tj Q Q EMC /X Do BI ID EI"),
    }
    for i in range(6):
        files[f"cut {i}"] = good[: noise.randrange(len(good))]
        spoiled = bytearray(good)
        for _ in range(300):
            spoiled[noise.randrange(len(good))] = noise.randrange(256)
        files[f"spoiled {i}"] = bytes(spoiled)
    return files


def test_any_file_gets_an_answer_in_words(
    kit: Any, odd_files: dict[str, bytes], capfd: pytest.CaptureFixture[str]
) -> None:
    promises = kit.good().promises
    for name, data in odd_files.items():
        for held_to in (None, promises):
            proof = prove(data, held_to, f"{name}.pdf")
            assert proof.findings, name
            assert all(f.message and "Error" not in f.message for f in proof.findings), name
    said = capfd.readouterr()
    assert said.out == ""
    assert said.err == ""


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("nothing", "empty"),
        ("text", "not a PDF"),
        ("bomb", "more than 16 MB"),
        ("many pages", "900 pages"),
        ("no page", "no pages"),
        ("cut 0", "cut short"),
    ],
)
def test_the_reason_is_named(odd_files: dict[str, bytes], name: str, words: str) -> None:
    assert words in read_file(odd_files[name], name).trouble


def test_a_file_that_we_did_not_make_is_judged_as_far_as_that_goes(kit: Any) -> None:
    proof = prove(kit.good().write(), None, "other.pdf")
    assert proof.findings == ()
    assert "Outlines as promised" in proof.unjudged
    assert "One page size, from the origin" in proof.judged
    assert proof.measured == ()
