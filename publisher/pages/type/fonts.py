"""Fonts: two weights that come with the tool, and those that a design names. Widths and heights read from the file's tables.

The tables are those of the OpenType specification (ISO/IEC 14496-22): ``head`` (units per em), ``hhea`` and ``hmtx`` (advances),
``cmap`` (letters to glyphs), ``OS/2`` (x-height and height of capitals).
"""

from dataclasses import dataclass, field
from functools import cache
from io import BytesIO
from pathlib import Path

from publisher.design import Design
from publisher.pages.model import FontFile
from publisher.pages.type.styles import Weight

_FILES = {"regular": "NotoSans-Regular.ttf", "bold": "NotoSans-Bold.ttf"}
_SPACELIKE = {"\u00a0": " ", "\u202f": " ", "\u2009": " ", "\u2011": "-"}  # drawn as their plain fellows


@dataclass(frozen=True, eq=False)
class Face:
    """A font at em 1: advance widths by letter, ascent, descent (negative), x-height and height of capitals, in ems."""

    name: str
    data: bytes
    widths: dict[str, float]
    ascent: float
    descent: float
    x_height: float
    cap_height: float
    _measured: dict[str, float] = field(default_factory=dict, repr=False)  # every line is asked for several times

    def has(self, letter: str) -> bool:
        """Say whether the font can draw the letter."""
        return letter in self.widths

    def width(self, text: str) -> float:
        """Return the width of the text in ems; a letter that the font lacks counts as one em."""
        width = self._measured.get(text)
        if width is None:
            widths = self.widths
            width = self._measured[text] = sum([widths.get(c, 1.0) for c in text])
        return width

    def file(self) -> FontFile:
        """Return the font as a file of the pack."""
        return FontFile(self.name, self.data)


def read_face(name: str, data: bytes) -> Face:
    """Read a TrueType font's metrics. Raises ValueError when the bytes are no font that can be read."""
    from fontTools.ttLib import TTFont, TTLibError

    try:
        font = TTFont(BytesIO(data), lazy=True)
        font.setGlyphOrder(
            [f"glyph{n:05d}" for n in range(font["maxp"].numGlyphs)]
        )  # their own names cost much to find
        em = float(font["head"].unitsPerEm)
        letters: dict[int, str] = font.getBestCmap() or {}
        metrics: dict[str, tuple[int, int]] = font["hmtx"].metrics
        ascent, descent = font["hhea"].ascent / em, font["hhea"].descent / em
        table = font.get("OS/2", None)
        x_height = getattr(table, "sxHeight", 0) / em or 0.5
        cap_height = getattr(table, "sCapHeight", 0) / em or 0.7
        widths = {chr(code): metrics[glyph][0] / em for code, glyph in sorted(letters.items())}
    except (TTLibError, KeyError, AttributeError, AssertionError, IndexError, ValueError, OverflowError) as fault:
        raise ValueError(f"{name} is no TrueType font that can be read ({fault})") from fault
    for letter, plain in _SPACELIKE.items():
        if plain in widths:
            widths[letter] = widths[plain]
    return Face(name, data, widths, ascent, descent, x_height, cap_height)


@cache
def face(weight: Weight) -> Face:
    """Return one of the two weights that come with the tool."""
    return read_face(weight, (Path(__file__).parent / "fonts" / _FILES[weight]).read_bytes())


@dataclass(frozen=True, eq=False)
class Faces:
    """The fonts of one pack: the two weights, then those that the design names, in the order to try."""

    regular: Face
    bold: Face
    named: tuple[Face, ...] = ()

    def weight(self, weight: Weight) -> Face:
        """Return the face of a weight."""
        return self.bold if weight == "bold" else self.regular

    def runs(self, text: str, weight: Weight) -> tuple[tuple[Face, str], ...]:
        """Split the text into stretches of one font. A letter that no font has stays with the font of the weight."""
        first = self.weight(weight)
        if not self.named or all(c in first.widths for c in text):
            return ((first, text),) if text else ()
        found: list[tuple[Face, str]] = []
        for letter in text:
            able = next((f for f in (first, *self.named) if f.has(letter)), first)
            if found and found[-1][0] is able:
                found[-1] = (able, found[-1][1] + letter)
            else:
                found.append((able, letter))
        return tuple(found)

    def missing(self, text: str) -> str:
        """Return the letters of the text that no font has, each once, in order."""
        odd = set(text)
        for font in (self.regular, self.bold, *self.named):
            odd = odd.difference(
                font.widths
            )  # one by one: of several Python would go through all letters of the later ones
        return "".join(dict.fromkeys(c for c in text if c in odd)) if odd else ""

    def files(self) -> tuple[FontFile, ...]:
        """Return all fonts as files of the pack."""
        return tuple(f.file() for f in (self.regular, self.bold, *self.named))


def faces_of(design: Design) -> Faces:
    """Return the fonts of a design. Raises ValueError when a font that it names cannot be read."""
    named: list[Face] = []
    for name in design.fonts:
        file = design.file(name)
        if file is not None:
            named.append(read_face(f"design {len(named) + 1}", file.data))
    return Faces(face("regular"), face("bold"), tuple(named))
