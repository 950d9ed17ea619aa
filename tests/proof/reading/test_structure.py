"""The tagged structure as a stranger reads it: types, order and words, whatever way the marks are named; damage is survived."""

from typing import Any

import pytest

from publisher.proof.reading.model import ARTIFACT, TagRead
from publisher.proof.reading.reader import read_file

TREE = b"/StructTreeRoot 10 0 R"


def element(number: int, role: str, kids: bytes, more: bytes = b"/Pg 3 0 R") -> tuple[int, bytes]:
    return number, b"<< /Type /StructElem /S /%s /K %s %s >>" % (role.encode(), kids, more)


def read(kit: Any, content: bytes, *objects: tuple[int, bytes]) -> Any:
    font = b"/Font << /F 30 0 R >>"
    body = (30, b"<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica /Encoding /WinAnsiEncoding >>")
    data = kit.raw_pdf(b"BT /F 12 Tf " + content + b" ET", resources=font, catalogue=TREE, objects=(*objects, body))
    return read_file(data, "tagged.pdf")


def test_marks_are_found_by_bare_numbers_and_by_references(kit: Any) -> None:
    file = read(
        kit,
        b"/P <</MCID 1>> BDC (two) Tj EMC /H1 <</MCID 0>> BDC (one) Tj /Span BMC (and) Tj EMC EMC",
        (10, b"<< /Type /StructTreeRoot /K [11 0 R] >>"),
        element(11, "Document", b"[12 0 R 13 0 R]", b""),
        element(12, "H1", b"0"),
        element(13, "P", b"[<< /Type /MCR /Pg 3 0 R /MCID 1 >> 14 0 R]", b""),
        element(14, "Figure", b"[]", b"/Alt (a wall)"),
    )
    assert file.tags == (
        TagRead(0, 0, "Document", "", ""),
        TagRead(1, 1, "H1", "", "one and"),
        TagRead(0, 1, "P", "", "two"),
        TagRead(0, 2, "Figure", "a wall", ""),
    )


def test_words_know_their_marks(kit: Any) -> None:
    content = b"(bare) Tj /Artifact BMC (page 1) Tj EMC /Artifact <</Type /Pagination>> BDC (of 2) Tj EMC /P <</MCID 3>> BDC (own) Tj EMC"
    file = read(kit, content, (10, b"<< >>"))
    assert [(run.text, run.mark) for run in file.pages[0].texts] == [
        ("bare", None),
        ("page 1", ARTIFACT),
        ("of 2", ARTIFACT),
        ("own", 3),
    ]
    assert file.tags == ()


@pytest.mark.parametrize("kids", [b"11 0 R", b"[null (words) 4.5]", b"[99 0 R]", b"<< /MCID /none >>"])
def test_a_damaged_tree_is_read_as_far_as_it_goes(kit: Any, kids: bytes) -> None:
    file = read(kit, b"(words) Tj", (10, b"<< /K 11 0 R >>"), element(11, "P", kids))
    assert file.trouble == ""
    assert file.tags[0] == TagRead(1, 0, "P", "", "")


def test_elements_that_lead_into_each_other_without_end_are_not_followed_for_ever(kit: Any) -> None:
    file = read(kit, b"(words) Tj", (10, b"<< /K 11 0 R >>"), element(11, "P", b"[11 0 R 11 0 R 11 0 R]"))
    assert "tens of thousands of elements" in file.trouble
