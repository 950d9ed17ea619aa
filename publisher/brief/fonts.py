"""Fonts: only TrueType outlines, known by the bytes of the file's head (OpenType 1.9, "Organization of an OpenType Font")."""

import struct

from publisher.basics import Finding, Place
from publisher.brief import rules

_TRUETYPE = (b"\x00\x01\x00\x00", b"true")
_TABLES = frozenset((b"cmap", b"glyf", b"head", b"hhea", b"hmtx", b"loca", b"maxp"))
_OTHER = {
    b"OTTO": "has PostScript outlines",
    b"ttcf": "is a collection of several fonts",
    b"wOFF": "is a web font",
    b"wOF2": "is a web font",
}


def font_finding(data: bytes, name: str, place: Place) -> Finding | None:
    """Return what keeps a font from being embedded, or None when it is a whole TrueType font."""
    if data[:4] in _OTHER:
        return _found(name, f"the font “{name}” {_OTHER[data[:4]]}", place)
    if data[:4] not in _TRUETYPE or len(data) < 12:
        return _found(name, f"the file “{name}” is not a TrueType font", place)
    count = int(struct.unpack(">H", data[4:6])[0])
    records = [data[12 + 16 * i : 28 + 16 * i] for i in range(count)]
    if any(len(record) < 16 for record in records):
        return _found(name, f"the font “{name}” is cut short", place)
    for record in records:
        offset, length = struct.unpack(">II", record[8:16])
        if offset + length > len(data):
            return _found(name, f"the font “{name}” is cut short", place)
    if not {record[:4] for record in records} >= _TABLES:
        return _found(name, f"the font “{name}” lacks outlines or letter tables", place)
    return None


def _found(name: str, message: str, place: Place) -> Finding:
    hint = "take a font file that ends in .ttf and holds one TrueType font"
    return rules.NOT_FONT.found(message, subject=name, hint=hint, place=place)
