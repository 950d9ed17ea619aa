"""As much of an embedded TrueType program as proof needs: which glyph a code shows, and where its ink lies. Read by fontTools."""

from dataclasses import field
from functools import lru_cache
from io import BytesIO
from typing import Any

from fontTools.ttLib import TTFont

from publisher.basics import record

_NEEDED = {"head", "loca", "glyf", "maxp"}
GlyphBox = tuple[float, float, float, float]


@record
class Program:
    """A TrueType program: glyphs there are, units to the em, and code → glyph by (platform, encoding) of its cmap tables.

    ``boxes``: for each glyph left, bottom, right and top of its outline in em; None for a blank one.
    """

    glyphs: int
    units: int
    boxes: tuple[GlyphBox | None, ...]
    codes: dict[tuple[int, int], dict[int, int]] = field(default_factory=dict)

    def glyph(self, code: int) -> int | None:
        """Return the glyph that a simple font shows for a code (ISO 32000-1, 9.6.6.4, symbolic fonts); None if no table says."""
        for key in ((3, 0), (1, 0), (3, 1), (0, 3)):
            table = self.codes.get(key)
            if table is not None:
                for offset in (0, 0xF000, 0xF100, 0xF200):
                    if code + offset in table:
                        return table[code + offset]
        return None if not self.codes else 0

    def top(self, glyph: int) -> float:
        """Return the height of a glyph's highest point above the baseline, in em; 0 for a blank one."""
        box = self.box(glyph)
        return box[3] if box is not None else 0.0

    def box(self, glyph: int) -> GlyphBox | None:
        """Return the box round the outline of a glyph, in em; None for a blank one, or one that there is not."""
        return self.boxes[glyph] if 0 <= glyph < len(self.boxes) else None


@lru_cache(maxsize=16)
def read_program(data: bytes) -> Program | None:
    """Return what can be read of a TrueType program, or None when it is none; packs of one design mostly share theirs."""
    try:
        with TTFont(BytesIO(data), lazy=True) as font:
            return (
                _program(font)
                if font.sfntVersion in ("\x00\x01\x00\x00", "true") and {*font.keys()} >= _NEEDED
                else None
            )
    except Exception:  # a stranger's bytes: the library answers broken tables with exceptions of many kinds
        return None


def _program(font: TTFont) -> Program:
    # a subset names its glyphs by number only: most have no table of names
    names = [f"glyph{number}" for number in range(font["maxp"].numGlyphs)]
    font.setGlyphOrder(names)
    units, outlines = font["head"].unitsPerEm, font["glyf"]
    boxes = tuple(_box(outlines[name], units) for name in names)
    number = {name: place for place, name in enumerate(names)}
    codes = {
        (table.platformID, table.platEncID): {
            code: number[name] for code, name in table.cmap.items() if number.get(name)
        }
        for table in (font["cmap"].tables if "cmap" in font else ())
    }
    return Program(len(names), units, boxes, codes)


def _box(glyph: Any, units: int) -> GlyphBox | None:
    sides = tuple(getattr(glyph, side, 0) for side in ("xMin", "yMin", "xMax", "yMax"))
    left, bottom, right, top = (side / units for side in sides)
    return (left, bottom, right, top) if any(sides) else None
