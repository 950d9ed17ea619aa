"""Fonts: the table directory tells TrueType outlines from everything else."""

import struct

import pytest

from publisher.basics import Place
from publisher.brief.fonts import font_finding

PLACE = Place("spec.yaml", 3, 7)
TABLES = (b"cmap", b"glyf", b"head", b"hhea", b"hmtx", b"loca", b"maxp")


def _font(signature: bytes = b"\0\1\0\0", tables: tuple[bytes, ...] = TABLES, data: int = 4) -> bytes:
    """A font's head by hand (OpenType 1.9, table directory); each table four bytes long."""
    start = 12 + 16 * len(tables)
    records = b"".join(tag + struct.pack(">III", 0, start + 4 * i, 4) for i, tag in enumerate(tables))
    return signature + struct.pack(">HHHH", len(tables), 64, 2, 48) + records + bytes(data * len(tables))


def test_a_truetype_font_passes() -> None:
    assert font_finding(_font(), "a.ttf", PLACE) is None
    assert font_finding(_font(b"true"), "a.ttf", PLACE) is None


@pytest.mark.parametrize(
    ("data", "words"),
    [
        (_font(b"OTTO"), "PostScript"),
        (_font(b"ttcf"), "collection"),
        (_font(b"wOF2"), "web font"),
        (b"", "not a TrueType font"),
        (b"\0\1\0\0", "not a TrueType font"),
        (b"hello, this is no font at all", "not a TrueType font"),
        (_font(data=3), "cut short"),
        (_font()[:40], "cut short"),
        (_font(tables=TABLES[2:]), "lacks outlines"),
        (b"\0\1\0\0" + b"\xff\xff" + bytes(6), "cut short"),
    ],
)
def test_other_files_are_named_for_what_they_are(data: bytes, words: str) -> None:
    finding = font_finding(data, "a.ttf", PLACE)
    assert finding is not None
    assert words in finding.message
    assert finding.place == PLACE
    assert ".ttf" in finding.hint
