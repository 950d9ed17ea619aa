"""Fonts: a designer's TrueType file in, a plain font of the same letters out, which every later reader takes without surprise.

Sources: OpenType 1.9: "Organization of an OpenType Font", ``head``, ``hhea``, ``hmtx``, ``cmap``, ``glyf``, ``OS/2`` (``fsType``).
A font file is a stranger's program with hints, layout rules and names in forms that readers differ on. Only outlines, advances
and the meaning of letters are taken over; hints are not, which printers need none of.
"""

import logging
import unicodedata
from hashlib import sha256
from io import BytesIO
from string import ascii_letters, digits
from typing import Any

from publisher.basics import Finding, Place
from publisher.brief import rules

_OTHER = {
    b"OTTO": "has PostScript outlines",
    b"ttcf": "is a collection of several fonts",
    b"wOFF": "is a web font",
    b"wOF2": "is a web font",
}
_TABLES = ("cmap", "glyf", "head", "hhea", "hmtx", "loca", "maxp")
_KEPT = (*_TABLES, "name", "post")
_EMS = range(16, 16_385)  # units per em that OpenType allows
MOST_COMPONENTS = 1_000  # outlines that one letter is put together from, all in all
DEEPEST_LETTER = 8  # components inside each other
WIDEST_LETTER = 3.0  # em: what is wider fits no line of a page
LETTER_REACH = 1.0  # em that a letter's ink may reach left of, right of, or below its own space
LETTER_TOP = 1.5  # em above the line that it stands on
NAME_LETTERS = 30
_RESTRICTED, _SOFTER, _NO_SUBSET, _BITMAPS = 0x0002, 0x000C, 0x0100, 0x0200  # bits of fsType

logging.getLogger("fontTools").addHandler(
    logging.NullHandler()
)  # what it warns of is a finding here, or does not matter


class _Broken(Exception):
    """What is wrong with a font, as the end of a sentence that begins with its name."""


def plain_font(data: bytes, name: str, place: Place) -> bytes | Finding:
    """Return the font with nothing in it but outlines, advances and letters; or what keeps it from being used.

    The same bytes under the same ``name`` give the same font. It bears a name of its own, so that no two fonts of a pack, nor
    one and a built-in one, are taken for each other. Letters that no page could show (empty, or far larger than an em) are left
    out: a text that uses one is told so.
    """
    if data[:4] in _OTHER:
        return _found(name, f"the font “{name}” {_OTHER[data[:4]]}", place)
    if data[:4] not in (b"\x00\x01\x00\x00", b"true") or len(data) < 12:
        return _found(name, f"the file “{name}” is not a TrueType font", place)
    try:
        font = _opened(data)
        wrong = _rights(font, name, place)
        return wrong or _plain(font, _own_name(font, data, name))
    except _Broken as broken:
        return _found(name, f"the font “{name}” {broken}", place)
    except Exception:  # a damaged table raises whatever its reader trips over, and all mean the same to the designer
        return _found(name, f"the font “{name}” is damaged", place)


def _opened(data: bytes) -> Any:
    from fontTools.ttLib import TTFont

    font = TTFont(BytesIO(data), lazy=True, recalcBBoxes=False, recalcTimestamp=False)
    if any(entry.offset + entry.length > len(data) for entry in font.reader.tables.values()):
        raise _Broken("is cut short")
    if not set(_TABLES) <= set(font.keys()):
        raise _Broken("lacks outlines or letter tables")
    count = font["maxp"].numGlyphs
    if not count:
        raise _Broken("has no letters")
    font.setGlyphOrder([f"glyph{n:05d}" for n in range(count)])  # its own names cost much to find, and may be twisted
    return font


def _rights(font: Any, name: str, place: Place) -> Finding | None:
    """Return what the font's maker forbids (``fsType``; of several usage bits the softest counts, as before version 3)."""
    allowed = int(font["OS/2"].fsType) if "OS/2" in font else 0
    what = ""
    if allowed & _RESTRICTED and not allowed & _SOFTER:
        what = "must not be embedded in a document"
    elif allowed & _BITMAPS:
        what = "may be embedded only as bitmaps, which no page at print size can use"
    elif allowed & _NO_SUBSET:
        what = "may be embedded only as a whole, but a pack holds only the letters that it shows"
    if not what:
        return None
    return rules.FONT_RIGHTS.found(
        f"the font “{name}” {what}, says its maker (fsType {allowed:#06x})",
        subject=name,
        hint="take a font whose licence lets documents embed it, such as one under the SIL Open Font License; if the maker gave you "
        "that right, ask for a file that says so",
        place=place,
    )


def _plain(font: Any, own: str) -> bytes:
    from fontTools.ttLib import newTable

    em = font["head"].unitsPerEm
    if em not in _EMS:
        raise _Broken("says no size for its letters")
    if abs(font["hhea"].ascent) > 4 * em or abs(font["hhea"].descent) > 4 * em:
        raise _Broken("has lines of no sensible height")
    letters = _usable(font, em)
    if not letters:
        raise _Broken("has no letter that a page can show")
    for tag in [tag for tag in font.keys() if tag not in (*_KEPT, "GlyphOrder")]:  # noqa: SIM118 - a font is no mapping
        del font[tag]
    font["cmap"] = newTable("cmap")
    font["cmap"].tableVersion = 0
    font["cmap"].tables = [_letters_table(letters, 4, 1), _letters_table(letters, 12, 10)]
    font["name"] = newTable("name")
    for number in (1, 4, 6):
        font["name"].setName(own, number, 3, 1, 0x409)
    font["name"].setName("Regular", 2, 3, 1, 0x409)
    font["post"] = newTable("post")
    vars(font["post"]).update(
        formatType=3.0, italicAngle=0.0, underlinePosition=0, underlineThickness=0, isFixedPitch=0,
        minMemType42=0, maxMemType42=0, minMemType1=0, maxMemType1=0,
    )  # fmt: skip
    _plain_heads(font, letters)
    _plain_sides(font)
    maxp = font["maxp"]
    if maxp.tableVersion != 0x00010000:
        raise _Broken("has no outlines of the TrueType kind")
    maxp.maxSizeOfInstructions = maxp.maxFunctionDefs = maxp.maxInstructionDefs = maxp.maxStorage = 0
    out = BytesIO()
    font.save(out, reorderTables=None)
    return out.getvalue()


