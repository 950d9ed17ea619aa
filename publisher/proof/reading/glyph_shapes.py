"""The shapes of letters: what a font's program draws for a glyph, so that it can be held against what the letter looks like in another."""

from functools import lru_cache
from io import BytesIO
from typing import Any

from fontTools.ttLib import TTFont

Outlined = tuple[
    float, ...
]  # points of an outline in em, whether each lies on it, and where contours end; empty for a blank one
OUTLINE_DIGITS = 5  # of an em: two programs of one font may have other units to the em
FONTS_KEPT = 16


def shapes_of(data: bytes, glyphs: tuple[int, ...]) -> dict[int, Outlined] | None:
    """Return the shape of each glyph of a TrueType program, components put together; None when it cannot be read."""
    try:
        return _shapes(data, glyphs)
    except Exception:  # a stranger's bytes: the library answers broken tables with exceptions of many kinds
        return None


@lru_cache(maxsize=FONTS_KEPT)
def _shapes(data: bytes, glyphs: tuple[int, ...]) -> dict[int, Outlined]:
    with TTFont(BytesIO(data), lazy=True) as font:
        _number(font)
        return {glyph: _shape(font, f"glyph{glyph}") for glyph in glyphs}


class LetterShapes:
    """What letters look like in a font, and how wide they are, by its own table of letters."""

    def __init__(self, data: bytes) -> None:
        """Open a TrueType program. Raises what fontTools does when it is none."""
        self.font = TTFont(BytesIO(data), lazy=True)
        _number(self.font)
        self.letters: dict[int, str] = self.font.getBestCmap() or {}
        self.units = self.font["head"].unitsPerEm
        self.known: dict[str, tuple[Outlined, float] | None] = {}

    def letter(self, letter: str) -> tuple[Outlined, float] | None:
        """Return shape and width (em) of a letter; None when the font lacks it."""
        if letter not in self.known:
            name = self.letters.get(ord(letter))
            self.known[letter] = (
                None if name is None else (_shape(self.font, name), self.font["hmtx"][name][0] / self.units)
            )
        return self.known[letter]


@lru_cache(maxsize=FONTS_KEPT)
def letter_shapes(data: bytes) -> LetterShapes:
    """Return the letters of a font; packs of one design mostly share theirs."""
    return LetterShapes(data)


def _number(font: TTFont) -> None:
    """Call glyphs by their numbers: subsets have no names, and those of whole fonts cost much to find."""
    font.setGlyphOrder([f"glyph{number}" for number in range(font["maxp"].numGlyphs)])


def _shape(font: TTFont, name: str) -> Outlined:
    outlines: Any = font["glyf"]
    glyph = outlines[name]
    if not getattr(glyph, "numberOfContours", 0):
        return ()
    points, ends, flags = glyph.getCoordinates(outlines)
    units = font["head"].unitsPerEm
    return (
        *(round(value / units, OUTLINE_DIGITS) for point in points for value in point),
        *(float(flag & 1) for flag in flags),
        *(float(end) for end in ends),
    )