def _plain_heads(font: Any, letters: dict[int, str]) -> None:
    """Write anew what the heads of a font say of its form and its box, and leave its measures."""
    boxes = [g for name in letters.values() if (g := font["glyf"][name]).numberOfContours]
    lows, highs = [(g.xMin, g.yMin) for g in boxes] or [(0, 0)], [(g.xMax, g.yMax) for g in boxes] or [(0, 0)]
    head, line = font["head"], font["hhea"]
    head.tableVersion, head.fontRevision, head.magicNumber, head.flags = 1.0, 1.0, 0x5F0F3CF5, 0
    head.created = head.modified = head.macStyle = head.glyphDataFormat = 0
    head.lowestRecPPEM, head.fontDirectionHint = 6, 2
    (head.xMin, head.yMin), (head.xMax, head.yMax) = (
        map(min, zip(*lows, strict=True)),
        map(max, zip(*highs, strict=True)),
    )
    line.tableVersion, line.lineGap, line.metricDataFormat = 0x00010000, 0, 0
    line.reserved0 = line.reserved1 = line.reserved2 = line.reserved3 = 0
    line.caretSlopeRise, line.caretSlopeRun, line.caretOffset = 1, 0, 0


def _plain_sides(font: Any) -> None:
    """Let each letter stand where its outline says: readers shift one whose side bearing says another left side, each in its way."""
    metrics, glyphs = font["hmtx"].metrics, font["glyf"]
    for name, (advance, _) in list(metrics.items()):
        glyph = glyphs[name] if name in glyphs.glyphs else None
        metrics[name] = (advance, glyph.xMin if glyph is not None and glyph.numberOfContours else 0)


def _letters_table(letters: dict[int, str], kind: int, encoding: int) -> Any:
    """Return a table from Unicode to outlines: ``kind`` 4 for the first 65,536 letters, 12 for all."""
    from fontTools.ttLib.tables._c_m_a_p import CmapSubtable

    table = CmapSubtable.newSubtable(kind)
    table.platformID, table.platEncID, table.language = 3, encoding, 0
    table.cmap = {code: glyph for code, glyph in letters.items() if kind == 12 or code < 0xFFFF}
    return table


def _usable(font: Any, em: int) -> dict[int, str]:
    """Return the letters that a page can show, with their glyphs. Raises _Broken for a damaged outline."""
    glyphs, metrics = font["glyf"], font["hmtx"].metrics
    for name in glyphs.keys():  # noqa: SIM118 - a table is no mapping
        glyphs[name].removeHinting()
        for component in getattr(glyphs[name], "components", ()):
            if component.glyphName not in glyphs.glyphs:
                raise _Broken("is damaged: a letter is put together from one that is not there")
    spent: dict[str, int] = {}
    usable = {}
    for code, name in sorted((font.getBestCmap() or {}).items()):
        if name not in metrics or not 0 < code <= 0x10FFFF or 0xD800 <= code <= 0xDFFF:
            continue
        _components(glyphs, name, spent, 0)
        glyphs[name].recalcBounds(glyphs)  # what the file says of it need not be so
        if _fits(glyphs[name], metrics[name][0], em, blank=unicodedata.category(chr(code))[0] in "ZCM"):
            usable[code] = name
    return usable


def _components(glyphs: Any, name: str, spent: dict[str, int], depth: int) -> int:
    """Return how many outlines a glyph is put together from. Raises _Broken for endless or far too many ones."""
    if depth > DEEPEST_LETTER:
        raise _Broken("is damaged: a letter is put together from itself")
    if name not in spent:
        parts = getattr(glyphs[name], "components", ())
        spent[name] = 1 + sum(_components(glyphs, part.glyphName, spent, depth + 1) for part in parts)
    if spent[name] > MOST_COMPONENTS:
        raise _Broken("has a letter put together from too many others")
    return spent[name]


def _fits(glyph: Any, advance: int, em: int, blank: bool) -> bool:
    if advance > WIDEST_LETTER * em:
        return False
    if glyph.numberOfContours == 0:
        return blank
    reach = LETTER_REACH * em
    return bool(
        -reach <= glyph.xMin <= glyph.xMax <= advance + reach and -reach <= glyph.yMin <= glyph.yMax <= LETTER_TOP * em
    )


def _own_name(font: Any, data: bytes, file: str) -> str:
    """Return a name for the font in a pack: what it calls itself, as far as that is a plain word, and a mark of its bytes."""
    try:
        said = str(font["name"].getDebugName(6) or font["name"].getDebugName(4) or "") if "name" in font else ""
    except Exception:  # a table of names that cannot be read is no reason to refuse the letters
        said = ""
    word = "".join(c for c in said if c in ascii_letters + digits)[:NAME_LETTERS] or "Font"
    return f"{word}-{sha256(file.encode() + b'/' + data).hexdigest()[:8]}"


def _found(name: str, message: str, place: Place) -> Finding:
    hint = "take a font file that ends in .ttf and holds one whole TrueType font"
    return rules.NOT_FONT.found(message, subject=name, hint=hint, place=place)
